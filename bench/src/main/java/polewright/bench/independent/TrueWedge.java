package polewright.bench.independent;

import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import polewright.bench.independent.truth.Wedge;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/**
 * How a wedge's screws are drawn, and what its owner may have stated about them.
 *
 * @param azimuthFactor the azimuth screw's effect over the usual one, negative if it goes the other way
 * @param altitudeFactor the altitude screw's effect over the usual one
 */
record TrueWedge(double azimuthFactor, double altitudeFactor) {
    /**
     * The usual wedge: threads of 1.25 mm on arms of 200 and 180 mm. Written down here, not read from the code under
     * test.
     */
    private static final double PITCH_MM = 1.25;

    private static final double AZIMUTH_ARM_MM = 200;
    private static final double ALTITUDE_ARM_MM = 180;
    private static final double PLAY_TURNS = 0.2;
    private static final double LEAN = Math.toRadians(1);
    private static final double LEAST_FACTOR = 0.3;
    private static final double HAND_SIGMA_TURNS = 0.05;
    private static final double GAIN_MEASURED = 0.05;
    private static final double GAIN_BY_RULER = 0.15;
    private static final double FINDER_FIELD_DEG = 6;
    private static final double DIVISION_ARCSEC = 15;

    /** Either sense with equal probability, with a scatter of a quarter (1 sigma) about the usual effect. */
    static TrueWedge sensesEven(RandomGenerator random) {
        return new TrueWedge(
                factor(0.25, random) * (random.nextBoolean() ? 1 : -1),
                factor(0.25, random) * (random.nextBoolean() ? 1 : -1));
    }

    /** Either sense, with a scatter of 15 % (1 sigma) about the usual effect. */
    static TrueWedge asStated(RandomGenerator random) {
        return new TrueWedge(
                factor(GAIN_BY_RULER, random) * (random.nextBoolean() ? 1 : -1),
                factor(GAIN_BY_RULER, random) * (random.nextBoolean() ? 1 : -1));
    }

    private static double factor(double sigma, RandomGenerator random) {
        return Math.max(LEAST_FACTOR, 1 + sigma * random.nextGaussian());
    }

    Wedge at(Scene scene) {
        return Wedge.set(
                scene.place(),
                scene.offset(),
                LEAN,
                PITCH_MM / AZIMUTH_ARM_MM * azimuthFactor,
                PITCH_MM / ALTITUDE_ARM_MM * altitudeFactor,
                PLAY_TURNS,
                scene.random());
    }

    /** The rig of an owner who stated nothing. */
    static Rig nothingStated() {
        return Rig.typicalForkOnWedge();
    }

    /** The rig of an owner who has measured it: senses, gains to 5 % and backlash. */
    Rig correctlyStated() {
        return stated(GAIN_MEASURED, azimuthFactor, altitudeFactor, Orientation.INVERTED);
    }

    /**
     * The rig of an owner who knows the senses of the screws and has measured their arms by ruler.
     *
     * @param finder as the owner states it
     */
    Rig statedByRuler(Orientation finder) {
        return stated(GAIN_BY_RULER, Math.signum(azimuthFactor), Math.signum(altitudeFactor), finder);
    }

    private static Rig stated(double relativeGainSigma, double azimuth, double altitude, Orientation finder) {
        return new Rig(
                "fork of the shed",
                MountKind.FORK_ON_WEDGE,
                screw(AZIMUTH_ARM_MM, azimuth, relativeGainSigma, ScrewSense.RIGHT),
                screw(ALTITUDE_ARM_MM, altitude, relativeGainSigma, ScrewSense.RAISES),
                Angle.ofDegrees(1),
                Angle.ofArcminutes(2),
                List.of(
                        new Optic("finder", Angle.ofDegrees(FINDER_FIELD_DEG), View.of(finder), Optional.empty()),
                        new Optic(
                                "reticle",
                                Angle.ofDegrees(0.4),
                                View.of(Orientation.MIRRORED),
                                Optional.of(Angle.ofArcseconds(DIVISION_ARCSEC)))));
    }

    private static Screw screw(double armMm, double factor, double relativeGainSigma, ScrewSense positive) {
        return new Screw(
                new ScrewGeometry.PushScrew(PITCH_MM, armMm / Math.abs(factor)),
                factor < 0 ? positive.reversed() : positive,
                relativeGainSigma,
                HAND_SIGMA_TURNS,
                PLAY_TURNS);
    }
}
