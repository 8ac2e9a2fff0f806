package polewright.operations.work;

import polewright.alignment.allowance.ZoneOutcome;

/** No axis suits the work, so nothing is logged. */
public final class ImpossibleWork extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient ZoneOutcome.None outcome;

    ImpossibleWork(ZoneOutcome.None outcome) {
        super("no axis suits this work");
        this.outcome = outcome;
    }

    /** Why. */
    public ZoneOutcome.None outcome() {
        return outcome;
    }
}
