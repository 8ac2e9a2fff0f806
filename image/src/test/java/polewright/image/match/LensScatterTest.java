package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** How much an attitude's uncertainty is widened for errors of its lens model. */
class LensScatterTest {
    private static final double SIGMA_PIXELS = 0.25;

    /**
     * Distortion that no model contains: a star's shift in pixels as a function of its position over the half diagonal.
     */
    @FunctionalInterface
    private interface Bend {
        double pixels(double a, double b);
    }

    private record Trial(double factor, double square) {}

    /** A pinhole's stars, distorted, with the plate fitted without the distortion. */
    private static Trial trial(int seed, int stars, PlateModel model, Bend bend) {
        Random dice = new Random(seed);
        Plate truth = PlateTest.random(dice, false);
        double[] x = new double[stars];
        double[] y = new double[stars];
        Vector3D[] directions = new Vector3D[stars];
        for (int i = 0; i < stars; i++) {
            double px = dice.nextDouble() * (truth.width() - 1);
            double py = dice.nextDouble() * (truth.height() - 1);
            directions[i] = truth.toSky(px, py);
            double a = truth.u(px) / truth.halfDiagonal();
            double b = truth.v(py) / truth.halfDiagonal();
            x[i] = px + SIGMA_PIXELS * dice.nextGaussian() + bend.pixels(a, b);
            y[i] = py + SIGMA_PIXELS * dice.nextGaussian();
        }
        PlateFit.Pairs pairs = new PlateFit.Pairs(stars, i -> x[i], i -> y[i], i -> SIGMA_PIXELS, i -> directions[i]);
        PlateFit fit = PlateFit.of(truth, pairs, model).orElseThrow();
        double factor = LensScatter.factor(fit, pairs, model);
        return new Trial(
                factor,
                PlateFitTest.normalisedSquare(
                        truth,
                        new PlateFit(
                                fit.plate(),
                                fit.normalisedSquare(),
                                fit.freedom(),
                                fit.covariance().times(factor))));
    }

    private static double mean(
            java.util.function.ToDoubleFunction<Trial> figure, int stars, PlateModel model, Bend bend) {
        double sum = 0;
        int trials = 300;
        for (int seed = 0; seed < trials; seed++) {
            sum += figure.applyAsDouble(trial(seed, stars, model, bend));
        }
        return sum / trials;
    }

    @Test
    void independentErrors_widenLittle_andKeepTheCovarianceHonest() {
        assertThat(mean(Trial::factor, 40, PlateModel.RADIAL, (a, b) -> 0)).isBetween(1.0, 1.2);
        assertThat(mean(Trial::factor, 300, PlateModel.CUBIC, (a, b) -> 0)).isBetween(1.0, 1.2);
        // Chi-squared with three degrees of freedom has the mean three.
        assertThat(mean(Trial::square, 40, PlateModel.RADIAL, (a, b) -> 0)).isBetween(2.2, 3.2);
    }

    /** One corner is off by a pixel, as chance pairs would distort it: many stars make the fit precise, but wrong. */
    @Test
    void badCorner_widensSeveralTimes() {
        Bend corner = (a, b) -> a > 0.4 && b > 0.3 ? 1 : 0;
        assertThat(mean(Trial::factor, 300, PlateModel.RADIAL, corner)).isGreaterThan(3);
    }

    @Test
    void fewStars_areNotDividedIntoParts() {
        assertThat(trial(1, 11, PlateModel.RADIAL, (a, b) -> 0).factor()).isEqualTo(1);
    }
}
