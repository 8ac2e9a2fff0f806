package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;

/** A stationary camera records every star as a trail; its middle is the star's position at mid-exposure. */
@Tag("slow")
class CommonTrailTest {
    private static final int WIDTH = 1000;
    private static final int HEIGHT = 800;
    private static final double FWHM = 2.5;

    @ParameterizedTest
    @CsvSource({
        "3, 0", "3, 30", "6, 30", "6, 90", "10, 0", "10, 126", "20, 30", "20, 90", "40, 0", "40, 30", "40, 90",
        "40, 126"
    })
    void trails_areCentredAtTheirMiddle_withLengthAndDirection(double length, double degrees) {
        ScatteredStars stars = new ScatteredStars(WIDTH, HEIGHT, 60, 60, 1500 * Math.sqrt(length), 1, 30);
        Frame frame = trailed(stars, length, Math.toRadians(degrees)).expose(3, 5, 0.5, 300, 65535);
        StarList found = StarFinder.find(frame);
        ScatteredStars.Outcome outcome = stars.outcome(found, 3);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(58);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(2);
        assertThat(outcome.rms()).isLessThan(0.1);
        // 120 coordinates: 1 sigma of the mean is 0.13.
        assertThat(outcome.errorsOverSigmas()).isBetween(0.6, 1.4);
        for (FoundStar star : found.stars().subList(0, 20)) {
            double sigma = DrawnSky.sigmaOf(FWHM);
            double elongation = Math.sqrt(1 + length * length / 12 / (sigma * sigma));
            assertThat(star.elongation()).isCloseTo(elongation, within(0.15 * elongation));
            assertThat(Math.abs(Math.sin(star.longAxisRad() - Math.toRadians(degrees))))
                    .isLessThan(Math.sin(Math.toRadians(8)));
        }
    }

    @Test
    void trailsAroundThePole_haveIndividualLengthAndDirection() {
        double turnRad = 0.04;
        ScatteredStars stars = new ScatteredStars(1400, 1000, 80, 60, 4000, 1);
        DrawnSky sky = new DrawnSky(1400, 1000, 100);
        double shortened = Math.sin(turnRad / 2) / (turnRad / 2);
        for (ScatteredStars.Truth star : stars.truths()) {
            // The arc whose centroid is the star's position.
            double radius = Math.hypot(star.x() - 400, star.y() - 500) / shortened;
            double middle = Math.atan2(star.y() - 500, star.x() - 400);
            for (int k = 0; k < 100; k++) {
                double angle = middle + turnRad * ((k + 0.5) / 100 - 0.5);
                sky.star(400 + radius * Math.cos(angle), 500 + radius * Math.sin(angle), star.flux() / 100, FWHM);
            }
        }
        ScatteredStars.Outcome outcome = stars.outcome(StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535)), 3);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(78);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(3);
        assertThat(outcome.rms()).isLessThan(0.15);
        for (ScatteredStars.Hit hit : outcome.hits()) {
            if (hit.star().elongation() > 3) {
                double tangent = Math.atan2(hit.truth().y() - 500, hit.truth().x() - 400) + Math.PI / 2;
                assertThat(Math.abs(Math.sin(hit.star().longAxisRad() - tangent)))
                        .isLessThan(Math.sin(Math.toRadians(12)));
            }
        }
    }

    @Test
    void trailCutByTheEdge_isLocatedByItsVisibleEnd() {
        ScatteredStars stars = new ScatteredStars(WIDTH, HEIGHT, 60, 60, 10_000, 2, 30);
        DrawnSky sky = trailed(stars, 30, 0);
        double[] rows = {45.3, 190.8, 402.2, 520.6};
        for (double y : rows) {
            sky.trail(-9, y, 21, y, 40_000, FWHM).trail(984, y + 40, 1014, y + 40, 40_000, FWHM);
        }
        StarList found = StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535));
        for (double y : rows) {
            assertThat(found.stars()).anyMatch(s -> Math.abs(s.x() - 6) < 1 && Math.abs(s.y() - y) < 0.3);
            assertThat(found.stars()).anyMatch(s -> Math.abs(s.x() - 999) < 1 && Math.abs(s.y() - y - 40) < 0.3);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {6, 20})
    void satelliteAndHotPixelsAmongTrails_areNotStars(double length) {
        ScatteredStars stars = new ScatteredStars(WIDTH, HEIGHT, 60, 60, 6000, 1);
        DrawnSky sky = trailed(stars, length, 0.5).trail(-10, 700, 1010, 80, 400_000, FWHM);
        for (int i = 0; i < 300; i++) {
            sky.add(37 * i % WIDTH, 101 * i % HEIGHT, 300 + 20 * i);
        }
        ScatteredStars.Outcome outcome = stars.outcome(StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535)), 3);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(50);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(6);
    }

    private static DrawnSky trailed(ScatteredStars stars, double length, double angle) {
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 100);
        double dx = length / 2 * Math.cos(angle);
        double dy = length / 2 * Math.sin(angle);
        for (ScatteredStars.Truth star : stars.truths()) {
            sky.trail(star.x() - dx, star.y() - dy, star.x() + dx, star.y() + dy, star.flux(), FWHM);
        }
        return sky;
    }
}
