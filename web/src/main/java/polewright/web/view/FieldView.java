package polewright.web.view;

import java.util.ArrayList;
import java.util.List;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType;

/**
 * A field as shown on a page.
 *
 * @param form the id of its form
 * @param argument what it fills in
 * @param value what is filled in
 */
public record FieldView(String form, Argument<?> argument, String value) {
    /** Unique on a page. */
    public String id() {
        return form + "-" + argument.name();
    }

    public String name() {
        return argument.name();
    }

    public String label() {
        return argument.label();
    }

    public boolean isRequired() {
        return argument.isRequired();
    }

    /** How to read it off, and what holds if it stays empty; may be empty itself. */
    public String hint() {
        String empty = argument.otherwise().isEmpty() ? "" : "Empty: " + argument.otherwise() + ".";
        return (argument.hint() + " " + empty).strip();
    }

    public boolean isTick() {
        return argument.type() instanceof ArgumentType.Tick;
    }

    public String unit() {
        return argument.type() instanceof ArgumentType.Figure figure
                ? figure.unit().symbol()
                : "";
    }

    /**
     * Which keyboard a phone should show. Some phones' decimal keyboards have no minus sign, so a figure that may be
     * negative gets the full keyboard.
     *
     * @return a value of HTML's {@code inputmode}; empty if any keyboard will do
     */
    public String keys() {
        if (argument.type() instanceof ArgumentType.Whole) {
            return "numeric";
        }
        if (!(argument.type() instanceof ArgumentType.Figure figure)) {
            return "";
        }
        return figure.isSigned() ? "text" : "decimal";
    }

    /** Empty unless it is a choice; an option without a value leaves it out. */
    public List<ArgumentType.Option> options() {
        if (!(argument.type() instanceof ArgumentType.Choice<?> choice)) {
            return List.of();
        }
        List<ArgumentType.Option> options = new ArrayList<>();
        if (!choice.otherwise().isEmpty()) {
            options.add(new ArgumentType.Option("", choice.otherwise()));
        }
        options.addAll(choice.options());
        return options;
    }

    /** Whether this option of a choice is selected. */
    public boolean isChosen(ArgumentType.Option option) {
        return option.value().equals(value);
    }
}
