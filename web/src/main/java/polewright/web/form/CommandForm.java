package polewright.web.form;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.operations.action.Action;
import polewright.operations.action.Argument;
import polewright.operations.action.Entries;
import polewright.operations.action.TypedEntry;
import polewright.operations.setup.BeginNight;
import polewright.report.text.TypedCommand;
import polewright.sky.InputRefused;

/**
 * A command as a form.
 *
 * @param id its address, in lower-case letters and hyphens
 * @param title what it does, the verb first
 * @param intro what to do before filling it in; may be empty
 * @param command the words that the command begins with: {@code sight}, {@code compass}
 * @param button the label of its button
 * @param kind what the command acts on
 * @param action the action that it enters; empty for a form that still runs a command line
 * @param takesTime whether it takes {@code --at}, so that a late submission keeps the time at which the action was
 *     done
 */
public record CommandForm(
        String id,
        String title,
        String intro,
        List<String> command,
        List<Argument<?>> fields,
        String button,
        boolean takesTime,
        Kind kind,
        Optional<Action> action) {
    /** What the command acts on. */
    public enum Kind {
        /** It adds to a log. */
        NIGHT("once"),
        /** It acts on a practice. */
        PRACTICE("key"),
        /** It changes which devices are admitted; repeating it changes nothing. */
        DEVICES("");

        private final String keyOption;

        Kind(String keyOption) {
            this.keyOption = keyOption;
        }

        /** The option, without dashes, that makes a repeated submission harmless; empty if it is harmless anyway. */
        public String keyOption() {
            return keyOption;
        }
    }

    /** Whether it adds to the current night, and must therefore make sure that this is the night that was meant. */
    public boolean isOfOneNight() {
        return kind == Kind.NIGHT
                && action.filter(one -> one.equals(BeginNight.BEGIN)).isEmpty();
    }

    /** Whether its command asks for confirmation when an entry looks like a mistake. */
    public boolean asksForConfirmation() {
        return action.filter(Action::asksIfMistaken).isPresent();
    }

    public CommandForm {
        command = List.copyOf(command);
        fields = List.copyOf(fields);
    }

    /** The form of an action. */
    public static CommandForm of(Action action) {
        return new CommandForm(
                action.id(),
                action.title(),
                action.intro(),
                action.command(),
                action.arguments().stream()
                        .filter(argument -> !argument.type().isFile())
                        .toList(),
                action.button(),
                action.timing() != Action.Timing.NOW,
                Kind.NIGHT,
                Optional.of(action));
    }

    /** The same form with these fields instead. */
    CommandForm withFields(List<Argument<?>> others) {
        return new CommandForm(id, title, intro, command, others, button, takesTime, kind, action);
    }

    /** The same form with these fields required. */
    CommandForm requiring(Argument<?>... needed) {
        List<String> names = Arrays.stream(needed).map(Argument::name).toList();
        return withFields(fields.stream()
                .<Argument<?>>map(field -> names.contains(field.name()) ? field.required() : field)
                .toList());
    }

    /** The same form under another name, for one way of doing its action. */
    CommandForm named(String otherId, String otherTitle, String otherIntro) {
        return new CommandForm(otherId, otherTitle, otherIntro, command, fields, button, takesTime, kind, action);
    }

    /** The same form with this label on its button. */
    CommandForm sentBy(String label) {
        return new CommandForm(id, title, intro, command, fields, label, takesTime, kind, action);
    }

    /** The values that were filled in, for a form with an action. */
    public Entries entries(Map<String, String> filled) {
        Map<String, String> checked = new HashMap<>();
        for (Argument<?> field : fields) {
            checked.put(field.name(), TypedEntry.checked(field, filled.getOrDefault(field.name(), "")));
        }
        return Entries.of(fields, checked);
    }

    /** The same while the form is being filled in: nothing is required yet. */
    public Entries unfinished(Map<String, String> filled) {
        Map<String, String> typed = new HashMap<>();
        for (Argument<?> field : fields) {
            typed.put(
                    field.name(),
                    TypedEntry.asTyped(
                            field, filled.getOrDefault(field.name(), "").strip()));
        }
        return Entries.ofUnfinished(fields, typed);
    }

    /**
     * The words of the command.
     *
     * @param filled the entries by field; names that are not fields of this form are ignored
     * @throws InputRefused when a required entry is missing, or cannot be one word of a command
     */
    public List<String> words(Map<String, String> filled) {
        List<String> words = new ArrayList<>(command);
        List<String> positionals = new ArrayList<>();
        for (Argument<?> field : fields) {
            String value = filled.getOrDefault(field.name(), "").strip();
            if (value.isEmpty()) {
                if (field.isRequired()) {
                    throw new InputRefused("'" + field.label() + "' is empty", "fill it in");
                }
                continue;
            }
            String entry = TypedEntry.checked(field, value);
            if (field.isPositional()) {
                positionals.addAll(field.type().asWords(entry));
            } else {
                words.addAll(option(field, entry));
            }
        }
        if (!positionals.isEmpty()) {
            // A negative number, or a note that begins with a hyphen, is not an option.
            words.add("--");
            words.addAll(positionals);
        }
        return words;
    }

    /**
     * The equivalent command line, as it would be typed in a shell, with three dots for each missing entry.
     *
     * @param filled what is filled in so far
     */
    public String line(Map<String, String> filled) {
        return TypedCommand.of(command, fields, filled);
    }

    private static List<String> option(Argument<?> field, String value) {
        if (field.type().isTick()) {
            return value.equals("yes") ? List.of("--" + field.name()) : List.of();
        }
        List<String> values = field.type().asWords(value);
        if (values.size() == 1) {
            return List.of("--" + field.name() + "=" + value);
        }
        List<String> words = new ArrayList<>(List.of("--" + field.name()));
        words.addAll(values);
        return words;
    }
}
