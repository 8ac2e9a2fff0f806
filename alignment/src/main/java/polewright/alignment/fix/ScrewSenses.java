package polewright.alignment.fix;

import java.util.List;
import java.util.function.ToDoubleFunction;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;

/**
 * How sure it is which way each screw goes: the probability, 0 to 1, that it goes as {@link Fix#rig} says.
 *
 * <p>1 for a screw whose owner said so, unless the night speaks against that; for one whose sense is assumed what earlier
 * nights have shown, and 0.5 before any has.
 *
 * @param azimuthTried whether the azimuth screw was turned tonight without its direction being known
 * @param altitudeTried the same of the altitude screw
 * @param otherwise where the axis is if a screw that was turned goes the other way, for each way that is not ruled out
 */
public record ScrewSenses(
        double azimuth, double altitude, boolean azimuthTried, boolean altitudeTried, List<Otherwise> otherwise) {
    /** Surer than that, a sense is no longer asked for. One sighting cannot do better, as it may be mistaken itself. */
    public static final double KNOWN = 0.99;

    // A rig is described the wrong way round, or was taken apart since, once in two hundred times.
    private static final double SUREST_LOG_ODDS = Math.log(200);

    /** Another place of the axis, and how probable it is. */
    public record Otherwise(double probability, AxisOffset offset) {}

    public ScrewSenses {
        requireProbability(azimuth);
        requireProbability(altitude);
        otherwise = List.copyOf(otherwise);
    }

    /** No other place of the axis than the fix's. */
    public ScrewSenses(double azimuth, double altitude) {
        this(azimuth, altitude, false, false, List.of());
    }

    /** Before any turn of the night: by the rig's word, and by earlier nights where it has none. */
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

    /** No experience is certain: a probability of 0 or 1 would leave nothing for tonight's turns to weigh. */
    private static double atSurest(double probability) {
        return Math.max(ofLogOdds(-SUREST_LOG_ODDS), Math.min(ofLogOdds(SUREST_LOG_ODDS), probability));
    }

    /** Natural logarithm of the odds, as far as they count for another time: never surer than 200 to 1. */
    public static double logOdds(double probability) {
        return bounded(Math.log(probability / (1 - probability)));
    }

    /** The same odds, no surer than {@link #logOdds} says. */
    public static double bounded(double logOdds) {
        return Math.max(-SUREST_LOG_ODDS, Math.min(SUREST_LOG_ODDS, logOdds));
    }

    /** The probability that has these odds. */
    public static double ofLogOdds(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }

    /** Whether it is known which way the azimuth screw goes. */
    public boolean isAzimuthKnown() {
        return azimuth >= KNOWN;
    }

    /** Whether it is known which way the altitude screw goes. */
    public boolean isAltitudeKnown() {
        return altitude >= KNOWN;
    }

    private static void requireProbability(double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException(value + " is no probability");
        }
    }
}
