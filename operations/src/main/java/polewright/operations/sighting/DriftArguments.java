package polewright.operations.sighting;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.NumberInput;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** How far a star drifted, in which unit, and in which direction. */
final class DriftArguments {
    /** The unit in which a drift is typed. */
    enum DriftUnit {
        DIVISIONS,
        /** From the centre of the field to its edge. */
        RADII,
        FIELDS,
        ARCSEC,
        PIXELS
    }

    /** How the line of a reticle was set. */
    enum ReticleSetting {
        TRAIL,
        SLOW,
        UNKNOWN
    }

    static final Argument<Double> MOVED = Argument.option(
                    "moved",
                    "Drift",
                    "0 if none. With a plain crosshair, 0.2 is a fifth of the way from the centre to the edge, 1 is out"
                            + " of the field.",
                    Figure.of(Unit.NONE))
            .required();
    static final Argument<DriftUnit> UNIT = Argument.option(
            "unit",
            "Counted in",
            "",
            Choice.of(
                    DriftUnit.class,
                    "UNIT",
                    "divisions of the reticle",
                    Map.of(
                            DriftUnit.RADII, "fractions of the way from centre to edge",
                            DriftUnit.FIELDS, "field widths",
                            DriftUnit.ARCSEC, "arcseconds",
                            DriftUnit.PIXELS, "pixels")));
    static final Argument<Double> PER = Argument.option(
                    "per", "One division or pixel", "Only if not known from the optic.", Figure.of(Unit.ARCSECONDS))
            .seldom();
    static final Argument<String> TOWARD = Argument.option(
                    "toward",
                    "Toward",
                    "North or south, or an edge as on a clock face, such as 6.",
                    Words.plain("WHERE"))
            .required();
    static final Argument<Double> WEST = Argument.option(
                    "west",
                    "Where stars leave with the drive off",
                    "A clock direction; for any view.",
                    Figure.of(Unit.CLOCK_HOURS))
            .seldom();
    static final Argument<ReticleSetting> RETICLE = Argument.option(
                    "reticle",
                    "How the reticle line was set",
                    "Only for a drift north or south. Some degrees off the pole it matters.",
                    Choice.of(
                            ReticleSetting.class,
                            "HOW",
                            "a star ran along it, drive off",
                            Map.of(
                                    ReticleSetting.SLOW, "a star was moved along it by slow motion",
                                    ReticleSetting.UNKNOWN, "not known")))
            .seldom();
    static final Argument<Double> SIGMA = Argument.option(
                    "sigma", "Uncertainty of the drift", "1 sigma, in the unit above.", Figure.of(Unit.NONE))
            .seldom();

    private DriftArguments() {}

    static ReadLength moved(Entries entries, Rig rig) {
        double count = entries.of(MOVED);
        return switch (unit(entries, rig)) {
            case ARCSEC -> ReadLength.ofArcseconds(count);
            case FIELDS -> ReadLength.ofField(count, OpticArguments.field(entries, rig));
            case RADII -> ReadLength.ofField(count / 2, OpticArguments.field(entries, rig));
            case PIXELS -> ReadLength.ofPixels(count, per(entries, "pixel"));
            case DIVISIONS ->
                ReadLength.ofDivisions(
                        count,
                        entries.given(PER).isPresent()
                                ? per(entries, "division")
                                : OpticArguments.division(entries, rig)
                                        .orElseThrow(() -> new InputRefused(
                                                "the size of a reticle division is not known",
                                                "give {per}, or use {with} for an optic that has a reticle")));
        };
    }

    private static DriftUnit unit(Entries entries, Rig rig) {
        return entries.given(UNIT).orElseGet(() -> {
            if (OpticArguments.division(entries, rig).isPresent()
                    || entries.given(PER).isPresent()) {
                return DriftUnit.DIVISIONS;
            }
            throw new InputRefused(
                    "the unit of the drift is missing",
                    "use {with} for an optic that has a reticle, or {unit} with arcsec, divisions, radii, fields or pixels");
        });
    }

    private static Angle per(Entries entries, String what) {
        double arcseconds = entries.given(PER)
                .orElseThrow(() -> new InputRefused("the angle of one " + what + " is not known", "give {per}"));
        if (!(arcseconds > 0)) {
            throw new InputRefused(
                    PlainNumber.asTyped(arcseconds) + " arcseconds in one " + what + " is not above 0",
                    "give the angle of one " + what + ", such as 1.2");
        }
        return Angle.ofArcseconds(arcseconds);
    }

