package polewright.operations;

/** The command was well formed but its job could not be done. The message is shown as it stands; exit status 1. */
public final class OperationFailed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public OperationFailed(String message) {
        super(message);
    }
}
