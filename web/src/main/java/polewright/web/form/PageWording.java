package polewright.web.form;

import polewright.operations.action.Wording;
import polewright.operations.night.NightActions;

/** Names arguments by their fields, and actions by the titles of their forms. */
public record PageWording(CommandForm form) implements Wording {
    @Override
    public String argument(String name) {
        return form.fields().stream()
                .filter(field -> field.name().equals(name))
                .findFirst()
                .map(field -> "'" + FormComplaint.label(field) + "'")
                .orElse("{" + name + "}");
    }

    @Override
    public String action(String id) {
        return NightActions.named(id).map(action -> "'" + action.title() + "'").orElse("{do:" + id + "}");
    }
}
