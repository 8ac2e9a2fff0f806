package polewright.operations.sighting;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** What the observer looked through: an optic of the rig by name, or its figures. */
public final class OpticArguments {
    public static final Argument<String> WITH = Argument.option(
            "with", "Seen through", "An optic of the rig, such as finder: gives field and view.", Words.plain("OPTIC"));
    static final Argument<Double> FIELD = Argument.option(
                    "field", "Or the true field, edge to edge", "Only if no optic is named.", Figure.of(Unit.DEGREES))
            .seldom();
    static final Argument<Orientation> VIEW = Argument.option(
                    "view",
                    "The view is",
                    "",
                    Choice.of(
                            Orientation.class,
                            "VIEW",
                            "as entered for this optic",
                            Map.of(
                                    Orientation.ERECT, "erect, as by eye",
                                    Orientation.INVERTED, "upside down",
                                    Orientation.MIRRORED, "mirrored, by a star diagonal")))
            .seldom();
    static final Argument<Double> TURNED = Argument.option(
                    "turned",
                    "The view is rotated by",
                    "Clockwise, such as by a diagonal set sideways.",
                    Figure.signed(Unit.DEGREES))
            .seldom();

    private OpticArguments() {}

    static Angle field(Entries entries, Rig rig) {
        Optional<Double> typedDeg = entries.given(FIELD);
        if (typedDeg.isPresent()) {
            double fieldDeg = typedDeg.get();
            if (!(fieldDeg > 0 && fieldDeg <= 60)) {
                throw new InputRefused(
                        "a field width of " + PlainNumber.asTyped(fieldDeg) + " degrees is outside 0 to 60",
                        "give the true field: eyepiece apparent field / magnification");
            }
            return Angle.ofDegrees(fieldDeg);
        }
        return optic(entries, rig)
                .map(Optic::field)
                .orElseThrow(
                        () -> new InputRefused("the field width is not known", "give {with} or {field}" + named(rig)));
    }

    static View view(Entries entries, Rig rig) {
        Optional<View> ofOptic = optic(entries, rig).map(Optic::view);
        Angle turned = Angle.ofDegrees(entries.given(TURNED).orElse(0.0));
        return entries.given(VIEW)
                .map(orientation -> new View(orientation, turned))
                .or(() -> ofOptic.map(
                        view -> new View(view.orientation(), view.turned().plus(turned))))
                .orElseThrow(() -> new InputRefused(
                        "the orientation of the view is not known",
                        "give {with}, or {view} as erect, inverted or mirrored" + named(rig)));
    }

    /** The view for a sketch, which is drawn even if the optic is unknown. */
    static View viewIfKnown(Entries entries, Rig rig) {
        return entries.given(VIEW)
                .map(View::of)
                .or(() -> entries.given(WITH).flatMap(rig::optic).map(Optic::view))
                .orElse(View.NAKED_EYE);
    }

    static Optional<Angle> division(Entries entries, Rig rig) {
        return optic(entries, rig).flatMap(Optic::division);
    }

    private static Optional<Optic> optic(Entries entries, Rig rig) {
        return entries.given(WITH)
                .map(name -> rig.optic(name)
                        .orElseThrow(() -> new InputRefused(
                                "the rig has no optic called '" + name + "'", "give {field} and {view}" + named(rig))));
    }

    private static String named(Rig rig) {
        return rig.optics().isEmpty()
                ? ""
                : " (the rig has "
                        + rig.optics().stream()
                                .map(optic -> optic.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))
                        + ")";
    }

    /** A logged view as it can be typed again. */
    static void putView(Map<String, String> values, View view) {
        values.put(VIEW.name(), view.orientation().name().toLowerCase(Locale.ROOT));
        if (view.turned().radians() != 0) {
            values.put(TURNED.name(), TypedText.degrees(view.turned()));
        }
    }
}
