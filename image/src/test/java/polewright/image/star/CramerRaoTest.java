package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Centres of isolated stars nearly reach the Cramér–Rao bound, and their uncertainties are true. 450 stars per setting,
 * at random positions within their pixels.
 *
 * <p>With 900 coordinates the RMS is known to 2.4% and the mean of (error/sigma)² to 4.7%, 1 sigma.
 */
@Tag("slow")
class CramerRaoTest {
    private static final double READ_NOISE = 5;
    private static final int A_SIDE = 15;
    private static final int FRAMES = 2;

    @ParameterizedTest(name = "S/N {0}, FWHM {1}, sky {2}")
    @CsvSource({
        "10, 1.8, 5",
        "20, 1.8, 5",
        "50, 1.8, 5",
        "100, 1.8, 5",
        "200, 1.8, 5",
        "10, 1.8, 100",
        "200, 1.8, 100",
        "10, 2.5, 5",
        "20, 2.5, 100",
        "50, 2.5, 100",
        "100, 2.5, 5",
        "200, 2.5, 100",
        "10, 4, 5",
        "20, 4, 5",
        "50, 4, 100",
        "100, 4, 100",
        "200, 4, 5",
        "10, 6, 5",
        "10, 6, 100",
        "20, 6, 100",
        "50, 6, 5",
        "100, 6, 100",
        "200, 6, 5",
        "200, 6, 100",
    })
    void centres_areWithin15PercentOfTheBound_andSigmasAreTrue(double signalToNoise, double fwhm, double sky) {
        CramerRaoBound bound = new CramerRaoBound(sky, READ_NOISE);
        double flux = bound.fluxFor(signalToNoise, fwhm);
        double errors = 0;
        double bounds = 0;
        double overSigmas = 0;
        int found = 0;
        for (int seed = 0; seed < FRAMES; seed++) {
            StarGrid grid = new StarGrid(A_SIDE, Math.max(24, (int) (8 * fwhm)), seed);
            DrawnSky drawn = new DrawnSky(grid.width(), grid.width(), sky);
            grid.forEach((x, y) -> drawn.star(x, y, flux, fwhm));
            StarList stars = StarFinder.find(drawn.expose(seed + 10, READ_NOISE, 0.3, 500, 1e6));
            for (StarGrid.Pair pair : grid.pairs(stars)) {
                double dx = pair.star().x() - pair.x();
                double dy = pair.star().y() - pair.y();
                errors += dx * dx + dy * dy;
                bounds += square(bound.sigmaX(pair.x(), pair.y(), flux, fwhm))
                        + square(bound.sigmaY(pair.x(), pair.y(), flux, fwhm));
                overSigmas += square(dx / pair.star().sigmaX())
                        + square(dy / pair.star().sigmaY());
                found++;
            }
        }
        assertThat(found).isGreaterThanOrEqualTo((int) (0.98 * FRAMES * A_SIDE * A_SIDE));
        assertThat(Math.sqrt(errors / bounds)).as("RMS over the bound").isBetween(0.9, 1.15);
        assertThat(overSigmas / (2 * found)).as("mean of (error/sigma)²").isBetween(0.85, 1.2);
    }

    private static double square(double v) {
        return v * v;
    }
}
