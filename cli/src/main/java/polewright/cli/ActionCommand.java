package polewright.cli;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Effect;
import polewright.operations.action.Entries;
import polewright.operations.action.NightEntry;
import polewright.report.text.EventWords;
import polewright.report.text.PoleStarWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;

/** An action of the table that adds to the night, as a command. */
class ActionCommand extends AppendingCommand {
    private final ActionArguments arguments;
    private final Effect.Entering effect;
    private List<NightEvent> entered = List.of();

    ActionCommand(Workbench workbench, Action action) {
        super(workbench, action.title());
        this.arguments = new ActionArguments(action);
        // Other effects have commands of their own.
        this.effect = (Effect.Entering) action.effect();
    }

    /** The command, whose name is the last word of the action's. */
    static CommandLine of(Action action, Workbench workbench) {
        return line(new ActionCommand(workbench, action));
    }

    /** The same for a command with options in addition to those of its action. */
    static CommandLine line(ActionCommand command) {
        return command.arguments.addedTo(command);
    }

    @Override
    NightEntry.Entered entered(ActionContext context) {
        return entered(values(), context);
    }

    /** What was entered, with these values instead of those that were typed. */
    final NightEntry.Entered entered(Map<String, Object> given, ActionContext context) {
        NightEntry.Entered all = arguments.usable(
                () -> NightEntry.Entered.of(arguments.action(), effect, arguments.entries(given), context));
        entered = all.events();
        return all;
    }

    @Override
    Action.Timing timing() {
        return arguments.action().timing();
    }

    @Override
    boolean isConfirmed() {
        return arguments.isConfirmed();
    }

    @Override
    Optional<Instant> given() {
        return arguments.at();
    }

    /** What was typed, by the names of the arguments. */
    final Map<String, Object> values() {
        return arguments.values();
    }

    /** The same, parsed. */
    final Entries entries() {
        return arguments.entries();
    }

    @Override
    String logged(NightEntry.Logged logged) {
        return EventWords.logged(logged.first().event(), logged.night());
    }

    @Override
    TerminalWording wording() {
        return arguments.wording();
    }

    @Override
    void afterwards(NightState night) {
        boolean isLost = entered.stream()
                .anyMatch(event -> event instanceof NightEvent.SightingSkipped skipped
                        && skipped.skip().because() == Skip.Reason.NOT_IN_VIEW);
        if (isLost && !output().isJson()) {
            output().report(bench(), PoleStarWords.of(night));
        }
    }
}
