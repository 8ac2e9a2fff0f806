package polewright.web.form;

import java.util.Map;
import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.Wording;
import polewright.operations.night.NightActions;

/** Names arguments by their fields, or by those of another form, and actions by the titles of their forms. */
public record PageWording(CommandForm form) implements Wording {
    @Override
    public String argument(String name) {
        return Stream.of(form.fields().stream(), fieldsOf(form.command().get(0)), fieldsOf(""))
                .flatMap(fields -> fields)
                .filter(field -> field.name().equals(name))
                .findFirst()
                .map(field -> "'" + label(field) + "'")
                .orElse("{" + name + "}");
    }

    /** The fields of all actions whose commands begin with this word; of all actions if it is empty. */
    private static Stream<Argument<?>> fieldsOf(String group) {
        return NightActions.all().stream()
                .filter(action -> group.isEmpty() || action.command().get(0).equals(group))
                .flatMap(action -> action.arguments().stream());
    }

    /** The value alone: the page shows the field. */
    @Override
    public String entry(String name, String value) {
        return value;
    }

    /**
     * The short name of a field: {@code Site} of {@code Site: latitude, longitude, height}, without the "or" of an
     * alternative.
     */
    private static String label(Argument<?> field) {
        String label = field.label().replaceFirst(":.*", "").replaceFirst("^Or:? (?:the |a )?", "");
        return Character.toUpperCase(label.charAt(0)) + label.substring(1);
    }

    @Override
    public String action(String id, Map<String, String> typed) {
        return CommandForms.all().stream()
                .filter(one ->
                        one.action().filter(action -> action.id().equals(id)).isPresent())
                .findFirst()
                .map(one -> "'" + one.title() + "'")
                .orElse("{do:" + id + "}");
    }
}