    static Angle sigma(Entries entries, ReadLength moved) {
        Optional<Double> count = entries.given(SIGMA);
        boolean isOfRadius = entries.given(UNIT).filter(DriftUnit.RADII::equals).isPresent();
        if (count.isPresent() && !(count.get() > 0)) {
            throw new InputRefused(
                    "an uncertainty of " + PlainNumber.asTyped(count.get())
                            + (isOfRadius
                                    ? " of the way to the edge"
                                    : " " + moved.unit().words())
                            + " is not above 0",
                    "give the uncertainty of the drift; " + (isOfRadius ? "0.1" : "half a division") + " is usual");
        }
        if (isOfRadius) {
            return moved.perUnit().times(count.orElse(StarDrift.USUAL_SIGMA_OF_RADIUS) / 2);
        }
        return count.map(sigma -> moved.perUnit().times(sigma)).orElseGet(() -> StarDrift.usualSigma(moved));
    }

    static DriftDirection direction(Entries entries, Rig rig) {
        String where = entries.of(TOWARD).strip().toLowerCase(Locale.ROOT);
        Optional<Boolean> isNorth = isNorth(where);
        if (isNorth.isPresent()) {
            return new DriftDirection.OnSky(isNorth.get(), reticleNorth(entries));
        }
        ClockDirection edge = edge(where);
        if (entries.given(WEST).isPresent()) {
            boolean mirrored = OpticArguments.view(entries, rig).orientation() == Orientation.MIRRORED;
            return new DriftDirection.TowardEdgeGivenWest(edge, new ClockDirection(entries.of(WEST)), mirrored);
        }
        return new DriftDirection.TowardEdge(edge, OpticArguments.view(entries, rig));
    }

    /** Empty if it is neither north nor south. */
    static Optional<Boolean> isNorth(String where) {
        return switch (where) {
            case "north", "n" -> Optional.of(true);
            case "south", "s" -> Optional.of(false);
            default -> Optional.empty();
        };
    }

    private static ReticleNorth reticleNorth(Entries entries) {
        return switch (entries.given(RETICLE).orElse(ReticleSetting.TRAIL)) {
            case TRAIL -> ReticleNorth.SKY;
            case SLOW -> ReticleNorth.MOUNT;
            case UNKNOWN -> ReticleNorth.NOT_TOLD;
        };
    }

    static ClockDirection edge(String where) {
        if (!NumberInput.isNumber(where)) {
            throw new InputRefused(
                    "'" + where + "' is not a direction",
                    "give north or south, or a clock direction in the view such as 6 or 4.5");
        }
        return new ClockDirection(NumberInput.of(where));
    }

    /** A logged drift as it can be typed again. */
    static void put(Map<String, String> values, StarDrift drift) {
        ReadLength moved = drift.drift();
        values.put(MOVED.name(), TypedText.figure(moved.count()));
        switch (moved.unit()) {
            case ARCSECONDS -> values.put(UNIT.name(), "arcsec");
            case PIXELS -> {
                values.put(UNIT.name(), "pixels");
                values.put(PER.name(), TypedText.figure(moved.perUnit().arcseconds()));
            }
            case FIELDS -> {
                values.put(UNIT.name(), "fields");
                values.put(OpticArguments.FIELD.name(), TypedText.degrees(moved.perUnit()));
            }
            case DIVISIONS ->
                values.put(PER.name(), TypedText.figure(moved.perUnit().arcseconds()));
        }
        putDirection(values, drift.direction());
    }

    private static void putDirection(Map<String, String> values, DriftDirection direction) {
        if (direction instanceof DriftDirection.OnSky onSky) {
            values.put(TOWARD.name(), onSky.north() ? "north" : "south");
            if (onSky.readAlong() != ReticleNorth.SKY) {
                values.put(RETICLE.name(), onSky.readAlong() == ReticleNorth.MOUNT ? "slow" : "unknown");
            }
        } else if (direction instanceof DriftDirection.TowardEdge edge) {
            values.put(TOWARD.name(), TypedText.figure(edge.edge().hours()));
            OpticArguments.putView(values, edge.view());
        } else if (direction instanceof DriftDirection.TowardEdgeGivenWest edge) {
            values.put(TOWARD.name(), TypedText.figure(edge.edge().hours()));
            values.put(WEST.name(), TypedText.figure(edge.west().hours()));
            values.put(OpticArguments.VIEW.name(), edge.mirrored() ? "mirrored" : "erect");
        }
    }
}
