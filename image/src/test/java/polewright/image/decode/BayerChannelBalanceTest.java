package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import polewright.image.Frame;

/** A Bayer mosaic loses its chequerboard pattern and keeps its stars. */
class BayerChannelBalanceTest {
    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;
    private static final double BIAS = 500;
    // Background behind the filters of an RGGB pattern under a light-polluted sky: common practice.
    private static final double[] SKY = {1400, 1000, 1000, 500};
    private static final double GAIN = 0.5;

    /** Background falling to 70% across, shot noise, one white star. */
    private static int[] mosaic(double star) {
        SplittableRandom random = new SplittableRandom(20261125);
        int[] pixels = new int[WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double sky = SKY[(x & 1) | (y & 1) << 1] * (1 - 0.3 * x / WIDTH);
                double light = sky + star * Math.exp(-((x - 100) * (x - 100) + (y - 60) * (y - 60)) / 4.0);
                double noise = Math.sqrt(light / GAIN) * random.nextGaussian();
                pixels[y * WIDTH + x] = (int) Math.min(65_535, Math.round(BIAS + light + noise));
            }
        }
        return pixels;
    }

    private static Frame read(int[] pixels, String pattern, Mosaic told) {
        TinyFits fits = TinyFits.counts(WIDTH, HEIGHT, pixels);
        if (!pattern.isEmpty()) {
            fits.card("BAYERPAT", "'" + pattern + "'");
        }
        return FrameReader.read(fits.bytes(), "dusk.fits", DecodeOptions.DEFAULT.withMosaic(told));
    }

    /** The spread of the means of the four phases in a part of the frame, relative to the noise of a pixel there. */
    private static double chequers(Frame frame, int x0, int x1) {
        double lowest = Double.MAX_VALUE;
        double highest = -Double.MAX_VALUE;
        double variance = 0;
        for (int phase = 0; phase < 4; phase++) {
            double sum = 0;
            double squares = 0;
            int count = 0;
            for (int y = (phase >> 1); y < HEIGHT; y += 2) {
                for (int x = x0 + (phase & 1); x < x1; x += 2) {
                    double value = frame.pixels()[y * WIDTH + x];
                    sum += value;
                    squares += value * value;
                    count++;
                }
            }
            lowest = Math.min(lowest, sum / count);
            highest = Math.max(highest, sum / count);
            variance += (squares / count - sum / count * sum / count) / 4;
        }
        return (highest - lowest) / Math.sqrt(variance);
    }

    @Test
    void chequerboard_isGoneInTheMiddleAndAtBothEnds() {
        Frame raw = read(mosaic(0), "RGGB", Mosaic.NONE);
        Frame levelled = read(mosaic(0), "RGGB", Mosaic.AS_THE_FILE_SAYS);
        assertThat(chequers(raw, 100, 140)).isGreaterThan(5);
        // Phase means of 20 × 80 pixels are known to 0.025 of the noise; the spread of four of them is twice that.
        assertThat(chequers(levelled, 100, 140)).isLessThan(0.15);
        // Toward the ends a residual difference between the colours' gradients remains, below the noise.
        assertThat(chequers(levelled, 0, 20)).isLessThan(0.4);
        assertThat(chequers(levelled, 220, 240)).isLessThan(0.4);
    }

    @Test
    void statedMosaic_isBalancedWithoutAKeywordInTheHeader() {
        assertThat(read(mosaic(0), "", Mosaic.BAYER).pixels())
                .isEqualTo(read(mosaic(0), "GRBG", Mosaic.AS_THE_FILE_SAYS).pixels());
        assertThat(chequers(read(mosaic(0), "", Mosaic.AS_THE_FILE_SAYS), 100, 140))
                .isGreaterThan(5);
    }

    @Test
    void saturatedPixel_staysSaturatedInAnyColour() {
        Frame frame = read(mosaic(200_000), "RGGB", Mosaic.AS_THE_FILE_SAYS);
        for (int dy = 0; dy < 2; dy++) {
            for (int dx = 0; dx < 2; dx++) {
                assertThat(frame.pixels()[(60 + dy) * WIDTH + 100 + dx]).isEqualTo(frame.saturation());
            }
        }
        assertThat(frame.pixels()[10 * WIDTH + 10]).isLessThan(frame.saturation());
    }

    @Test
    void star_staysInPlace() {
        Frame frame = read(mosaic(20_000), "RGGB", Mosaic.AS_THE_FILE_SAYS);
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        double sky = PixelLevels.of(frame.pixels()).level();
        for (int y = 54; y <= 66; y++) {
            for (int x = 94; x <= 106; x++) {
                double light = frame.pixels()[y * WIDTH + x] - sky;
                sum += light;
                sumX += light * x;
                sumY += light * y;
            }
        }
        // The four phases weight a star's light differently, but symmetrically around its centre.
        assertThat(sumX / sum).isCloseTo(100, within(0.1));
        assertThat(sumY / sum).isCloseTo(60, within(0.1));
    }

    @Test
    void flatFrame_staysFlat() {
        int[] black = new int[WIDTH * HEIGHT];
        assertThat(read(black, "RGGB", Mosaic.AS_THE_FILE_SAYS).pixels()).containsOnly(0);
    }
}
