package polewright.image.star;

import java.util.Arrays;
import polewright.image.Frame;

/** The distinct values of a frame's pixels, from some thousands of them. */
final class PixelQuantisation {
    private static final int SAMPLES = 10_000;
    private static final double CUT_SHARE = 0.05;

    private final float[] sorted;

    private PixelQuantisation(float[] sorted) {
        this.sorted = sorted;
    }

    /** A sorted sample of pixels from all over the frame, without missing ones. */
    static PixelQuantisation of(Frame frame) {
        float[] pixels = frame.pixels();
        int step = Math.max(1, pixels.length / SAMPLES) | 1;
        float[] some = new float[(pixels.length + step - 1) / step];
        int n = 0;
        for (int i = 0; i < pixels.length; i += step) {
            if (Math.abs(pixels[i]) <= Float.MAX_VALUE) {
                some[n++] = pixels[i];
            }
        }
        float[] finite = Arrays.copyOf(some, n);
        Arrays.sort(finite);
        return new PixelQuantisation(finite);
    }

    /** Least difference between two pixels: one count, for most files; zero if all are equal. */
    float leastStep() {
        float least = Float.POSITIVE_INFINITY;
        for (int i = 1; i < sorted.length; i++) {
            float gap = sorted[i] - sorted[i - 1];
            if (gap > 0 && gap < least) {
                least = gap;
            }
        }
        return least == Float.POSITIVE_INFINITY ? 0 : least;
    }

    /** Whether many pixels have the least value: the lower half of the noise was clipped. */
    boolean isCutAtBlack() {
        int cut = (int) (CUT_SHARE * sorted.length);
        return sorted.length > 0 && sorted[cut] == sorted[0];
    }
}
