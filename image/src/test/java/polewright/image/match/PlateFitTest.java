package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import polewright.sky.attitude.CameraAttitude;

class PlateFitTest {
    private static final double ARCSEC_PER_RAD = Math.toDegrees(1) * 3600;

    private static PlateFit.Pairs pairs(Plate truth, int count, double sigma, Random dice) {
        double[] x = new double[count];
        double[] y = new double[count];
        Vector3D[] directions = new Vector3D[count];
        for (int i = 0; i < count; i++) {
            double px = dice.nextDouble() * (truth.width() - 1);
            double py = dice.nextDouble() * (truth.height() - 1);
            directions[i] = truth.toSky(px, py);
            x[i] = px + sigma * dice.nextGaussian();
            y[i] = py + sigma * dice.nextGaussian();
        }
        return new PlateFit.Pairs(count, i -> x[i], i -> y[i], i -> Math.max(1e-3, sigma), i -> directions[i]);
    }

    private static Plate nudged(Plate plate, double byRad) {
        Rotation turn = new Rotation(new Vector3D(1, 2, -1), byRad, RotationConvention.VECTOR_OPERATOR);
        return new Plate(
                plate.width(),
                plate.height(),
                plate.mirrored(),
                turn.applyTo(plate.right()),
                turn.applyTo(plate.down()),
                turn.applyTo(plate.centre()),
                plate.pixelsPerRadian() * 1.01,
                Distortion.NONE);
    }

    @RepeatedTest(20)
    void plate_isRecoveredFromExactPositions(RepetitionInfo repetition) {
        Random dice = new Random(repetition.getCurrentRepetition());
        Plate truth = PlateTest.random(dice, true);
        PlateFit fit = PlateFit.of(nudged(truth, 0.01), pairs(truth, 60, 0, dice), PlateModel.CUBIC)
                .orElseThrow();
        assertThat(Vector3D.angle(fit.plate().centre(), truth.centre()) * truth.pixelsPerRadian())
                .isLessThan(1e-6);
        assertThat(fit.plate().pixelsPerRadian())
                .isCloseTo(truth.pixelsPerRadian(), within(1e-5 * truth.pixelsPerRadian()));
        for (int term = 0; term < Distortion.TERMS; term++) {
            assertThat(fit.plate().distortion().termInU(term))
                    .isCloseTo(truth.distortion().termInU(term), within(1e-4));
        }
    }

    /**
     * The covariance describes the actual error of the rotation: its normalised square is chi-squared with three
     * degrees of freedom.
     */
    @Test
    void covariance_isHonest() {
        int trials = 600;
        double sum = 0;
        int outside = 0;
        for (int trial = 0; trial < trials; trial++) {
            Random dice = new Random(trial);
            Plate truth = PlateTest.random(dice, false);
            PlateFit fit = PlateFit.of(nudged(truth, 1e-3), pairs(truth, 40, 0.2, dice), PlateModel.RADIAL)
                    .orElseThrow();
            double square = normalisedSquare(truth, fit);
            sum += square;
            // 95 % of chi-squared with three degrees of freedom lie below 7.815 (any table).
            if (square > 7.815) {
                outside++;
            }
        }
        assertThat(sum / trials).isBetween(2.7, 3.4);
        assertThat(outside / (double) trials).isBetween(0.025, 0.08);
    }

    /** Given uncertainties that are three times too small do not make the covariance too small. */
    @Test
    void covariance_followsTheObservedScatter() {
        Random dice = new Random(1);
        Plate truth = PlateTest.random(dice, false);
        PlateFit.Pairs honest = pairs(truth, 200, 0.3, dice);
        PlateFit.Pairs boastful =
                new PlateFit.Pairs(honest.count(), honest.x(), honest.y(), i -> 0.1, honest.directions());
        double ratio = PlateFit.of(truth, boastful, PlateModel.PINHOLE)
                        .orElseThrow()
                        .covariance()
                        .centreSigma()
                        .radians()
                / PlateFit.of(truth, honest, PlateModel.PINHOLE)
                        .orElseThrow()
                        .covariance()
                        .centreSigma()
                        .radians();
        assertThat(ratio).isBetween(0.9, 1.1);
    }

    static double normalisedSquare(Plate truth, PlateFit fit) {
        var at = Instant.EPOCH;
        var found = CameraAttitude.of(at, fit.plate().cameraToSky(), fit.covariance());
        // The error as a vector in camera axes.
        Vector3D inSky =
                CameraAttitude.of(at, truth.cameraToSky(), fit.covariance()).turnedSince(found);
        Vector3D e = found.cameraToEnu().applyInverseTo(inSky).scalarMultiply(ARCSEC_PER_RAD);
        var c = fit.covariance();
        var matrix = new Array2DRowRealMatrix(new double[][] {
            {c.xxArcsec2(), c.xyArcsec2(), c.xzArcsec2()},
            {c.xyArcsec2(), c.yyArcsec2(), c.yzArcsec2()},
            {c.xzArcsec2(), c.yzArcsec2(), c.zzArcsec2()}
        });
        var vector = new ArrayRealVector(new double[] {e.getX(), e.getY(), e.getZ()});
        return vector.dotProduct(new LUDecomposition(matrix).getSolver().solve(vector));
    }
}
