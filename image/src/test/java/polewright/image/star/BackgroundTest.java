package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/**
 * The background may be uneven, glow at a corner, be dark at the edges or have holes: the stars are still found.
 */
class BackgroundTest {
    private static final int WIDTH = 900;
    private static final int HEIGHT = 700;
    private static final double FWHM = 2.6;

    @Test
    void vignettedField_isSearchedToItsCorners() {
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 2000);
        ScatteredStars stars = scattered(6000).drawOn(sky, FWHM);
        double corner = Math.hypot(WIDTH / 2.0, HEIGHT / 2.0);
        sky.shade((x, y) -> 1 - 0.67 * Math.pow(Math.hypot(x - WIDTH / 2.0, y - HEIGHT / 2.0) / corner, 2));
        check(stars, sky.expose(1, 5, 1, 300, 65535));
    }

    @Test
    void amplifierGlow_createsNoStars() {
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 100);
        ScatteredStars stars = scattered(6000).drawOn(sky, FWHM);
        sky.glow((x, y) -> 20_000 * Math.exp(-Math.hypot(WIDTH - x, y - 200.0) / 45)
                + 4000 * Math.exp(-Math.hypot(x, HEIGHT - y) / 90));
        StarList found = StarFinder.find(sky.expose(1, 5, 1, 300, 65535));
        ScatteredStars.Outcome outcome = stars.outcome(found, 1.5);
        // Stars under the brightest part of the glow are lost.
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(94);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(2);
    }

    @Test
    void moonlightFromOneSide_makesNoDifference() {
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 500);
        ScatteredStars stars = scattered(6000).drawOn(sky, FWHM);
        sky.glow((x, y) -> 6.0 * x + 2.0 * y);
        check(stars, sky.expose(1, 5, 1, 300, 65535));
    }

    @Test
    void missingPixels_areSkipped() {
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 300);
        ScatteredStars stars = scattered(3000).drawOn(sky, FWHM);
        Frame whole = sky.expose(1, 5, 1, 300, 65535);
        float[] pixels = whole.pixels().clone();
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                if (x % 97 == 0 || y < 20 || (x > 300 && x < 420 && y > 300 && y < 420)) {
                    pixels[y * WIDTH + x] = Float.NaN;
                }
            }
        }
        StarList found = StarFinder.find(new Frame(WIDTH, HEIGHT, pixels, 65535, FrameFacts.NONE));
        ScatteredStars.Outcome outcome = stars.outcome(found, 1.5);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(86);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(1);
        assertThat(outcome.errorsOverSigmas()).isBetween(0.7, 1.4);
    }

    @Test
    void darkSkyClippedAtBlack_isSearched() {
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 10);
        ScatteredStars stars = scattered(2500).drawOn(sky, FWHM);
        // No offset, four electrons per count, and nothing below zero: half of the background's pixels are black.
        StarList found = StarFinder.find(sky.glow((x, y) -> -10).expose(1, 8, 4, 0, 255));
        ScatteredStars.Outcome outcome = stars.outcome(found, 1.5);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(95);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(10);
    }

    private static ScatteredStars scattered(double faintest) {
        return new ScatteredStars(WIDTH, HEIGHT, 100, 8 * FWHM, faintest, 5);
    }

    private static void check(ScatteredStars stars, Frame frame) {
        ScatteredStars.Outcome outcome = stars.outcome(StarFinder.find(frame), 1.5);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(98);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(1);
        assertThat(outcome.errorsOverSigmas()).isBetween(0.7, 1.4);
    }
}
