package polewright.cli;

import java.util.function.Supplier;
import polewright.sky.InputRefused;

/** What was typed cannot be used. The message is shown; exit status 2. */
public final class WrongUsage extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public WrongUsage(String message) {
        super(message);
    }

    private WrongUsage(InputRefused refused) {
        super(refused.getMessage(), refused);
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
