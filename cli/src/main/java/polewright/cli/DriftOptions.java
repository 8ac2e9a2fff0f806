package polewright.cli;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.operations.input.NumberInput;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** How far a star drifted, in which unit, and in which direction. */
final class DriftOptions {
    /** The unit of the drift. */
    enum Unit {
        arcsec,
        divisions,
        fields,
        /** From the centre of the field to its edge. */
        radii,
        pixels
    }

    @Option(names = "--moved", required = true, paramLabel = "N", description = "How far it drifted; 0 if not at all.")
    private double count;

    @Option(
            names = "--unit",
            paramLabel = "UNIT",
            description =
                    "arcsec, divisions (of a reticle), radii (from the centre of the field to its edge: 0.2 is a fifth"
                            + " of the way, 1 is out of the field), fields (field widths), or pixels. Required"
                            + " unless --with"
                            + " names an optic with a reticle.")
    private @Nullable Unit unit;

    @Option(names = "--per", paramLabel = "ARCSEC", description = "Arcseconds in one division or pixel.")
    private @Nullable Double perArcsec;

    @Option(
            names = "--toward",
            required = true,
            paramLabel = "WHERE",
            description = "north or south on the sky; or the edge of the view as on a clock face, with --view or"
                    + " --west.")
    private String toward;

    @Option(
            names = "--west",
            paramLabel = "CLOCK",
            description = "Where stars leave the view with the drive off. The view may then be rotated any way.")
    private @Nullable Double westClock;

    /** How the reticle was set. */
    enum Reticle {
        trail,
        slow,
        unknown
    }

    @Option(
            names = "--reticle",
            paramLabel = "HOW",
            description =
                    "How the reticle line was set, for a drift north or south: trail (a star ran along it with the"
                            + " drive off), slow (a star was moved along it by slow motion), or unknown. Default:"
                            + " trail.")
    private Reticle reticle = Reticle.trail;

    @Option(names = "--sigma", paramLabel = "N", description = "Uncertainty of the drift, in the same unit.")
    private @Nullable Double sigmaCount;

    ReadLength moved(ViewOptions view, Rig rig) {
        return switch (unit(view, rig)) {
            case arcsec -> ReadLength.ofArcseconds(count);
            case fields -> ReadLength.ofField(count, view.field(rig));
            case radii -> ReadLength.ofField(count / 2, view.field(rig));
            case pixels -> ReadLength.ofPixels(count, per("pixel"));
            case divisions ->
                ReadLength.ofDivisions(
                        count,
                        perArcsec == null
                                ? view.division(rig)
                                        .orElseThrow(() -> new InputRefused(
                                                "the size of a reticle division is not known",
                                                "add --per ARCSEC, or --with an optic that has a reticle"))
                                : per("division"));
        };
    }

    Angle sigma(ReadLength moved) {
        if (unit == Unit.radii) {
            return moved.perUnit().times(sigmaOfRadius() / 2);
        }
        if (sigmaCount != null) {
            if (!(sigmaCount > 0)) {
                throw new InputRefused(
                        "an uncertainty of " + PlainNumber.asTyped(sigmaCount) + " "
                                + moved.unit().words() + " is not above 0",
                        "give the uncertainty of the drift; half a division is usual");
            }
            return moved.perUnit().times(sigmaCount);
        }
        return StarDrift.usualSigma(moved);
    }

    private double sigmaOfRadius() {
        if (sigmaCount == null) {
            return StarDrift.USUAL_SIGMA_OF_RADIUS;
        }
        if (!(sigmaCount > 0)) {
            throw new InputRefused(
                    "an uncertainty of " + PlainNumber.asTyped(sigmaCount) + " of the way to the edge is not above 0",
                    "give the uncertainty of the drift; 0.1 is usual");
        }
        return sigmaCount;
    }

    DriftDirection direction(ViewOptions view, Rig rig) {
        String where = toward.strip().toLowerCase(Locale.ROOT);
        if (where.equals("north") || where.equals("n")) {
            return new DriftDirection.OnSky(true, readAlong());
        }
        if (where.equals("south") || where.equals("s")) {
            return new DriftDirection.OnSky(false, readAlong());
        }
        ClockDirection edge = clock(where);
        if (westClock != null) {
            boolean mirrored = view.view(rig).orientation() == Orientation.MIRRORED;
            return new DriftDirection.TowardEdgeGivenWest(edge, new ClockDirection(westClock), mirrored);
        }
        return new DriftDirection.TowardEdge(edge, view.view(rig));
    }

    private ReticleNorth readAlong() {
        return switch (reticle) {
            case trail -> ReticleNorth.SKY;
            case slow -> ReticleNorth.MOUNT;
            case unknown -> ReticleNorth.NOT_TOLD;
        };
    }

    private static ClockDirection clock(String where) {
        if (!NumberInput.isNumber(where)) {
            throw new InputRefused(
                    "'" + where + "' is not a direction",
                    "give north or south, or a clock direction in the view such as 6 or 4.5");
        }
        return new ClockDirection(NumberInput.of(where));
    }

    private Unit unit(ViewOptions view, Rig rig) {
        if (unit != null) {
            return unit;
        }
        if (view.division(rig).isPresent() || perArcsec != null) {
            return Unit.divisions;
        }
        throw new InputRefused(
                "the unit of the drift is missing",
                "add --with an optic that has a reticle, or --unit arcsec, divisions, radii, fields or pixels");
    }

    private Angle per(String what) {
        if (perArcsec == null) {
            throw new InputRefused("the angle of one " + what + " is not known", "add --per ARCSEC");
        }
        if (!(perArcsec > 0)) {
            throw new InputRefused(
                    PlainNumber.asTyped(perArcsec) + " arcseconds in one " + what + " is not above 0",
                    "give the angle of one " + what + ", such as --per 1.2");
        }
        return Angle.ofArcseconds(perArcsec);
    }
}
