package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Detector artefacts are not mistaken for stars. */
class HotPixelTest {
    private static final int WIDTH = 1000;
    private static final int HEIGHT = 800;

    @ParameterizedTest
    @CsvSource({"1.8, 24", "2.5, 4", "4, 2"})
    void thousandsOfHotPixels_hideFewStars_andFewPass(double fwhm, int mostPassing) {
        SplittableRandom random = new SplittableRandom(1);
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 100);
        ScatteredStars stars = new ScatteredStars(WIDTH, HEIGHT, 80, 8 * fwhm, 1000, 1).drawOn(sky, fwhm);
        for (int i = 0; i < 4000; i++) {
            double light = -300 * Math.log(1 - random.nextDouble()) * (i % 10 == 0 ? 30 : 1);
            sky.add(random.nextInt(WIDTH), random.nextInt(HEIGHT), light);
        }
        for (int i = 0; i < 200; i++) {
            int x = random.nextInt(WIDTH);
            int y = random.nextInt(HEIGHT);
            double light = -800 * Math.log(1 - random.nextDouble());
            sky.add(x, y, light).add(x + i % 2, y + 1 - i % 2, light * random.nextDouble());
        }
        ScatteredStars.Outcome outcome = stars.outcome(StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535)), 1.5);
        // Some stars contain a hot pixel brighter than themselves.
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(72);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(mostPassing);
    }

    @ParameterizedTest
    @ValueSource(doubles = {200, 1000, 10_000, 1e6})
    void hotPixelsAlone_areNotStars_howeverBright(double electrons) {
        SplittableRandom random = new SplittableRandom(2);
        DrawnSky sky = new DrawnSky(400, 300, 50);
        for (int i = 0; i < 100; i++) {
            sky.add(random.nextInt(400), random.nextInt(300), electrons);
        }
        assertThat(StarFinder.find(sky.expose(1, 5, 1, 300, 65535)).stars()).hasSizeLessThanOrEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.8, 2.5, 4})
    void cosmicRayTracks_areNotStars(double fwhm) {
        SplittableRandom random = new SplittableRandom(3);
        DrawnSky sky = new DrawnSky(WIDTH, HEIGHT, 100);
        ScatteredStars stars = new ScatteredStars(WIDTH, HEIGHT, 80, 8 * fwhm, 1000, 1).drawOn(sky, fwhm);
        for (int i = 0; i < 100; i++) {
            double x = random.nextDouble() * WIDTH;
            double y = random.nextDouble() * HEIGHT;
            double direction = random.nextDouble() * 2 * Math.PI;
            double length = 1 + 25 * random.nextDouble() * random.nextDouble();
            double perPixel = 200 + 3000 * random.nextDouble();
            for (double u = 0; u < length; u += 0.25) {
                sky.add((int) (x + u * Math.cos(direction)), (int) (y + u * Math.sin(direction)), perPixel / 4);
            }
        }
        ScatteredStars.Outcome outcome = stars.outcome(StarFinder.find(sky.expose(3, 5, 0.5, 300, 65535)), 1.5);
        assertThat(outcome.hits()).hasSizeGreaterThanOrEqualTo(76);
        assertThat(outcome.spurious()).hasSizeLessThanOrEqualTo(2);
    }

    @Test
    void starWithAHotPixelOnItsSkirts_staysInPlace() {
        DrawnSky sky = new DrawnSky(200, 200, 100);
        StarGrid grid = new StarGrid(8, 25, 4);
        int[] drawn = {0};
        grid.forEach((x, y) -> {
            sky.star(x, y, 5000, 3);
            if (drawn[0]++ % 3 == 0) {
                sky.add((int) Math.round(x) + 3, (int) Math.round(y) + 1, 1500);
            }
        });
        assertThat(grid.pairs(StarFinder.find(sky.expose(5, 5, 1, 300, 65535))))
                .hasSizeGreaterThanOrEqualTo(62)
                .allMatch(p -> Math.hypot(p.star().x() - p.x(), p.star().y() - p.y()) < 0.15);
    }
}
