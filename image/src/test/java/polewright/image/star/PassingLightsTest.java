package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Satellites and aeroplanes draw lines across the frame, not chains of stars. */
@Tag("slow")
class PassingLightsTest {
    @ParameterizedTest(name = "{0} electrons a pixel, FWHM {1}")
    @CsvSource({
        "15, 1.8",
        "15, 3",
        "40, 1.8",
        "40, 3",
        "100, 1.8",
        "100, 3",
        "400, 1.8",
        "400, 3",
        "2000, 1.8",
        "2000, 3",
        "200000, 3"
    })
    void threeSatellites_neitherHideNorCreateStars(double electronsPerPixel, double fwhm) {
        DrawnSky sky = new DrawnSky(1000, 800, 100);
        ScatteredStars stars = new ScatteredStars(1000, 800, 80, 8 * fwhm, 1000, 1).drawOn(sky, fwhm);
        pass(sky, -20, 100, 1020, 500, electronsPerPixel, fwhm);
        pass(sky, 300, -20, 420, 820, electronsPerPixel, fwhm);
        pass(sky, 500, 300, 800, 50, electronsPerPixel, fwhm);
        ScatteredStars.Outcome outcome = stars.outcome(StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535)), 1.5);
        // A star or two may lie under a line.
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(77);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(5);
    }

    private static void pass(
            DrawnSky sky, double x0, double y0, double x1, double y1, double electronsPerPixel, double fwhm) {
        sky.trail(x0, y0, x1, y1, electronsPerPixel * Math.hypot(x1 - x0, y1 - y0), fwhm);
    }
}
