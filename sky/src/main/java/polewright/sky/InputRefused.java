package polewright.sky;

/**
 * Something the person typed, or a file held, that cannot be used.
 *
 * <p>The message is for the person at the telescope: it names the value, the limit it broke, and what to do instead. It
 * is shown as it stands, without a stack trace.
 */
public final class InputRefused extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /**
     * @param what the value and what is wrong with it, e.g. {@code "latitude 95 is beyond 90 degrees"}
     * @param remedy what to do, as an imperative without its full stop, e.g. {@code "give north as positive, -90 to
     *     90"}; or a question
     */
    public InputRefused(String what, String remedy) {
        super(what + ": " + remedy + (remedy.endsWith("?") ? "" : "."));
    }

    private InputRefused(String message) {
        super(message);
    }

    /** The same refusal, with the place where the value stood in front, e.g. {@code "line 12: "}. */
    public InputRefused at(String where) {
        return new InputRefused(where + ": " + getMessage());
    }
}
