package polewright.web.form;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import polewright.operations.action.Action;
import polewright.operations.action.Argument;
import polewright.operations.action.Effect;
import polewright.operations.action.Entries;
import polewright.operations.action.TypedEntry;
import polewright.operations.setup.BeginNight;
import polewright.report.text.TypedCommand;

/**
 * An action as a form.
 *
 * @param action what it does
 * @param id its address, in lower-case letters and hyphens
 * @param title what it does, the verb first
 * @param intro what to do before filling it in; may be empty
 */
public record CommandForm(Action action, String id, String title, String intro, List<Argument<?>> fields) {
    public CommandForm {
        fields = List.copyOf(fields);
    }

    /** What the action acts on. */
    public enum Kind {
        /** It begins a night or adds to it. */
        NIGHT,
        /** It acts on a practice. */
        PRACTICE,
        /** It changes which devices are admitted. */
        DEVICES
    }

    /** The form of an action. */
    public static CommandForm of(Action action) {
        return new CommandForm(
                action,
                action.id(),
                action.title(),
                action.intro(),
                action.arguments().stream()
                        .filter(argument -> !argument.type().isFile())
                        .toList());
    }

    /** What its action acts on. */
    public Kind kind() {
        return action.effect().accept(new KindOf());
    }

    /** The words that the equivalent command begins with: {@code sight}, {@code compass}. */
    public List<String> command() {
        return action.command();
    }

    /** The label of its button. */
    public String button() {
        return action.button();
    }

    /** Whether a late submission keeps the time at which the action was done. */
    public boolean takesTime() {
        return action.timing() != Action.Timing.NOW;
    }

    /** Whether it adds to the current night, and must therefore make sure that this is the night that was meant. */
    public boolean isOfOneNight() {
        return kind() == Kind.NIGHT && !action.equals(BeginNight.BEGIN);
    }

    /** Whether its action asks for confirmation when an entry looks like a mistake. */
    public boolean asksForConfirmation() {
        return action.asksIfMistaken();
    }

    /** The same form with these fields instead. */
    CommandForm withFields(List<Argument<?>> others) {
        return new CommandForm(action, id, title, intro, others);
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
        return new CommandForm(action, otherId, otherTitle, otherIntro, fields);
    }

    /** The same form with this label on its button. */
    CommandForm sentBy(String label) {
        return new CommandForm(action.sentBy(label), id, title, intro, fields);
    }

    /** The values that were filled in. */
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
     * The equivalent command line, as it would be typed in a shell, with three dots for each missing entry.
     *
     * @param filled what is filled in so far
     */
    public String line(Map<String, String> filled) {
        return TypedCommand.of(command(), fields, filled);
    }

    private static final class KindOf implements Effect.Visitor<Kind> {
        @Override
        public Kind entering(Effect.Entering effect) {
            return Kind.NIGHT;
        }

        @Override
        public Kind beginning(Effect.Beginning effect) {
            return Kind.NIGHT;
        }

        @Override
        public Kind beginningPractice(Effect.BeginningPractice effect) {
            return Kind.PRACTICE;
        }

        @Override
        public Kind practising(Effect.Practising effect) {
            return Kind.PRACTICE;
        }

        @Override
        public Kind revoking(Effect.Revoking effect) {
            return Kind.DEVICES;
        }
    }
}
