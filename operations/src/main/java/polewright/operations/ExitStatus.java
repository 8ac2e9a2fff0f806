package polewright.operations;

/** Exit statuses of commands; {@code polewright --help} and docs/reference.md list all of them in the same words. */
public final class ExitStatus {
    public static final int GOOD = 0;
    public static final int JOB_FAILED = 1;
    public static final int WRONG_USAGE = 2;

    /** Nothing was logged, because the log has changed since the sender last saw it. */
    public static final int MOVED_ON = 3;

    /**
     * Nothing was logged, because the log can be neither read nor written at the moment: the command may be repeated.
     */
    public static final int NOT_NOW = 4;

    /** Nothing was logged, because an entry looks like a mistake: it may be confirmed. */
    public static final int LOOKS_MISTAKEN = 5;

    private ExitStatus() {}
}
