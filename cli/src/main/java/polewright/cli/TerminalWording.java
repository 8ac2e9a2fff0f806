package polewright.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.Wording;
import polewright.operations.table.ActionTable;
import polewright.report.text.TypedCommand;

/**
 * Names arguments and actions as they are typed.
 *
 * @param arguments of the command that was typed; any other is an option of another command
 */
record TerminalWording(List<Argument<?>> arguments) implements Wording {
    /** For a message that does not come from one command. */
    static final TerminalWording GENERAL = new TerminalWording(List.of());

    TerminalWording {
        arguments = List.copyOf(arguments);
    }

    @Override
    public String argument(String name) {
        return Stream.concat(
                        arguments.stream(), ActionTable.all().stream().flatMap(action -> action.arguments().stream()))
                .filter(argument -> argument.name().equals(name))
                .findFirst()
                .map(argument -> argument.isPositional() ? name.toUpperCase(Locale.ROOT) : "--" + name)
                .orElse("{" + name + "}");
    }

    @Override
    public String entry(String name, String value) {
        return argument(name) + " " + value;
    }

    @Override
    public String action(String id, Map<String, String> typed) {
        return ActionTable.named(id)
                .map(action -> typed.isEmpty()
                        ? "polewright " + String.join(" ", action.command())
                        : TypedCommand.of(action.command(), action.arguments(), typed))
                .orElse("{do:" + id + "}");
    }
}
