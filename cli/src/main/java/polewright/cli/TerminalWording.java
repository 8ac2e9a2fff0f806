package polewright.cli;

import java.util.Locale;
import polewright.operations.action.Action;
import polewright.operations.action.Wording;
import polewright.operations.night.NightActions;

/** Names arguments and actions as they are typed. */
record TerminalWording(Action entered) implements Wording {
    @Override
    public String argument(String name) {
        return entered.arguments().stream()
                .filter(argument -> argument.name().equals(name))
                .findFirst()
                .map(argument -> argument.isPositional() ? name.toUpperCase(Locale.ROOT) : "--" + name)
                .orElse("{" + name + "}");
    }

    @Override
    public String action(String id) {
        return NightActions.named(id)
                .map(action -> "polewright " + String.join(" ", action.command()))
                .orElse("{do:" + id + "}");
    }
}
