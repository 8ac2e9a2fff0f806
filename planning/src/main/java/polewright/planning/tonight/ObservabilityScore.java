package polewright.planning.tonight;

import java.util.OptionalDouble;
import polewright.alignment.work.WorkPreset;
import polewright.mount.reach.PointingLimits;
import polewright.sky.almanac.Moonlight;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;

/**
 * How well a target can be observed at one moment, from 0 to 1: a product of factors, each monotonic in the quantity it
 * is named after.
 *
 * <ul>
 * <li><b>height</b>: the sine of its altitude, the inverse of the air mass;
 * <li><b>brightness</b>: from 1 at magnitude 4 and brighter down to 0.02 at 14; 0.1 if unknown;
 * <li><b>contrast</b>: its surface brightness divided by the sum of itself and a third of the sky's; 0.5 without a
 *     surface brightness. A cluster is seen as stars, which moonlight hardly affects: the mean of that and 1. The
 *     surface brightness of a nebula is capped at 21.5 magnitudes per square arcsecond, because its catalogue magnitude
 *     includes its stars. Planets and the Moon 1;
 * <li><b>glare</b>: within 5° of a thin Moon to 20° of a full one, in the ratio of the distances; planets 1;
 * <li><b>renown</b>: 1 for Messier objects, 0.75 with a common name, 0.4 for the rest: catalogues give nebulae the
 *     magnitudes of the stars in them, so that they would lead a list sorted by numbers alone;
 * <li><b>fit</b>: 1 if its major axis is between one tenth and eight tenths of the field, less if smaller; if larger,
 *     the square root of eight tenths of the field divided by its extent, because its brightest part is still shown;
 *     planets and the Moon 0.8;
 * <li><b>work</b>: the suitability of the best kind of work ({@link #work}).
 * </ul>
 *
 * The weights are our own: they rank objects of the usual observing lists first in the usual order (common practice).
 */
final class ObservabilityScore {
    private static final double SMALL = 0.1;
    private static final double LARGE = 0.8;
    private static final double BRIGHT = 4;
    private static final double FAINT = 14;
    private static final double LEAST = 0.02;
    private static final double BRIGHTEST_NEBULA = 21.5;

    private final Target target;
    /** Brightness, renown, fit and work, which are constant through the night. */
    private final double allNight;

    private final boolean isBrightBody;
    private final OptionalDouble surface;

    private ObservabilityScore(Target target, Observing observing) {
        this.target = target;
        this.isBrightBody = target.isBrightBody();
        this.surface = surface(target);
        this.allNight = brightness(target)
                * renown(target)
                * fit(target, observing.field())
                * observing.kinds().stream()
                        .mapToDouble(kind -> work(target.nature(), kind))
                        .max()
                        .orElse(1);
    }

    private static OptionalDouble surface(Target target) {
        OptionalDouble listed = target.surfaceBrightness();
        return target.nature() == Target.Nature.NEBULA && listed.isPresent()
                ? OptionalDouble.of(Math.max(BRIGHTEST_NEBULA, listed.getAsDouble()))
                : listed;
    }

    static ObservabilityScore of(Target target, Observing observing) {
        return new ObservabilityScore(target, observing);
    }

    /** With the target at that place, and the Moon as it is then. */
    double at(HourAnglePlace place, MoonPath.Now moon, PointingLimits reach) {
        Angle altitude = reach.altitudeSeen(place);
        if (isBrightBody) {
            return at(altitude, Moonlight.DARK_ZENITH);
        }
        Angle moonDistance = moon.distance(place);
        return at(altitude, moon.light().sky(altitude, moonDistance)) * glare(moonDistance, moon.glare());
    }

    /** Without the Moon's glare. */
    double at(Angle altitude, double skyMagnitude) {
        return Math.max(0, altitude.sin()) * contrast(skyMagnitude) * allNight;
    }

    /**
     * Long exposures do not suit planets, a high-power eyepiece shows little of a faint glow, and dark hours are too
     * rare to spend on a cluster (common practice; the values are our own).
     */
    private static double work(Target.Nature nature, WorkPreset kind) {
        return switch (kind) {
            case CASUAL_LOOK, LOOK_BY_HAND -> nature == Target.Nature.CLUSTER ? 0.7 : 1;
            case PLANETS ->
                switch (nature) {
                    case MOON, PLANET, STAR -> 1;
                    case CLUSTER -> 0.5;
                    case NEBULA, GLOW -> 0.4;
                };
            case SHORT_SUBS ->
                switch (nature) {
                    case MOON, PLANET -> 0.3;
                    case CLUSTER -> 0.5;
                    case NEBULA, GLOW, STAR -> 1;
                };
            case LONG_GUIDED_SUBS ->
                switch (nature) {
                    case MOON, PLANET -> 0.15;
                    case CLUSTER -> 0.4;
                    case NEBULA, GLOW, STAR -> 1;
                };
        };
    }

    private static double glare(Angle moonDistance, Angle glare) {
        return moonDistance.compareTo(glare) >= 0 ? 1 : moonDistance.radians() / glare.radians();
    }

    private static double renown(Target target) {
        return switch (target.renown()) {
            case FAMOUS -> 1;
            case NAMED -> 0.75;
            case LISTED -> 0.4;
        };
    }

    private static double brightness(Target target) {
        if (target.isBrightBody()) {
            return 1;
        }
        if (target.magnitude().isEmpty()) {
            return 0.1;
        }
        double share = (FAINT - target.magnitude().getAsDouble()) / (FAINT - BRIGHT);
        return Math.max(LEAST, Math.min(1, share));
    }

    private double contrast(double skyMagnitude) {
        if (isBrightBody) {
            return 1;
        }
        if (surface.isEmpty()) {
            return 0.5;
        }
        double ratio = Math.pow(10, 0.4 * (skyMagnitude - surface.getAsDouble()));
        double contrast = ratio / (ratio + 1 / 3.0);
        return target.nature() == Target.Nature.CLUSTER ? (1 + contrast) / 2 : contrast;
    }

    private static double fit(Target target, Angle field) {
        double share = target.major().radians() / field.radians();
        if (target.isBrightBody()) {
            return 0.8;
        }
        if (share > LARGE) {
            return Math.sqrt(LARGE / share);
        }
        return share >= SMALL ? 1 : 0.3 + 0.7 * share / SMALL;
    }
}
