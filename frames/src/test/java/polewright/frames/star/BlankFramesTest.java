package polewright.frames.star;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.frames.Frame;
import polewright.frames.FrameFacts;

/** Frames without stars give few or none, and no trouble. */
class BlankFramesTest {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 480;

    @ParameterizedTest
    @ValueSource(floats = {0, 1000, 65535, Float.NaN, Float.POSITIVE_INFINITY})
    void aFrameAllAlikeHasNoStars(float level) {
        assertThat(StarFinder.find(frame((x, y) -> level)).stars()).isEmpty();
    }

    @Test
    void pureNoiseHasNextToNone() {
        SplittableRandom random = new SplittableRandom(1);
        assertThat(StarFinder.find(frame((x, y) -> 500 + 20 * random.nextGaussian()))
                        .stars())
                .hasSizeLessThan(3);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 16})
    void aCheckerboardIsBounded(int square) {
        StarList stars = StarFinder.find(frame((x, y) -> (x / square + y / square) % 2 * 1000));
        assertThat(stars.size()).isLessThanOrEqualTo(SearchSettings.USUAL.most());
    }

    @Test
    void smoothCloudsHaveFew() {
        SplittableRandom random = new SplittableRandom(2);
        StarList stars = StarFinder.find(frame((x, y) -> 3000
                + 900 * Math.sin(x / 90.0 + 2 * Math.sin(y / 70.0))
                + 500 * Math.cos(y / 40.0 - x / 120.0)
                + 30 * random.nextGaussian()));
        assertThat(stars.size()).isLessThan(5);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3, 8, 20, 70})
    void aTinyFrameIsNoTrouble(int side) {
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
    void aThinFrameIsNoTrouble() {
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
