package polewright.image.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/** In large frames wide stars are searched with 2 × 2 binning; they are found in the right place. */
class WideStarsTest {
    private static final int WIDTH = 1601;
    private static final int HEIGHT = 1001;
    private static final int SPACING = 80;
    private static final double NOISE = 10;

    private static double columnOf(int star, Random dice) {
        return SPACING / 2.0 + SPACING * (star % (WIDTH / SPACING)) + 8 * dice.nextDouble();
    }

    private static double rowOf(int star, Random dice) {
        return SPACING / 2.0 + SPACING * (star / (WIDTH / SPACING)) + 8 * dice.nextDouble();
    }

    private static int stars() {
        return (WIDTH / SPACING) * (HEIGHT / SPACING);
    }

    private static float[] sky(Random dice) {
        float[] pixels = new float[WIDTH * HEIGHT];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = (float) (1000 + NOISE * dice.nextGaussian());
        }
        return pixels;
    }

    private static void draw(float[] pixels, double cx, double cy, double sigma, double height) {
        for (int y = (int) (cy - 5 * sigma); y <= cy + 5 * sigma; y++) {
            for (int x = (int) (cx - 5 * sigma); x <= cx + 5 * sigma; x++) {
                double q = ((x - cx) * (x - cx) + (y - cy) * (y - cy)) / (sigma * sigma);
                pixels[y * WIDTH + x] += (float) (height * Math.exp(-q / 2));
            }
        }
    }

    private static Frame frame(float[] pixels) {
        return new Frame(WIDTH, HEIGHT, pixels, 65_535, FrameFacts.NONE);
    }

    /**
     * Heights over noise such that the filtered signal to noise is 12 to 40: for a Gaussian that is height times σ√π.
     */
    @ParameterizedTest
    @ValueSource(doubles = {2.7, 3.3, 4.5})
    void starsOfTwelveSigmaAndMore_areFoundInPlace(double sigma) {
        Random places = new Random(3);
        Random dice = new Random(4);
        float[] pixels = sky(dice);
        double[][] truth = new double[stars()][];
        for (int star = 0; star < stars(); star++) {
            double signal = 12 + 28.0 * star / stars();
            truth[star] = new double[] {columnOf(star, places), rowOf(star, places), signal};
            draw(pixels, truth[star][0], truth[star][1], sigma, signal * NOISE / (sigma * Math.sqrt(Math.PI)));
        }
        StarList found = StarFinder.find(frame(pixels));
        double square = 0;
        int seen = 0;
        for (double[] star : truth) {
            double nearest = found.stars().stream()
                    .mapToDouble(f -> Math.hypot(f.x() - star[0], f.y() - star[1]))
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
            if (nearest > 2) {
                continue;
            }
            seen++;
            // The Cramér–Rao bound of a coordinate is √2 sigma over S/N (Winick 1986, without pixels); two coordinates.
            double bound = 2 * sigma / star[2];
            square += nearest * nearest / (bound * bound);
        }
        assertThat(seen).isGreaterThanOrEqualTo((int) (0.98 * stars()));
        assertThat(Math.sqrt(square / seen)).isLessThan(1.2);
        assertThat(found.size()).isLessThanOrEqualTo(stars() + 3);
    }

    @Test
    void hotPixelsAmongWideStars_areNotStars() {
        Random dice = new Random(5);
        float[] pixels = sky(dice);
        for (int star = 0; star < stars(); star++) {
            draw(pixels, columnOf(star, dice), rowOf(star, dice), 3.3, 60);
        }
        for (int hot = 0; hot < 2000; hot++) {
            pixels[dice.nextInt(pixels.length)] += 500;
        }
        // One star in ten has a hot pixel in its core.
        int found = StarFinder.find(frame(pixels)).size();
        assertThat(found).isBetween((int) (0.85 * stars()), stars() + 3);
    }
}
