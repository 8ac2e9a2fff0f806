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
        return argument.type().isTick();
    }

    public String unit() {
        return argument.type().unit().symbol();
    }

    /** Which keyboard a phone should show, a value of HTML's {@code inputmode}; empty if any will do. */
    public String keys() {
        return argument.type().keyboard();
    }

    /** Empty unless it is a choice; an option without a value leaves it out. */
    public List<ArgumentType.Option> options() {
        List<ArgumentType.Option> options = new ArrayList<>();
        if (!argument.type().otherwise().isEmpty()) {
            options.add(new ArgumentType.Option("", argument.type().otherwise()));
        }
        options.addAll(argument.type().options());
        return options;
    }

    /** Whether this option of a choice is selected. */
    public boolean isChosen(ArgumentType.Option option) {
        return option.value().equals(value);
    }
}
