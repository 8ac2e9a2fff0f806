package polewright.image.star;

import polewright.image.Frame;

/**
 * Background level and noise in one tile of a frame.
 *
 * <p>The level is the mean, the noise the standard deviation of every third pixel of every third row (an odd step
 * samples all colours of a mosaic equally), sigma-clipped at three sigma around the median until it converges, with the
 * tile's slope removed. The mean, not the median: if a file's noise was clipped at black, only the mean leaves a
 * filtered background of zero.
 */
final class BackgroundTile {
    private static final int STEP = 3;
    private static final double CLIP = 3;
    // Noise clipped at black is skewed: its long tail must not be clipped.
    private static final double CLIP_OF_SKEW = 5;
    // Standard deviation of a normal distribution truncated at three sigma.
    private static final double CUT_SIGMA = 0.98658;
    private static final int ROUNDS = 5;
    // Below this fraction of the tile's spread, the differences of neighbours are its noise and the rest is structure.
    private static final double SMOOTH = 0.8;
    private static final int MANY = 400;
    private static final int FEWER = 4;

    private final Frame frame;
    private final float full;
    private final double floor;
    private final double clip;
    private final double cutSigma;
    private final int columns;
    private final int rows;
    private final float[] value;
    private final float[] sorted;
    private final float[] u;
    // For each row of samples: its height in the tile, −1 to 1, and the start of the next.
    private final float[] v;
    private final int[] rowEnd;
    private final double[] result = new double[2];

    BackgroundTile(Frame frame, float full, double floor, boolean cutAtBlack, int columns, int rows) {
        this.frame = frame;
        this.full = full;
        this.floor = floor;
        clip = cutAtBlack ? CLIP_OF_SKEW : CLIP;
        cutSigma = cutAtBlack ? 1 : CUT_SIGMA;
        this.columns = columns;
        this.rows = rows;
        int most = (frame.width() / columns + 2) * (frame.height() / rows + 2);
        value = new float[most];
        sorted = new float[most];
        u = new float[most];
        v = new float[frame.height() / rows + 2];
        rowEnd = new int[v.length];
    }

    double level() {
        return result[0];
    }

    double noise() {
        return result[1];
    }

    void measure(int column, int row) {
        int x0 = (int) ((long) column * frame.width() / columns);
        int x1 = (int) ((long) (column + 1) * frame.width() / columns);
        int y0 = (int) ((long) row * frame.height() / rows);
        int y1 = (int) ((long) (row + 1) * frame.height() / rows);
        int step = (x1 - x0) * (y1 - y0) >= 32 * 32 ? STEP : 1;
        float[] pixels = frame.pixels();
        int n = 0;
        int lines = 0;
        for (int y = y0; y < y1; y += step) {
            for (int x = x0; x < x1; x += step) {
                float p = pixels[y * frame.width() + x];
                if (p < full && p > Float.NEGATIVE_INFINITY) {
                    value[n] = p;
                    u[n++] = 2f * (x - x0) / (x1 - x0) - 1;
                }
            }
            v[lines] = 2f * (y - y0) / (y1 - y0) - 1;
            rowEnd[lines++] = n;
        }
        // A tile that is mostly saturated or empty has no usable background.
        if (n < 8 || n * 4L * step * step < (long) (x1 - x0) * (y1 - y0)) {
            result[0] = Double.NaN;
            result[1] = Double.NaN;
            return;
        }
        clip(n, lines);
    }

    private void clip(int n, int lines) {
        // Only a starting value: of many values, one in four is enough.
        int some = 0;
        for (int i = 0; i < n; i += n >= MANY ? FEWER : 1) {
            sorted[some++] = value[i];
        }
        // The median and the lower sixth, 0.967 sigma below it: stars only affect values above.
        double median = Quantile.select(sorted, some, some / 2);
        double sigma = (median - Quantile.select(sorted, some / 2, some / 6)) / 0.967;
        if (sigma == 0) {
            // Half of the pixels or more are equal, as when noise is clipped at black: the values above are used.
            sigma = (Quantile.select(sorted, some, some - 1 - some / 6) - median) / 0.967;
        }
        if (sigma == 0) {
            sigma = (Quantile.select(sorted, some, some - 1 - some / 50) - median) / 2.054;
        }
        double mean = median;
        double slopeU = 0;
        double slopeV = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double limit = clip * Math.max(sigma, floor);
            double sum = 0;
            double sumU = 0;
            double sumV = 0;
            double sumUu = 0;
            double sumVv = 0;
            double sumOu = 0;
            double sumOv = 0;
            double square = 0;
            int kept = 0;
            for (int line = 0, i = 0; line < lines; line++) {
                double level = mean + slopeV * v[line];
                double lineSum = 0;
                int lineKept = 0;
                for (; i < rowEnd[line]; i++) {
                    double d = value[i] - level - slopeU * u[i];
                    if (Math.abs(d) <= limit) {
                        lineKept++;
                        lineSum += d;
                        square += d * d;
                        sumOu += u[i];
                        sumU += d * u[i];
                        sumUu += u[i] * u[i];
                    }
                }
                kept += lineKept;
                sum += lineSum;
                sumOv += lineKept * v[line];
                sumV += lineSum * v[line];
                sumVv += lineKept * v[line] * v[line];
            }
            if (kept < 8) {
                break;
            }
            double shift = sum / kept;
            double before = sigma;
            sigma = Math.sqrt(Math.max(0, square / kept - shift * shift)) / cutSigma;
            mean += shift;
            if (sumUu > 0 && sumVv > 0) {
                double moreU = (sumU - shift * sumOu) / sumUu;
                double moreV = (sumV - shift * sumOv) / sumVv;
                slopeU += moreU;
                slopeV += moreV;
                mean -= moreU * sumOu / kept + moreV * sumOv / kept;
            }
            if (round > 0 && Math.abs(sigma - before) < 0.005 * sigma) {
                break;
            }
        }
        result[0] = mean;
        result[1] = roughness(lines, sigma, slopeU);
    }

    /** Noise from the differences of adjacent samples, for tiles where a curved glow makes the spread far larger. */
    private double roughness(int lines, double spread, double slopeU) {
        double sigma = spread;
        for (int round = 0; round < ROUNDS; round++) {
            double limit = clip * Math.sqrt(2) * sigma;
            double square = 0;
            int kept = 0;
            for (int line = 0, first = 0; line < lines; first = rowEnd[line++]) {
                for (int i = first + 1; i < rowEnd[line]; i++) {
                    double d = value[i] - value[i - 1] - slopeU * (u[i] - u[i - 1]);
                    if (Math.abs(d) <= limit) {
                        square += d * d;
                        kept++;
                    }
                }
            }
            double closer = kept < 8 ? sigma : Math.sqrt(square / kept / 2) / cutSigma;
            if (closer > SMOOTH * sigma) {
                return round == 0 ? spread : closer;
            }
            sigma = closer;
        }
        return sigma;
    }
}
