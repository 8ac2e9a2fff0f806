package polewright.cli;

/**
 * What was typed can be used, but looks like a typing error: nothing is logged until it is confirmed. The message is
 * shown; exit status 5.
 */
final class ConfirmationNeeded extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * @param what the value, and what it should be near
     * @param check what to do if it is an error, an imperative without capital or full stop
     */
    ConfirmationNeeded(String what, String check) {
        super(what + ". " + Character.toUpperCase(check.charAt(0)) + check.substring(1) + ".");
    }
}
