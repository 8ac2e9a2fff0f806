package polewright.cli;

import java.util.List;
import java.util.Locale;
import polewright.operations.action.Argument;
import polewright.operations.action.Wording;
import polewright.operations.night.NightActions;

/**
 * Names arguments and actions as they are typed.
 *
 * @param arguments of the command that was typed; any other is an option
 */
record TerminalWording(List<Argument<?>> arguments) implements Wording {
    /** For a message that does not come from one command. */
    static final TerminalWording GENERAL = new TerminalWording(List.of());

    TerminalWording {
        arguments = List.copyOf(arguments);
    }

    @Override
    public String argument(String name) {
        boolean isPositional =
                arguments.stream().anyMatch(argument -> argument.name().equals(name) && argument.isPositional());
        return isPositional ? name.toUpperCase(Locale.ROOT) : "--" + name;
    }

    @Override
    public String entry(String name, String value) {
        return argument(name) + " " + value;
    }

    @Override
    public String action(String id) {
        return NightActions.named(id)
                .map(action -> "polewright " + String.join(" ", action.command()))
                .orElse("{do:" + id + "}");
    }
}
