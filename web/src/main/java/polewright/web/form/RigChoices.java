package polewright.web.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Option;
import polewright.sky.PlainNumber;

/**
 * Reduces the choices of a form to what the rig has: its finders and eyepieces, and the units that can be read in
 * them.
 */
public final class RigChoices {
    private static final String WITH = "with";
    private static final String UNIT = "unit";
    private static final Set<String> FIGURES = Set.of("field", "view");

    private RigChoices() {}

    /**
     * The same form with fewer choices. An entry that is already filled in stays among them.
     *
     * @param rig tonight's equipment
     */
    public static CommandForm of(CommandForm form, Rig rig, Map<String, String> filled) {
        if (form.kind() != CommandForm.Kind.NIGHT
                || form.fields().stream().noneMatch(field -> field.name().equals(WITH))) {
            return form;
        }
        if (rig.optics().isEmpty()) {
            // Without an optic to name, its figures are needed.
            return form.withFields(form.fields().stream()
                    .<Argument<?>>map(field -> FIGURES.contains(field.name()) ? field.usual() : field)
                    .toList());
        }
        return form.withFields(form.fields().stream()
                .<Argument<?>>map(field -> narrowed(field, rig, filled.getOrDefault(field.name(), "")))
                .toList());
    }

    private static <T> Argument<T> narrowed(Argument<T> field, Rig rig, String value) {
        if (field.name().equals(WITH)) {
            return field.as(new Choice<>("", "", optics(rig, value), field.type()::parse));
        }
        return field.name().equals(UNIT) && field.type() instanceof Choice<T> units
                ? field.as(units(units, rig, value))
                : field;
    }

    /** The rig's optics, then another one. */
    private static List<Option> optics(Rig rig, String value) {
        List<Option> options = new ArrayList<>();
        for (Optic optic : rig.optics()) {
            String name = optic.name().equalsIgnoreCase(value) ? value : optic.name();
            options.add(new Option(
                    name, name + ", " + PlainNumber.asRead(optic.field().degrees()) + "° field"));
        }
        if (!value.isEmpty()
                && options.stream().noneMatch(option -> option.value().equals(value))) {
            options.add(new Option(value, value));
        }
        options.add(new Option("", "another: its field under More"));
        return options;
    }

    /** Divisions are offered only for a reticle that has them, and field widths only if they were filled in before. */
    private static <T> Choice<T> units(Choice<T> units, Rig rig, String value) {
        boolean hasDivisions =
                rig.optics().stream().anyMatch(optic -> optic.division().isPresent());
        return units.offering(
                hasDivisions ? units.otherwise() : "",
                units.options().stream()
                        .filter(option ->
                                option.value().equals(value) || !option.value().equals("fields"))
                        .toList());
    }
}
