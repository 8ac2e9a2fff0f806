package polewright.web.form;

import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.Wording;
import polewright.operations.night.NightActions;

/** Names arguments by their fields, or by those of another form, and actions by the titles of their forms. */
public record PageWording(CommandForm form) implements Wording {
    @Override
    public String argument(String name) {
        return Stream.concat(
                        form.fields().stream(),
                        NightActions.all().stream().flatMap(action -> action.arguments().stream()))
                .filter(field -> field.name().equals(name))
                .findFirst()
                .map(field -> "'" + label(field) + "'")
                .orElse(name);
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
    public String action(String id) {
        return CommandForms.all().stream()
                .filter(one ->
                        one.action().filter(action -> action.id().equals(id)).isPresent())
                .findFirst()
                .map(one -> "'" + one.title() + "'")
                .orElse("{do:" + id + "}");
    }
}
