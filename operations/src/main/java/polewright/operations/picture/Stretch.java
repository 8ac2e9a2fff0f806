package polewright.operations.picture;

import java.util.Arrays;
import polewright.image.Frame;

/**
 * Maps counts to shades of grey: the background dark, stars of every brightness visible.
 *
 * <p>The inverse hyperbolic sine is linear for faint light and logarithmic for bright (R. Lupton et al. 2004,
 * <i>PASP</i> 116, 133).
 */
final class Stretch {
    private static final int SAMPLES = 40_000;
    private static final double BRIGHTEST_SHARE = 0.9995;
    // The transition of the curve, in units of the background noise.
    private static final double BEND_SIGMAS = 5;
    // Most of the noise is left black: it only distracts from the stars.
    private static final double BLACK_SIGMAS = 0.3;
    private static final double MAD_TO_SIGMA = 1.4826;

    private final double black;
    private final double bend;
    private final double white;

    private Stretch(double black, double bend, double white) {
        this.black = black;
        this.bend = bend;
        this.white = white;
    }

    static Stretch of(Frame frame) {
        float[] sample = sample(frame.pixels());
        if (sample.length == 0) {
            return new Stretch(0, 1, 1);
        }
        double median = sample[sample.length / 2];
        float[] off = new float[sample.length];
        for (int i = 0; i < sample.length; i++) {
            off[i] = (float) Math.abs(sample[i] - median);
        }
        Arrays.sort(off);
        double sigma = Math.max(1e-6, MAD_TO_SIGMA * off[off.length / 2]);
        double brightest = sample[(int) (BRIGHTEST_SHARE * (sample.length - 1))];
        double black = median + BLACK_SIGMAS * sigma;
        return new Stretch(black, BEND_SIGMAS * sigma, Math.max(brightest, median + 20 * sigma) - black);
    }

    /** From 0, black, to 1, white. */
    double shade(double count) {
        double above = count - black;
        if (!(above > 0)) {
            return 0;
        }
        return Math.min(1, asinh(above / bend) / asinh(white / bend));
    }

    private static double asinh(double x) {
        return Math.log(x + Math.sqrt(x * x + 1));
    }

    private static float[] sample(float[] pixels) {
        int step = Math.max(1, pixels.length / SAMPLES);
        float[] sample = new float[(pixels.length + step - 1) / step];
        int count = 0;
        for (int i = 0; i < pixels.length; i += step) {
            if (Float.isFinite(pixels[i])) {
                sample[count++] = pixels[i];
            }
        }
        float[] kept = Arrays.copyOf(sample, count);
        Arrays.sort(kept);
        return kept;
    }
}
