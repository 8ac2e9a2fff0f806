package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/**
 * Frames without stars give few or none and cause no errors; the time limit only detects a search that does not end.
 */
@Timeout(60)
class BlankFramesTest {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 480;

    @ParameterizedTest
    @ValueSource(floats = {0, 1000, 65535, Float.NaN, Float.POSITIVE_INFINITY})
    void constantFrame_hasNoStars(float level) {
        assertThat(StarFinder.find(frame((x, y) -> level)).stars()).isEmpty();
    }

    @Test
    void pureNoise_hasAlmostNoStars() {
        SplittableRandom random = new SplittableRandom(1);
        assertThat(StarFinder.find(frame((x, y) -> 500 + 20 * random.nextGaussian()))
                        .stars())
                .hasSizeLessThan(3);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 16})
    void checkerboard_isBounded(int square) {
        StarList stars = StarFinder.find(frame((x, y) -> (x / square + y / square) % 2 * 1000));
        assertThat(stars.size()).isLessThanOrEqualTo(SearchSettings.USUAL.most());
    }

    @Test
    void smoothClouds_haveFewStars() {
        SplittableRandom random = new SplittableRandom(2);
        StarList stars = StarFinder.find(frame((x, y) -> 3000
                + 900 * Math.sin(x / 90.0 + 2 * Math.sin(y / 70.0))
                + 500 * Math.cos(y / 40.0 - x / 120.0)
                + 30 * random.nextGaussian()));
        assertThat(stars.size()).isLessThan(5);
    }

    @Test
    void stripes_areNeitherTrailsNorStars() {
        SplittableRandom random = new SplittableRandom(4);
        assertThat(StarFinder.find(frame((x, y) -> (x + y) % 9 < 2 ? 20_000 : 500 + 5 * random.nextGaussian()))
                        .stars())
                .hasSizeLessThan(5);
    }

    @Test
    void halfAFrameOfDaylight_isNotAStar() {
        SplittableRandom random = new SplittableRandom(5);
        assertThat(StarFinder.find(frame((x, y) -> x < 300 ? 1000 + 30 * random.nextGaussian() : 65_535))
                        .stars())
                .hasSizeLessThan(3);
    }

    @Test
    void moon_isNotAStar() {
        SplittableRandom random = new SplittableRandom(6);
        assertThat(StarFinder.find(frame((x, y) -> {
                            double beyond = Math.hypot(x - 300, y - 200) - 80;
                            double light = beyond < 0 ? 80_000 : 800 + 60_000 * Math.exp(-beyond / 40);
                            return Math.min(65_535, light + 30 * random.nextGaussian());
                        }))
                        .stars())
                .hasSizeLessThan(5);
    }

    @Test
    void furAndFeathers_haveFewStars() {
        double[][] knots = new double[64][64];
        SplittableRandom random = new SplittableRandom(7);
        for (double[] row : knots) {
            for (int i = 0; i < row.length; i++) {
                row[i] = random.nextGaussian();
            }
        }
        StarList stars = StarFinder.find(frame((x, y) -> {
            double value = 8000 + 20 * random.nextGaussian();
            for (int octave = 0; octave < 6; octave++) {
                double u = x * Math.pow(2, octave) / 64;
                double v = y * Math.pow(2, octave) / 64;
                value += 2500 * Math.pow(0.6, octave) * between(knots, u, v);
            }
            return value;
        }));
        assertThat(stars.size()).isLessThan(30);
    }

    private static double between(double[][] knots, double u, double v) {
        int i = (int) u & 63;
        int j = (int) v & 63;
        double f = u - Math.floor(u);
        double g = v - Math.floor(v);
        double above = knots[j][i] + f * (knots[j][(i + 1) & 63] - knots[j][i]);
        double below = knots[(j + 1) & 63][i] + f * (knots[(j + 1) & 63][(i + 1) & 63] - knots[(j + 1) & 63][i]);
        return above + g * (below - above);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3, 8, 20, 70})
    void tinyFrame_isAccepted(int side) {
        SplittableRandom random = new SplittableRandom(3);
        float[] pixels = new float[side * side];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = (float) (100 + 5 * random.nextGaussian());
        }
        assertThat(StarFinder.find(new Frame(side, side, pixels, 65535, FrameFacts.NONE))
                        .stars())
                .hasSizeLessThan(3);
    }

    @Test
    void thinFrame_isAccepted() {
        float[] pixels = new float[5000];
        Arrays.fill(pixels, 7);
        assertThat(StarFinder.find(new Frame(5000, 1, pixels, 65535, FrameFacts.NONE))
                        .stars())
                .isEmpty();
        assertThat(StarFinder.find(new Frame(1, 5000, pixels, 65535, FrameFacts.NONE))
                        .stars())
                .isEmpty();
    }

    private static Frame frame(DrawnSky.PlaceFunction value) {
        float[] pixels = new float[WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                pixels[y * WIDTH + x] = (float) value.at(x, y);
            }
        }
        return new Frame(WIDTH, HEIGHT, pixels, 65535, FrameFacts.NONE);
    }
}
