package polewright.operations;

/** The command was well formed but could not be carried out. The message is shown unchanged; exit status 1. */
public final class OperationFailed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public OperationFailed(String message) {
        super(message);
    }
}
