package polewright.image.star;

import polewright.image.Frame;

/**
 * Level and noise of the sky in one tile of a frame.
 *
 * <p>The level is the mean, the noise the standard deviation of every third pixel of every third row (an odd step sees all
 * colours of a mosaic alike), clipped at three sigma about the middle until nothing more falls away, slope of the tile
 * removed. The mean, not the middle: where a file has cut its noise off at black, only the mean leaves a filtered sky of
 * nought.
 */
final class BackgroundTile {
    private static final int STEP = 3;
    private static final double CLIP = 3;
    // What is left of noise cut off at black is skew: its long side must not be clipped.
    private static final double CLIP_OF_SKEW = 5;
    // Standard deviation of a normal distribution cut at three sigma.
    private static final double CUT_SIGMA = 0.98658;
    private static final int ROUNDS = 5;
    // Below this share of the tile's spread, the differences of neighbours are its noise and the rest is structure.
    private static final double SMOOTH = 0.8;

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
    private final float[] v;
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
        v = new float[most];
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
        for (int y = y0; y < y1; y += step) {
            for (int x = x0; x < x1; x += step) {
                float p = pixels[y * frame.width() + x];
                if (p < full && p > Float.NEGATIVE_INFINITY) {
                    value[n] = p;
                    u[n] = 2f * (x - x0) / (x1 - x0) - 1;
                    v[n++] = 2f * (y - y0) / (y1 - y0) - 1;
                }
            }
        }
        // A tile mostly full or empty tells nothing of the sky.
        if (n < 8 || n * 4L * step * step < (long) (x1 - x0) * (y1 - y0)) {
            result[0] = Double.NaN;
            result[1] = Double.NaN;
            return;
        }
        clip(n);
    }

    private void clip(int n) {
        System.arraycopy(value, 0, sorted, 0, n);
        // The middle and the lower sixth, 0.967 sigma below it: what stars there are lie above.
        double median = Quantile.select(sorted, n, n / 2);
        double sigma = (median - Quantile.select(sorted, n / 2, n / 6)) / 0.967;
        if (sigma == 0) {
            // Half the pixels or more alike, as when noise is cut off at black: what is above tells.
            sigma = (Quantile.select(sorted, n, n - 1 - n / 6) - median) / 0.967;
        }
        if (sigma == 0) {
            sigma = (Quantile.select(sorted, n, n - 1 - n / 50) - median) / 2.054;
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
            for (int i = 0; i < n; i++) {
                double d = value[i] - mean - slopeU * u[i] - slopeV * v[i];
                if (Math.abs(d) <= limit) {
                    kept++;
                    sum += d;
                    square += d * d;
                    sumOu += u[i];
                    sumOv += v[i];
                    sumU += d * u[i];
                    sumV += d * v[i];
                    sumUu += u[i] * u[i];
                    sumVv += v[i] * v[i];
                }
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
        result[1] = roughness(n, sigma, slopeU);
    }

    /** Noise from the differences of samples side by side, where a glow's curve makes the tile's spread far larger. */
    private double roughness(int n, double spread, double slopeU) {
        double sigma = spread;
        for (int round = 0; round < ROUNDS; round++) {
            double limit = clip * Math.sqrt(2) * sigma;
            double square = 0;
            int kept = 0;
            for (int i = 1; i < n; i++) {
                double d = value[i] - value[i - 1] - slopeU * (u[i] - u[i - 1]);
                if (v[i] == v[i - 1] && Math.abs(d) <= limit) {
                    square += d * d;
                    kept++;
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
