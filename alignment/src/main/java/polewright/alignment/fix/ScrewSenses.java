package polewright.alignment.fix;

import java.util.List;
import java.util.function.ToDoubleFunction;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;

/**
 * The probability, 0 to 1, that each screw moves the axis in the direction given by {@link Fix#rig}.
 *
 * <p>It is 1 for a screw whose direction the owner gave, unless the night contradicts it. For a screw whose direction
 * is only assumed, it is the probability from earlier nights, or 0.5 if there are none.
 *
 * @param azimuthTried whether the azimuth screw was turned tonight without its direction being known
 * @param altitudeTried the same of the altitude screw
 * @param otherPlaces where the axis is if a screw that was turned goes the other way, for each case that is not ruled
 *     out
 */
public record ScrewSenses(
        double azimuth, double altitude, boolean azimuthTried, boolean altitudeTried, List<Otherwise> otherPlaces) {
    /**
     * At this probability a direction counts as known. One sighting cannot do better, because it may itself be wrong.
     */
    public static final double KNOWN = 0.99;

    // One rig in 200 is described the wrong way round or has been taken apart since.
    private static final double SUREST_LOG_ODDS = Math.log(200);

    /** Another possible place of the axis, with its probability. */
    public record Otherwise(double probability, AxisOffset offset) {}

    public ScrewSenses {
        requireProbability(azimuth);
        requireProbability(altitude);
        otherPlaces = List.copyOf(otherPlaces);
    }

    /** Senses without any other place of the axis than that of the fix. */
    public ScrewSenses(double azimuth, double altitude) {
        this(azimuth, altitude, false, false, List.of());
    }

    /**
     * Before any turn of the night: from the rig description, or from earlier nights where its direction is assumed.
     */
    public static ScrewSenses before(Rig rig) {
        return new ScrewSenses(
                before(rig.azimuthScrew(), rig, Experience::azimuthSense),
                before(rig.altitudeScrew(), rig, Experience::altitudeSense));
    }

    private static double before(Screw screw, Rig rig, ToDoubleFunction<Experience> shown) {
        return screw.isSenseAssumed()
                ? rig.experience()
                        .map(shown::applyAsDouble)
                        .map(ScrewSenses::atSurest)
                        .orElse(Experience.SENSE_UNKNOWN)
                : 1;
    }

    /** Bounds experience away from 0 and 1, because tonight's turns could never overrule a certainty. */
    private static double atSurest(double probability) {
        return Math.max(ofLogOdds(-SUREST_LOG_ODDS), Math.min(ofLogOdds(SUREST_LOG_ODDS), probability));
    }

    /** Natural logarithm of the odds, bounded at 200 to 1 for use on another night. */
    public static double logOdds(double probability) {
        return bounded(Math.log(probability / (1 - probability)));
    }

    /** Log odds bounded as in {@link #logOdds}. */
    public static double bounded(double logOdds) {
        return Math.max(-SUREST_LOG_ODDS, Math.min(SUREST_LOG_ODDS, logOdds));
    }

    /** The probability for these log odds. */
    public static double ofLogOdds(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }

    /** Whether the direction of the azimuth screw is known. */
    public boolean isAzimuthKnown() {
        return azimuth >= KNOWN;
    }

    /** Whether the direction of the altitude screw is known. */
    public boolean isAltitudeKnown() {
        return altitude >= KNOWN;
    }

    private static void requireProbability(double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException(value + " is no probability");
        }
    }
}
