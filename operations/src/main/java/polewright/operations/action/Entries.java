package polewright.operations.action;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.sky.InputRefused;

/** The values that were given for the arguments of an action. */
public final class Entries {
    private final Map<String, Object> values;

    private Entries(Map<String, Object> values) {
        this.values = Map.copyOf(values);
    }

    /** Values that the terminal has already parsed, by the names of their arguments. */
    public static Entries ofValues(Map<String, Object> values) {
        return new Entries(values);
    }

    /**
     * Parses what was typed, by the types of the arguments. An argument that is blank or missing counts as left out.
     *
     * @throws InputRefused if an argument is required and left out
     * @throws ArgumentRefused for the first argument that cannot be read
     */
    public static Entries of(List<Argument<?>> arguments, Map<String, String> typed) {
        for (Argument<?> argument : arguments) {
            if (argument.isRequired() && isBlank(typed, argument)) {
                throw missing(argument);
            }
        }
        return ofUnfinished(arguments, typed);
    }

    /**
     * The same while it is still being filled in: nothing is required yet.
     *
     * @throws ArgumentRefused for the first argument that cannot be read
     */
    public static Entries ofUnfinished(List<Argument<?>> arguments, Map<String, String> typed) {
        Map<String, Object> values = new HashMap<>();
        for (Argument<?> argument : arguments) {
            if (!isBlank(typed, argument)) {
                values.put(argument.name(), parsed(argument, typed.getOrDefault(argument.name(), "")));
            }
        }
        return new Entries(values);
    }

    private static boolean isBlank(Map<String, String> typed, Argument<?> argument) {
        return typed.getOrDefault(argument.name(), "").isBlank();
    }

    /**
     * The value of what was typed for an argument.
     *
     * @throws ArgumentRefused if it cannot be read
     */
    public static Object parsed(Argument<?> argument, String typed) {
        try {
            return argument.type().parse(typed.strip());
        } catch (InputRefused refused) {
            throw new ArgumentRefused(argument, refused);
        }
    }

    /** The value of an argument; empty if it was left out. */
    @SuppressWarnings("unchecked") // Each value came from the type of the argument of this name.
    public <T> Optional<T> given(Argument<T> argument) {
        return Optional.ofNullable((T) values.get(argument.name()));
    }

    /** The value of a required argument. */
    public <T> T of(Argument<T> argument) {
        return given(argument).orElseThrow(() -> missing(argument));
    }

    private static InputRefused missing(Argument<?> argument) {
        return new InputRefused("'" + argument.label() + "' is empty", "fill it in");
    }

    /** Whether a tick is set. */
    public boolean isTicked(Argument<Boolean> argument) {
        return given(argument).orElse(false);
    }
}
