package polewright.sky;

/**
 * Input that cannot be used, typed by the person or read from a file.
 *
 * <p>The message is for the person at the telescope: it gives the value, the limit it broke, and what to do instead. It
 * is shown as is, without a stack trace.
 */
public final class InputRefused extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final boolean isForNow;

    /**
     * @param what the value and what is wrong with it, e.g. {@code "latitude 95 is beyond 90 degrees"}
     * @param remedy what to do, as an imperative without capital or full stop, e.g. {@code "give north as positive, -90
     *     to 90"}; or a question
     */
    public InputRefused(String what, String remedy) {
        this(message(what, remedy), false);
    }

    private InputRefused(String message, boolean isForNow) {
        super(message);
        this.isForNow = isForNow;
    }

    /** A refusal because of the moment, not the input: the same input may be accepted later. */
    public static InputRefused forNow(String what, String remedy) {
        return new InputRefused(message(what, remedy), true);
    }

    private static String message(String what, String remedy) {
        return what + ". " + Character.toUpperCase(remedy.charAt(0)) + remedy.substring(1)
                + (remedy.endsWith("?") ? "" : ".");
    }

    public boolean isForNow() {
        return isForNow;
    }

    /** The same refusal followed by another sentence, e.g. what the mistake may be. */
    public InputRefused adding(String sentence) {
        return new InputRefused(getMessage() + " " + sentence, isForNow);
    }

    /** The same refusal preceded by the place the value came from, e.g. {@code "line 12: "}. */
    public InputRefused at(String where) {
        return new InputRefused(where + ": " + getMessage(), isForNow);
    }
}
