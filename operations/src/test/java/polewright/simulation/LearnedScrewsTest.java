package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;
import java.util.stream.LongStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.fix.AxisState;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;

/**
 * How soon gains that differ by 30 % from the rig description are learned, with typical observers, hands and backlash,
 * on tilted bases: the error of the next turn relative to the move, with that turn made exactly. The initial offset
 * is 1° to 2° or 3° to 6° in both directions: a screw that was hardly turned gives no information.
 */
class LearnedScrewsTest {
    private static final int WEDGES = 40;
    private static final double GAIN_ERROR = 0.3;

    private static Rig rig(double gainSigma) {
        return new Rig(
                "fork",
                MountKind.FORK_ON_WEDGE,
                new Screw(new ScrewGeometry.PushScrew(1.25, 200), ScrewSense.RIGHT, gainSigma, 0.05, 0.1),
                new Screw(new ScrewGeometry.PushScrew(1.25, 180), ScrewSense.RAISES, gainSigma, 0.05, 0.1),
                Angle.ofDegrees(1.5),
                Angle.ofArcminutes(1.5),
                List.of());
    }

    /** The error of three turns of each screw relative to the move, before any adjustment and after each. */
    private static double[] errors(long seed, Rig rig, double leastDeg, UnaryOperator<PractisedWedge> look) {
        RandomGenerator random = PractisedWedge.random(seed);
        HiddenWedge drawn = HiddenWedge.of(
                PractisedWedge.site(seed, random), rig, PractisedWedge.offset(leastDeg, 2 * leastDeg, random), random);
        PractisedWedge night = look.apply(new PractisedWedge(
                PractisedWedge.withFactors(
                        drawn,
                        1 + (random.nextBoolean() ? GAIN_ERROR : -GAIN_ERROR),
                        1 + (random.nextBoolean() ? GAIN_ERROR : -GAIN_ERROR)),
                random));
        double[] errors = new double[3];
        errors[0] = nextTurnsError(night);
        for (int adjustment = 1; adjustment <= 2; adjustment++) {
            night = look.apply(night.turnedToThePole());
            errors[adjustment] = nextTurnsError(night);
        }
        return errors;
    }

    private static double nextTurnsError(PractisedWedge night) {
        HandTurns azimuth = HandTurns.straight(3 * sense(night.state().lastAzimuthSense()));
        HandTurns altitude = HandTurns.straight(3 * sense(night.state().lastAltitudeSense()));
        Rig exact = exactHand(night.wedge().rig());
        HiddenWedge before = night.wedge();
        HiddenWedge after = new HiddenWedge(
                        before.site(),
                        exact,
                        before.axis(),
                        before.azimuthAxis(),
                        before.azimuthFactor(),
                        before.altitudeFactor(),
                        DeadZone.untouched(0),
                        DeadZone.untouched(0))
                .turned(azimuth, altitude, PractisedWedge.random(1));
        AxisState from = night.state();
        Vector3D predicted = from.afterTurns(exact, azimuth, altitude)
                .axis()
                .elevatedEnd()
                .subtract(from.axis().elevatedEnd());
        Vector3D made = after.axis().subtract(before.axis());
        return made.distance(predicted) / made.getNorm();
    }

    /** The next turn continues in the same sense, so that backlash does not matter. */
    private static double sense(double last) {
        return last == 0 ? 1 : last;
    }

    private static Rig exactHand(Rig rig) {
        return rig.withScrews(exact(rig.azimuthScrew()), exact(rig.altitudeScrew()), rig.levelSigma());
    }

    private static Screw exact(Screw screw) {
        return new Screw(screw.geometry(), screw.clockwise(), screw.relativeGainSigma(), 0.001, 0);
    }

    @ParameterizedTest
    @CsvSource({
        "0.30, eye, 1", "0.30, camera, 1", "0.15, eye, 1", "0.15, camera, 1",
        "0.30, eye, 3", "0.30, camera, 3", "0.15, eye, 3", "0.15, camera, 3"
    })
    void screwsThirtyPercentOff_areLearnedToFivePercentInTwoAdjustments(
            double gainSigma, String sight, double leastDeg) {
        UnaryOperator<PractisedWedge> look =
                sight.equals("eye") ? PractisedWedge::seenByEye : PractisedWedge::seenByCamera;
        double[][] errors = LongStream.range(0, WEDGES)
                .mapToObj(seed -> errors(seed, rig(gainSigma), leastDeg, look))
                .toArray(double[][]::new);

        assertThat(rms(errors, 0)).isGreaterThan(0.25);
        assertThat(median(errors, 2)).isLessThan(0.03);
        assertThat(rms(errors, 2)).isLessThan(0.05);
    }

    private static double rms(double[][] errors, int adjustments) {
        return Math.sqrt(Arrays.stream(errors)
                .mapToDouble(e -> e[adjustments] * e[adjustments])
                .average()
                .orElseThrow());
    }

    private static double median(double[][] errors, int adjustments) {
        return Arrays.stream(errors)
                .mapToDouble(e -> e[adjustments])
                .sorted()
                .skip(errors.length / 2)
                .findFirst()
                .orElseThrow();
    }
}
