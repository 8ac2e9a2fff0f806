package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.image.Frame;

/** The saturation value: as stated, as observed, or that of the type. */
class SaturationTest {
    private static final int SIDE = 128;

    /**
     * Noise around a background, and stars with peaks distributed evenly up to {@code brightest}, cut off at {@code
     * full}.
     */
    private static int[] sky(double noise, int stars, double brightest, int full, int step) {
        SplittableRandom random = new SplittableRandom(7);
        double[] light = new double[SIDE * SIDE];
        for (int star = 0; star < stars; star++) {
            double x0 = SIDE * random.nextDouble();
            double y0 = SIDE * random.nextDouble();
            double peak = full * brightest * random.nextDouble();
            for (int i = 0; i < light.length; i++) {
                double dx = i % SIDE - x0;
                double dy = Math.floorDiv(i, SIDE) - y0;
                light[i] += peak * Math.exp(-(dx * dx + dy * dy) / 4);
            }
        }
        int[] pixels = new int[light.length];
        for (int i = 0; i < pixels.length; i++) {
            double value = 0.02 * full + light[i] + noise * random.nextGaussian();
            pixels[i] = (int) Math.max(0, Math.min(full, Math.round(value / step) * step));
        }
        return pixels;
    }

    private static Frame read(TinyFits fits) {
        return FrameReader.read(fits.bytes(), "dusk.fits", DecodeOptions.DEFAULT);
    }

    @ParameterizedTest
    @CsvSource({"4095, 1", "16383, 1", "65520, 16", "65532, 4"})
    void starsPiledUpAtOneValue_showTheSaturationValue(int full, int step) {
        assertThat(read(TinyFits.counts(SIDE, SIDE, sky(full / 500.0, 60, 5, full, step)))
                        .saturation())
                .isEqualTo(full);
    }

    @Test
    void noise_doesNotPileUp() {
        assertThat(read(TinyFits.counts(SIDE, SIDE, sky(1, 0, 0, 4095, 1))).saturation())
                .isEqualTo(65_535);
        assertThat(read(TinyFits.counts(SIDE, SIDE, sky(40, 0, 0, 65_520, 16))).saturation())
                .isEqualTo(65_535);
        assertThat(read(TinyFits.counts(SIDE, SIDE, sky(40, 0, 0, 16_383, 1))).saturation())
                .isEqualTo(65_535);
    }

    @Test
    void unsaturatedStars_doNotPileUp() {
        assertThat(read(TinyFits.counts(SIDE, SIDE, sky(40, 60, 0.3, 16_383, 1)))
                        .saturation())
                .isEqualTo(65_535);
    }

    @Test
    void blackAndConstantFrames_areNotSaturated() {
        assertThat(read(TinyFits.counts(SIDE, SIDE, new int[SIDE * SIDE])).saturation())
                .isEqualTo(65_535);
        int[] even = new int[SIDE * SIDE];
        Arrays.fill(even, 3000);
        assertThat(read(TinyFits.counts(SIDE, SIDE, even)).saturation()).isEqualTo(65_535);
    }

    @Test
    void whiteFrame_isSaturated() {
        int[] white = new int[SIDE * SIDE];
        Arrays.fill(white, 65_535);
        Frame frame = read(TinyFits.counts(SIDE, SIDE, white));
        assertThat(frame.saturation()).isEqualTo(65_535);
        assertThat(frame.pixels()).containsOnly(65_535);
    }

    @Test
    void statedValue_isUsed() {
        int[] pixels = sky(40, 20, 5, 65_535, 1);
        assertThat(read(TinyFits.counts(SIDE, SIDE, pixels).card("SATURATE", "58000"))
                        .saturation())
                .isEqualTo(58_000);
        assertThat(read(TinyFits.counts(SIDE, SIDE, pixels).card("DATAMAX", "60000.0"))
                        .saturation())
                .isEqualTo(60_000);
    }

    @Test
    void statedValueReachedByTheBackground_isIgnored() {
        int[] pixels = sky(40, 0, 0, 65_535, 1);
        assertThat(read(TinyFits.counts(SIDE, SIDE, pixels).card("SATURATE", "1"))
                        .saturation())
                .isEqualTo(65_535);
        assertThat(read(TinyFits.counts(SIDE, SIDE, pixels).card("DATAMAX", "0"))
                        .saturation())
                .isEqualTo(65_535);
    }
}
