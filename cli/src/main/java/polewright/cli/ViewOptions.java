package polewright.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** What the observer looked through: an optic of the rig by name, or its figures. */
final class ViewOptions {
    @Option(
            names = "--with",
            paramLabel = "OPTIC",
            description = "An optic of the rig, such as finder; sets field and view.")
    private @Nullable String opticName;

    @Option(names = "--field", paramLabel = "DEG", description = "True field of the view, edge to edge.")
    private @Nullable Double fieldDeg;

    @Option(
            names = "--view",
            paramLabel = "VIEW",
            description = "erect (as the eye), inverted (upside down), or mirrored (star diagonal).")
    private @Nullable Orientation orientation;

    @Option(
            names = "--turned",
            paramLabel = "DEG",
            description = "Clockwise rotation of the view, e.g. by a diagonal set sideways.")
    private double turnedDeg;

    Angle field(Rig rig) {
        if (fieldDeg != null) {
            if (!(fieldDeg > 0 && fieldDeg <= 60)) {
                throw new InputRefused(
                        "a field width of " + PlainNumber.asTyped(fieldDeg) + " degrees is outside 0 to 60",
                        "give the true field: eyepiece apparent field / magnification");
            }
            return Angle.ofDegrees(fieldDeg);
        }
        return optic(rig)
                .map(Optic::field)
                .orElseThrow(() -> new InputRefused(
                        "the field width is not known", "add --with OPTIC or --field DEG" + named(rig)));
    }

    View view(Rig rig) {
        Optional<View> ofOptic = optic(rig).map(Optic::view);
        Angle turned = Angle.ofDegrees(turnedDeg);
        if (orientation != null) {
            return new View(orientation, turned);
        }
        return ofOptic.map(v -> new View(v.orientation(), v.turned().plus(turned)))
                .orElseThrow(() -> new InputRefused(
                        "the orientation of the view is not known",
                        "add --with OPTIC, or --view erect, inverted or mirrored" + named(rig)));
    }

    Optional<Angle> division(Rig rig) {
        return optic(rig).flatMap(Optic::division);
    }

    private Optional<Optic> optic(Rig rig) {
        if (opticName == null) {
            return Optional.empty();
        }
        Optional<Optic> found = rig.optic(opticName);
        if (found.isEmpty()) {
            throw new InputRefused(
                    "the rig has no optic called '" + opticName + "'", "give --field and --view" + named(rig));
        }
        return found;
    }

    private static String named(Rig rig) {
        return rig.optics().isEmpty()
                ? ""
                : " (the rig has "
                        + rig.optics().stream()
                                .map(o -> o.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))
                        + ")";
    }
}
