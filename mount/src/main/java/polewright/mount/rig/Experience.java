package polewright.mount.rig;

import polewright.mount.AxisOffset;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * What earlier nights have taught about a rig. Learned when a night begins and kept with its rig, so that the night can
 * be told from its own events alone.
 *
 * @param nights how many earlier nights with turns that taught something
 * @param azimuthFactor azimuth made by the azimuth screw over what its geometry says
 * @param azimuthSigma 1 sigma of that, for the next night
 * @param altitudeFactor altitude made by the altitude screw over what its geometry says
 * @param altitudeSigma 1 sigma of that, for the next night
 * @param clampings how many earlier clampings were seen from both sides
 * @param clampShift how tightening the clamps usually moves the axis on the sky
 * @param clampSigma 1 sigma of that in each direction, for the next clamping
 * @param azimuthSense probability that the azimuth screw goes as the rig says; counts where that is only assumed
 * @param altitudeSense the same of the altitude screw
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
    /** The probability of a sense before any night has shown it. */
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

    /** Neither direction is known. */
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

    /** The same with other probabilities of the screws going as the rig says. */
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

    /** The same with what it says of the screws known worse by this factor. */
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

    /** The same, with nothing learned of how far the azimuth screw goes: its geometry holds, to this fraction. */
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

    /** The same, with nothing learned of how far the altitude screw goes: its geometry holds, to this fraction. */
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

    /** The same, with nothing learned of clamping. */
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
