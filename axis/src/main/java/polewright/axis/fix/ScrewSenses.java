package polewright.axis.fix;

import java.util.List;
import polewright.axis.AxisOffset;
import polewright.axis.rig.Rig;

/**
 * How sure it is which way each screw goes: the probability, 0 to 1, that it goes as {@link Fix#rig} says.
 *
 * <p>1 for a screw whose owner described it, unless the night speaks against that; 0.5 for one of which nothing is known.
 *
 * @param otherwise where the axis is if a screw that was turned goes the other way, for each way that is not ruled out
 */
public record ScrewSenses(double azimuth, double altitude, List<Otherwise> otherwise) {
    /** Surer than that, a sense is no longer asked for. One sighting cannot do better, as it may be mistaken itself. */
    public static final double KNOWN = 0.99;

    static final ScrewSenses CERTAIN = new ScrewSenses(1, 1);
    static final ScrewSenses UNKNOWN = new ScrewSenses(0.5, 0.5);

    /** Another place of the axis, and how probable it is. */
    public record Otherwise(double probability, AxisOffset offset) {}

    public ScrewSenses {
        requireProbability(azimuth);
        requireProbability(altitude);
        otherwise = List.copyOf(otherwise);
    }

    /** No other place of the axis than the fix's. */
    public ScrewSenses(double azimuth, double altitude) {
        this(azimuth, altitude, List.of());
    }

    /** Before any turn of the night. */
    static ScrewSenses before(Rig rig) {
        return rig.hasAssumedScrews() ? UNKNOWN : CERTAIN;
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
