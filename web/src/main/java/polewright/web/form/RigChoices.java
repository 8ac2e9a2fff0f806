package polewright.web.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.sky.PlainNumber;
import polewright.web.form.Field.Choice;
import polewright.web.form.Field.Option;

/**
 * Reduces the choices of a form to what the rig has: its finders and eyepieces, and the units that can be read in
 * them.
 */
public final class RigChoices {
    private static final String WITH = "with";
    private static final String UNIT = "unit";

    private RigChoices() {}

    /**
     * The same form with fewer choices. An entry that is already filled in stays among them.
     *
     * @param rig tonight's equipment
     */
    public static CommandForm of(CommandForm form, Rig rig, Map<String, String> filled) {
        if (rig.optics().isEmpty()
                || form.kind() != CommandForm.Kind.NIGHT
                || form.fields().stream().noneMatch(field -> field.name().equals(WITH))) {
            return form;
        }
        return form.withFields(form.fields().stream()
                .map(field -> narrowed(field, rig, filled.getOrDefault(field.name(), "")))
                .toList());
    }

    private static Field narrowed(Field field, Rig rig, String value) {
        return switch (field.name()) {
            case WITH -> field.as(new Choice(optics(rig, value)));
            case UNIT -> field.kind() instanceof Choice units ? field.as(new Choice(units(units, rig, value))) : field;
            default -> field;
        };
    }

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
        options.add(new Option("", "another: its field below"));
        return options;
    }

    /** Divisions are offered only for a reticle that has them, and field widths only if they were filled in before. */
    private static List<Option> units(Choice units, Rig rig, String value) {
        boolean hasDivisions =
                rig.optics().stream().anyMatch(optic -> optic.division().isPresent());
        return units.options().stream()
                .filter(option -> option.value().equals(value)
                        || (option.value().isEmpty()
                                ? hasDivisions
                                : !option.value().equals("fields")))
                .toList();
    }
}
