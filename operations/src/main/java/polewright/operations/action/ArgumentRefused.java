package polewright.operations.action;

import polewright.sky.InputRefused;

/** The value given for an argument cannot be used. */
public final class ArgumentRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Argument<?> argument;
    private final transient InputRefused refusal;

    ArgumentRefused(Argument<?> argument, InputRefused refusal) {
        super(refusal.getMessage(), refusal);
        this.argument = argument;
        this.refusal = refusal;
    }

    public Argument<?> argument() {
        return argument;
    }

    public InputRefused refusal() {
        return refusal;
    }
}
