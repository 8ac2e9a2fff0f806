package polewright.planning.seasons;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** A straight-line fit, against the dataset Norris of the NIST Statistical Reference Datasets. */
class LeastSquaresTest {
    private static final double[] CERTIFIED = {-0.262323073774029, 1.00211681802045};
    private static final double[] CERTIFIED_SIGMAS = {0.232818234301152, 0.429796848199937E-03};
    private static final double CERTIFIED_RESIDUAL_SIGMA = 0.884796396144373;

    private static List<double[]> norris() throws IOException {
        try (var reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(LeastSquaresTest.class.getResourceAsStream("/authorities/norris/norris.csv")),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .map(cells -> new double[] {Double.parseDouble(cells[0]), Double.parseDouble(cells[1])})
                    .toList();
        }
    }

    private static double[][] each(double variance, int n) {
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            covariance[i][i] = variance;
        }
        return covariance;
    }

    @Test
    void line_agreesWithTheCertifiedValues() throws IOException {
        List<double[]> rows = norris();
        assertThat(rows).hasSize(36);
        double[][] design = rows.stream().map(row -> new double[] {1, row[1]}).toArray(double[][]::new);
        double[] observed = rows.stream().mapToDouble(row -> row[0]).toArray();

        LeastSquares unit = LeastSquares.fit(design, observed, each(1, 36));
        double residual = Math.sqrt(unit.chiSquared() / unit.freedom());
        LeastSquares fit = LeastSquares.fit(design, observed, each(residual * residual, 36));

        assertThat(unit.freedom()).isEqualTo(34);
        assertThat(residual).isCloseTo(CERTIFIED_RESIDUAL_SIGMA, Percentage.withPercentage(1e-9));
        for (int i = 0; i < 2; i++) {
            assertThat(fit.value(i)).isCloseTo(CERTIFIED[i], Percentage.withPercentage(1e-9));
            assertThat(fit.sigma(i)).isCloseTo(CERTIFIED_SIGMAS[i], Percentage.withPercentage(1e-9));
        }
    }

    /**
     * Differences of neighbours, with the covariance of differences of independent readings, give the same slope as the
     * readings themselves: the certified one. Drifts of an undisturbed axis are correlated in this way.
     */
    @Test
    void slopeFromDifferencesOfNeighbours_agreesWithTheCertifiedValue() throws IOException {
        List<double[]> rows = norris();
        int n = rows.size() - 1;
        double variance = CERTIFIED_RESIDUAL_SIGMA * CERTIFIED_RESIDUAL_SIGMA;
        double[][] design = new double[n][1];
        double[] observed = new double[n];
        double[][] covariance = each(2 * variance, n);
        for (int i = 0; i < n; i++) {
            design[i][0] = rows.get(i + 1)[1] - rows.get(i)[1];
            observed[i] = rows.get(i + 1)[0] - rows.get(i)[0];
            if (i > 0) {
                covariance[i][i - 1] = -variance;
                covariance[i - 1][i] = -variance;
            }
        }

        LeastSquares fit = LeastSquares.fit(design, observed, covariance);

        assertThat(fit.value(0)).isCloseTo(CERTIFIED[1], within(1e-11));
        assertThat(fit.sigma(0)).isCloseTo(CERTIFIED_SIGMAS[1], Percentage.withPercentage(1e-7));
        assertThat(fit.freedom()).isEqualTo(34);
    }
}
