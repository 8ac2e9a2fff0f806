package polewright.web.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.web.form.CommandForm;
import polewright.web.form.Field;

/**
 * A form as it stands on a page.
 *
 * @param form what it fills in
 * @param action where it is posted
 * @param key what it is sent under; sent again, it does nothing more
 * @param night the number of the night that it adds to; 0 if it may be any
 * @param values what is filled in already, by field
 * @param ifLastIs the number of the last event that the page knew of, when what is posted makes sense only then; 0 when it
 *     always does
 * @param command the command line that does the same, with what is filled in; empty for a form that cannot be sent
 * @param sketch what to measure, for those that have a picture
 */
public record FormView(
        CommandForm form,
        String action,
        String key,
        long night,
        Map<String, String> values,
        long ifLastIs,
        String command,
        Optional<Sketch> sketch) {
    /** What a form is sent with when what looks like a slip is meant. */
    public static final String CONFIRMED = "as-typed";

    /** What a form is shown with that looks like a slip. */
    public static final String ASKS = "asks";

    public FormView {
        values = Map.copyOf(values);
    }

    /** A form without a picture. */
    public FormView(
            CommandForm form,
            String action,
            String key,
            long night,
            Map<String, String> values,
            long ifLastIs,
            String command) {
        this(form, action, key, night, values, ifLastIs, command, Optional.empty());
    }

    /**
     * A picture that is drawn anew as figures are typed.
     *
     * @param address where it is asked for, given what is filled in
     * @param svg as it stands at first
     * @param caption what it shows
     */
    public record Sketch(String address, String svg, String caption) {}

    public FormView with(Optional<Sketch> other) {
        return new FormView(form, action, key, night, values, ifLastIs, command, other);
    }

    public String value(Field field) {
        return values.getOrDefault(field.name(), "");
    }

    /** When it was pressed, if it was sent late and comes back with a complaint; in UTC, by ISO 8601. */
    public String doneAt() {
        return form.takesTime() ? values.getOrDefault("done-at", "") : "";
    }

    /** Whether what is filled in looks like a slip, and may be confirmed. */
    public boolean asks() {
        return form.asksBack() && values.containsKey(ASKS);
    }

    public List<Field> fields() {
        return form.fields().stream().filter(field -> !field.isSeldom()).toList();
    }

    /** What is hardly ever needed. */
    public List<Field> seldom() {
        return form.fields().stream().filter(Field::isSeldom).toList();
    }

    /** Whether any of that is filled in, and so has to be seen. */
    public boolean hasSeldom() {
        return seldom().stream().anyMatch(field -> !value(field).isEmpty());
    }

    /** Whether a choice's option is the one chosen. */
    public boolean isChosen(Field field, Field.Option option) {
        return option.value().equals(value(field));
    }
}
