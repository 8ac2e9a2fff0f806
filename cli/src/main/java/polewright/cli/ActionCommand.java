package polewright.cli;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Entries;
import polewright.operations.action.NightEntry;
import polewright.operations.input.UtcInput;
import polewright.report.text.EventWords;
import polewright.report.text.PoleStarWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;
import polewright.sky.InputRefused;

/** An action of the table as a command. */
class ActionCommand extends AppendingCommand {
    private final Action action;
    private final AsTypedOption asTyped = new AsTypedOption();
    private final Map<String, Object> values = new HashMap<>();
    private @Nullable Instant at;
    private List<NightEvent> entered = List.of();

    ActionCommand(Workbench workbench, Action action) {
        super(workbench, action.title());
        this.action = action;
    }

    /** The command, whose name is the last word of the action's. */
    static CommandLine of(Action action, Workbench workbench) {
        return line(new ActionCommand(workbench, action));
    }

    /** The same for a command with options in addition to those of its action. */
    static CommandLine line(ActionCommand command) {
        Action action = command.action;
        CommandSpec spec = CommandSpec.forAnnotatedObject(command);
        spec.name(action.command().get(action.command().size() - 1));
        spec.usageMessage()
                .description(description(action))
                .footer(examples(action).toArray(String[]::new));
        ActionOptions.add(spec, action.arguments(), command.values);
        if (action.asksIfMistaken()) {
            spec.addMixin("as typed", CommandSpec.forAnnotatedObject(command.asTyped));
        }
        if (action.timing() != Action.Timing.NOW) {
            spec.addOption(command.timeOption());
        }
        return new CommandLine(spec);
    }

    private static String[] description(Action action) {
        String title = action.title() + ".";
        return action.intro().isEmpty() ? new String[] {title} : new String[] {title, action.intro()};
    }

    private static List<String> examples(Action action) {
        List<String> lines = new ArrayList<>();
        for (Action.Example example : action.examples()) {
            if (lines.isEmpty()) {
                lines.add("");
                lines.add(example.meaning().isEmpty() ? "For example:" : "For example, " + example.meaning() + ":");
            } else if (!example.meaning().isEmpty()) {
                lines.add("or " + example.meaning() + ":");
            }
            lines.add("  polewright " + String.join(" ", action.command()) + " " + example.typed());
        }
        return lines;
    }

    private OptionSpec timeOption() {
        String words = action.timing() == Action.Timing.MEASURED
                ? "When it was taken (for a drift, when it began), with time zone: 2026-11-25T20:00Z. Default: now (a"
                        + " drift ended now)."
                : "When it was done, with time zone: 2026-11-25T20:00Z. Default: now.";
        return OptionSpec.builder("--at")
                .paramLabel("TIME")
                .arity("1")
                .type(Instant.class)
                .converters(new UtcInput())
                .description(words)
                .setter(new CommandLine.Model.ISetter() {
                    @Override
                    public <T> @Nullable T set(@Nullable T value) {
                        at = (Instant) value;
                        return value;
                    }
                })
                .build();
    }

    @Override
    List<NightEvent> events(ActionContext context) {
        return events(values, context);
    }

    /** The events of these values instead of those that were typed. */
    final List<NightEvent> events(Map<String, Object> given, ActionContext context) {
        TerminalWording wording = new TerminalWording(action);
        try {
            entered = action.entering().events(Entries.ofValues(given), context);
            return entered;
        } catch (InputRefused refused) {
            throw new WrongUsage(wording.of(String.valueOf(refused.getMessage())));
        } catch (OperationFailed failed) {
            throw new OperationFailed(wording.of(String.valueOf(failed.getMessage())));
        }
    }

    @Override
    Action.Timing timing() {
        return action.timing();
    }

    @Override
    boolean isConfirmed() {
        return asTyped.isConfirmed();
    }

    @Override
    Optional<Instant> given() {
        return Optional.ofNullable(at);
    }

    /** What was typed, by the names of the arguments. */
    final Map<String, Object> values() {
        return values;
    }

    @Override
    String logged(NightEntry.Logged logged) {
        return EventWords.logged(logged.first().event(), logged.night());
    }

    @Override
    void afterwards(NightState night) {
        boolean isLost = entered.stream()
                .anyMatch(event -> event instanceof NightEvent.SightingSkipped skipped
                        && skipped.skip().because() == Skip.Reason.NOT_IN_VIEW);
        if (isLost && !output().isJson()) {
            output().say(bench(), PoleStarWords.of(night));
        }
    }
}
