package polewright.web.view;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
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

    /**
     * Empty unless it is a choice. One option is empty, so an untouched list sends nothing.
     */
    public List<ArgumentType.Option> options() {
        List<ArgumentType.Option> options = new ArrayList<>(argument.type().options());
        boolean canBeLeftOut =
                options.stream().anyMatch(option -> option.value().isEmpty());
        if (!options.isEmpty() && !canBeLeftOut) {
            options.add(0, new ArgumentType.Option("", nothingChosen()));
        }
        return options;
    }

    /** What it means to choose nothing. */
    private String nothingChosen() {
        if (argument.isRequired()) {
            return "choose";
        }
        return Stream.of(argument.type().otherwise(), argument.otherwise())
                .filter(words -> !words.isEmpty())
                .findFirst()
                .orElse("leave out");
    }

    /** Whether this option of a choice is selected. */
    public boolean isChosen(ArgumentType.Option option) {
        return option.value().equals(value);
    }
}
