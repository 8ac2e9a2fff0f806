package polewright.operations.action;

import polewright.sky.InputRefused;

/**
 * What was entered cannot be used, as opposed to a failure of the log or of a file. The message names arguments and
 * actions in braces.
 */
public final class EntriesRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public EntriesRefused(InputRefused refusal) {
        super(refusal.getMessage(), refusal);
    }
}
