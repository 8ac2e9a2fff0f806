package polewright.cli;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import polewright.operations.OperationFailed;
import polewright.operations.action.Action;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentRefused;
import polewright.operations.action.Entries;
import polewright.operations.action.EntriesRefused;
import polewright.operations.input.UtcInput;
import polewright.operations.work.ImpossibleWork;
import polewright.report.text.ZoneRefusals;
import polewright.sky.InputRefused;

/** What was typed for an action of the table. */
final class ActionArguments {
    private final Action action;
    private final AsTypedOption asTyped = new AsTypedOption();
    private final Map<String, Object> values = new HashMap<>();
    private @Nullable Instant at;

    ActionArguments(Action action) {
        this.action = action;
    }

    /** Name, help and options of the action for its command. */
    CommandLine addedTo(Object command) {
        CommandSpec spec = CommandSpec.forAnnotatedObject(command);
        spec.name(action.command().get(action.command().size() - 1));
        spec.usageMessage().description(description()).footer(examples().toArray(String[]::new));
        ActionOptions.add(spec, action.arguments(), values);
        if (action.asksIfMistaken()) {
            spec.addMixin("as typed", CommandSpec.forAnnotatedObject(asTyped));
        }
        if (action.timing() != Action.Timing.NOW) {
            spec.addOption(timeOption());
        }
        return new CommandLine(spec);
    }

    /** Adds a sentence to the description of a command. */
    static void describe(CommandLine command, String sentence) {
        CommandLine.Model.UsageMessageSpec usage = command.getCommandSpec().usageMessage();
        List<String> sentences = new ArrayList<>(List.of(usage.description()));
        sentences.add(sentence);
        usage.description(sentences.toArray(String[]::new));
    }

    Action action() {
        return action;
    }

    /** Names arguments and actions as they are typed. */
    TerminalWording wording() {
        return new TerminalWording(action.arguments());
    }

    /** What was typed, by the names of the arguments. */
    Map<String, Object> values() {
        return values;
    }

    /**
     * The values that were typed.
     *
     * @throws WrongUsage if one cannot be read
     */
    Entries entries() {
        return entries(values);
    }

    /** The same for other values. */
    Entries entries(Map<String, Object> given) {
        Map<String, Object> parsed = new HashMap<>(given);
        for (Argument<?> argument : action.arguments()) {
            if (parsed.get(argument.name()) instanceof TypedWords words) {
                parsed.put(argument.name(), parsed(argument, words));
            }
        }
        return Entries.ofValues(parsed);
    }

    private Object parsed(Argument<?> argument, TypedWords words) {
        try {
            return Entries.parsed(argument, words.joined());
        } catch (ArgumentRefused refused) {
            throw new WrongUsage(
                    wording().argument(argument.name()), wording().of(String.valueOf(refused.getMessage())));
        }
    }

    /**
     * Runs code of the action, naming arguments and actions in its messages as they are typed.
     *
     * @throws WrongUsage if it refuses what was typed
     * @throws OperationFailed if something else fails
     */
    <T> T usable(Supplier<T> making) {
        try {
            return worded(making);
        } catch (InputRefused refused) {
            throw new WrongUsage(worded(refused));
        }
    }

    /** The same for code that also writes the log, whose own refusals are left as they are. */
    <T> T worded(Supplier<T> making) {
        try {
            return making.get();
        } catch (EntriesRefused refused) {
            throw new WrongUsage(worded(refused));
        } catch (ImpossibleWork impossible) {
            throw new WrongUsage(worded(ZoneRefusals.of(impossible.outcome())));
        } catch (OperationFailed failed) {
            throw new OperationFailed(worded(failed));
        }
    }

    private String worded(RuntimeException failure) {
        return wording().of(String.valueOf(failure.getMessage()));
    }

    /** When it was done, if that was typed. */
    Optional<Instant> at() {
        return Optional.ofNullable(at);
    }

    /** Whether the person has confirmed an entry that looks like a mistake. */
    boolean isConfirmed() {
        return asTyped.isConfirmed();
    }

    private String[] description() {
        String title = action.title() + ".";
        return action.intro().isEmpty() ? new String[] {title} : new String[] {title, action.intro()};
    }

    private List<String> examples() {
        List<String> lines = new ArrayList<>();
        for (Action.Example example : action.examples()) {
            if (lines.isEmpty()) {
                lines.add("");
                lines.add(example.meaning().isEmpty() ? "For example:" : "For example, " + example.meaning() + ":");
            } else if (!example.meaning().isEmpty()) {
                lines.add("or " + example.meaning() + ":");
            }
            lines.add(("  polewright " + String.join(" ", action.command()) + " " + example.typed()).stripTrailing());
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
}
