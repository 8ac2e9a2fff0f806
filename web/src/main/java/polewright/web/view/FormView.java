package polewright.web.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.web.form.CommandForm;

/**
 * A form as shown on a page.
 *
 * @param form the form
 * @param action where it is posted
 * @param key its submission key; a repeated submission has no further effect
 * @param night the number of the night that it adds to; 0 for any
 * @param values the current entries, by field
 * @param ifLastIs the number of the last event known to the page, if the submission makes sense only while that is
 *     the last; 0 if it always does
 * @param command the equivalent command line for the current entries; empty for a form that cannot be sent
 * @param sketch what to measure, for forms that have a picture
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
    /** The field that confirms an entry that looks like a mistake. */
    public static final String CONFIRMED = "as-typed";

    /** The name of a field in which the unit of the figure before it is chosen. */
    private static final String UNIT = "unit";

    /** The value with which a form that asks for confirmation is shown. */
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
     * A picture that is redrawn as values are typed.
     *
     * @param address where it is requested, with the current entries
     * @param svg its first state
     * @param caption what it shows
     */
    public record Sketch(String address, String svg, String caption) {}

    public FormView with(Optional<Sketch> other) {
        return new FormView(form, action, key, night, values, ifLastIs, command, other);
    }

    /** When the button was pressed, if the form was sent late and comes back with a complaint; in UTC, by ISO 8601. */
    public String doneAt() {
        return form.takesTime() ? values.getOrDefault("done-at", "") : "";
    }

    /** Whether an entry looks like a mistake and may be confirmed. */
    public boolean asks() {
        return form.asksForConfirmation() && values.containsKey(ASKS);
    }

    /** The usual fields, without the choices of a unit, which are shown next to their figures. */
    public List<FieldView> fields() {
        return fields(false).stream()
                .filter(field -> !field.name().equals(UNIT))
                .toList();
    }

    /** The choice of a figure's unit: the field after it, if it has that name. */
    public Optional<FieldView> unitOf(FieldView figure) {
        List<FieldView> usual = fields(false);
        int next = usual.indexOf(figure) + 1;
        return usual.stream()
                .skip(next)
                .limit(1)
                .filter(field -> field.name().equals(UNIT))
                .findFirst();
    }

    /** The fields that are seldom needed. */
    public List<FieldView> seldom() {
        return fields(true);
    }

    private List<FieldView> fields(boolean isSeldom) {
        return form.fields().stream()
                .filter(field -> field.isSeldom() == isSeldom)
                .map(field -> new FieldView(form.id(), field, values.getOrDefault(field.name(), "")))
                .toList();
    }

    /** Whether any of them is filled in and so must be visible. */
    public boolean hasSeldom() {
        return seldom().stream().anyMatch(field -> !field.value().isEmpty());
    }
}
