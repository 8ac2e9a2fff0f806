package polewright.fuzz;

/** Something that no input may bring about. */
final class Finding extends AssertionError {
    private static final long serialVersionUID = 1L;

    Finding(String what) {
        super(what);
    }

    Finding(String what, Throwable cause) {
        super(what, cause);
    }
}
