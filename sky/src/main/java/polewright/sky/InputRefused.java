package polewright.sky;

/**
 * Something the person typed, or a file held, that cannot be used.
 *
 * <p>The message is for the person at the telescope: it names the value, the limit it broke, and what to do instead. It
 * is shown as it stands, without a stack trace.
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

    /** A refusal that is not for what was typed but for the moment: the same may be taken later, as it is. */
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

    /** The same refusal, and after it a sentence that says more, e.g. what the mistake may be. */
    public InputRefused adding(String sentence) {
        return new InputRefused(getMessage() + " " + sentence, isForNow);
    }

    /** The same refusal, with the place where the value stood in front, e.g. {@code "line 12: "}. */
    public InputRefused at(String where) {
        return new InputRefused(where + ": " + getMessage(), isForNow);
    }
}
