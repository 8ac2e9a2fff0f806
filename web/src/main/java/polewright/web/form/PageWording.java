package polewright.web.form;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.Wording;
import polewright.operations.table.ActionTable;

/**
 * Names arguments by their fields, or by those of another form, and actions by the titles of their forms.
 *
 * @param fields of the form that was filled in
 * @param group the first word of its command: any other name is looked up there first
 */
public record PageWording(List<Argument<?>> fields, String group) implements Wording {
    /** For a message that does not come from one form. */
    public static final PageWording GENERAL = new PageWording(List.of(), "");

    /** For a message about a form that was filled in. */
    public static PageWording of(CommandForm form) {
        return new PageWording(form.fields(), form.command().get(0));
    }

    public PageWording {
        fields = List.copyOf(fields);
    }

    @Override
    public String argument(String name) {
        return Stream.of(fields.stream(), fieldsOf(group), fieldsOf(""))
                .flatMap(each -> each)
                .filter(field -> field.name().equals(name))
                .findFirst()
                .map(field -> "'" + label(field) + "'")
                .orElse("{" + name + "}");
    }

    /** The fields of all actions whose commands begin with this word; of all actions if it is empty. */
    private static Stream<Argument<?>> fieldsOf(String group) {
        return ActionTable.all().stream()
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
        return CommandForms.everywhere()
                .filter(form -> form.action().id().equals(id))
                .findFirst()
                .map(form -> "'" + form.title() + "'")
                .orElse("{do:" + id + "}");
    }
}
