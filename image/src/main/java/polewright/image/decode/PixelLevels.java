package polewright.image.decode;

import java.util.Arrays;

/**
 * Level and spread of the bulk of a set of pixels, excluding stars.
 *
 * <p>Means of the middle parts of the sorted values instead of single quantiles: a dark 8-bit frame has only a handful
 * of values, and a quantile would be off by up to half a step.
 *
 * @param level mean of the middle half
 * @param spread mean between the 50th and 90th percentiles minus the mean between the 10th and the 50th
 */
record PixelLevels(double level, double spread) {
    /** Enough for a median to 0.005 of the spread; a prime, so that no sampling is commensurate with the columns. */
    private static final int SAMPLE = 65_521;

    /** Of all pixels. */
    static PixelLevels of(float[] pixels) {
        return of(pixels, pixels.length, 1, 0, 0, 1);
    }

    /** Of every {@code step}-th pixel of every {@code step}-th row, starting at (x, y); NaN excluded. */
    static PixelLevels of(float[] pixels, int width, int height, int x0, int y0, int step) {
        int columns = (width - x0 + step - 1) / step;
        int rows = (height - y0 + step - 1) / step;
        long all = (long) columns * rows;
        int taken = (int) Math.min(all, SAMPLE);
        float[] sample = new float[taken];
        int found = 0;
        for (int i = 0; i < taken; i++) {
            long index = i * all / taken;
            int y = y0 + (int) (index / columns) * step;
            int x = x0 + (int) (index % columns) * step;
            float value = pixels[y * width + x];
            if (!Float.isNaN(value)) {
                sample[found++] = value;
            }
        }
        if (found == 0) {
            return new PixelLevels(Double.NaN, 0);
        }
        Arrays.sort(sample, 0, found);
        double level = mean(sample, found, 0.25, 0.75);
        return new PixelLevels(level, mean(sample, found, 0.5, 0.9) - mean(sample, found, 0.1, 0.5));
    }

    private static double mean(float[] sorted, int count, double from, double to) {
        int first = Math.min(count - 1, (int) (from * count));
        int end = Math.max(first + 1, (int) (to * count));
        double sum = 0;
        for (int i = first; i < end; i++) {
            sum += sorted[i];
        }
        return sum / (end - first);
    }
}
