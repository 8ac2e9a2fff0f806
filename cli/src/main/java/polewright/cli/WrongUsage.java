package polewright.cli;

import java.util.function.Supplier;
import polewright.sky.InputRefused;

/** What was typed cannot be used. The message is shown; exit status 2. */
public final class WrongUsage extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String argument;

    public WrongUsage(String message) {
        super(message);
        this.argument = "";
    }

    /** The value of an option or parameter, named as it is typed, cannot be used. */
    WrongUsage(String argument, String message) {
        super(message);
        this.argument = argument;
    }

    private WrongUsage(InputRefused refused) {
        super(refused.getMessage(), refused);
        this.argument = "";
    }

    /** The option or parameter whose value cannot be used; empty if it is not one alone. */
    String argument() {
        return argument;
    }

    /** Converts what was typed to a value; a refusal is then reported as wrong usage. */
    static <T> T unlessUsable(Supplier<T> fromOptions) {
        try {
            return fromOptions.get();
        } catch (InputRefused refused) {
            throw new WrongUsage(refused);
        }
    }
}
