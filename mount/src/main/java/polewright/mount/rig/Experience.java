package polewright.mount.rig;

import polewright.mount.AxisOffset;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * What has been learned about a rig on earlier nights. Computed when a night begins and stored with its rig, so that
 * the night can be replayed from its own events alone.
 *
 * @param nights number of earlier nights with informative turns
 * @param azimuthFactor actual azimuth moved by the azimuth screw, divided by that expected from its geometry
 * @param azimuthSigma 1 sigma of that, for the next night
 * @param altitudeFactor actual altitude moved by the altitude screw, divided by that expected from its geometry
 * @param altitudeSigma 1 sigma of that, for the next night
 * @param clampings number of earlier clampings with sightings before and after
 * @param clampShift usual shift of the axis on the sky when the clamps are tightened
 * @param clampSigma 1 sigma of that in each direction, for the next clamping
 * @param azimuthSense probability that the azimuth screw goes in the direction given in the rig; used only if that is
 *     assumed
 * @param altitudeSense the same for the altitude screw
 */
public record Experience(
        int nights,
        double azimuthFactor,
        double azimuthSigma,
        double altitudeFactor,
        double altitudeSigma,
        int clampings,
        AxisOffset clampShift,
        Angle clampSigma,
        double azimuthSense,
        double altitudeSense) {
    /** The probability of a direction before any night has shown it. */
    public static final double SENSE_UNKNOWN = 0.5;

    public Experience {
        if (!(azimuthSigma > 0 && altitudeSigma > 0 && clampSigma.radians() >= 0)) {
            throw new InputRefused(
                    "the record of earlier nights about the screws has no uncertainty",
                    "leave 'learned' out of the rig file");
        }
        if (!isProbability(azimuthSense) || !isProbability(altitudeSense)) {
            throw new InputRefused(
                    "the probability of a screw's direction from earlier nights is outside 0 to 1",
                    "leave 'learned' out of the rig file");
        }
    }

    /** With neither direction known. */
    public Experience(
            int nights,
            double azimuthFactor,
            double azimuthSigma,
            double altitudeFactor,
            double altitudeSigma,
            int clampings,
            AxisOffset clampShift,
            Angle clampSigma) {
        this(
                nights,
                azimuthFactor,
                azimuthSigma,
                altitudeFactor,
                altitudeSigma,
                clampings,
                clampShift,
                clampSigma,
                SENSE_UNKNOWN,
                SENSE_UNKNOWN);
    }

    private static boolean isProbability(double value) {
        return value >= 0 && value <= 1;
    }

    /** The same with other probabilities of the screws' directions. */
    public Experience withSenses(double azimuth, double altitude) {
        return new Experience(
                nights,
                azimuthFactor,
                azimuthSigma,
                altitudeFactor,
                altitudeSigma,
                clampings,
                clampShift,
                clampSigma,
                azimuth,
                altitude);
    }

    /** The same with the uncertainties of the screws multiplied by a factor. */
    public Experience doubtingScrews(double worseBy) {
        return new Experience(
                nights,
                azimuthFactor,
                worseBy * azimuthSigma,
                altitudeFactor,
                worseBy * altitudeSigma,
                clampings,
                clampShift,
                clampSigma,
                azimuthSense,
                altitudeSense);
    }

    /** The same, with nothing learned about the azimuth screw's gain: that of its geometry, to a given fraction. */
    public Experience withoutAzimuth(double sigma) {
        return new Experience(
                nights,
                1,
                sigma,
                altitudeFactor,
                altitudeSigma,
                clampings,
                clampShift,
                clampSigma,
                azimuthSense,
                altitudeSense);
    }

    /** The same, with nothing learned about the altitude screw's gain: that of its geometry, to a given fraction. */
    public Experience withoutAltitude(double sigma) {
        return new Experience(
                nights,
                azimuthFactor,
                azimuthSigma,
                1,
                sigma,
                clampings,
                clampShift,
                clampSigma,
                azimuthSense,
                altitudeSense);
    }

    /** The same, with nothing learned about clamping. */
    public Experience withoutClampings(Angle sigma) {
        return new Experience(
                nights,
                azimuthFactor,
                azimuthSigma,
                altitudeFactor,
                altitudeSigma,
                0,
                AxisOffset.NONE,
                sigma,
                azimuthSense,
                altitudeSense);
    }
}
