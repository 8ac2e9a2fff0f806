package polewright.fuzz;

/** Behaviour that no input may cause. */
final class Finding extends AssertionError {
    private static final long serialVersionUID = 1L;

    Finding(String what) {
        super(what);
    }

    Finding(String what, Throwable cause) {
        super(what, cause);
    }
}
