package polewright.frames.star;

import java.util.Arrays;
import java.util.stream.IntStream;
import polewright.frames.Frame;

/**
 * The sky's level and its noise over a frame: one node a tile, straight lines between nodes.
 *
 * <p>A tile's level is the mean, its noise the standard deviation of every third pixel of every third row (an odd step
 * sees all colours of a mosaic alike), clipped at three sigma about the median until nothing more falls away, slope of
 * the tile removed. The mean, not the median: where a file has cut its noise off at zero, only the mean leaves a filtered
 * sky of nought.
 */
final class SkyMesh {
    private static final int TILE = 64;
    private static final int STEP = 3;
    private static final double CLIP = 3;
    // What is left of noise cut off at black is skew: its long side must not be clipped.
    private static final double CLIP_OF_SKEW = 5;
    // Standard deviation of a normal distribution cut at three sigma.
    private static final double CUT_SIGMA = 0.98658;
    private static final int ROUNDS = 5;
    // Below this share of the tile's spread, the differences of neighbours are its noise and the rest is structure.
    private static final double SMOOTH = 0.8;
    // Noise of rounding to whole counts, in counts: 1/√12.
    private static final double ROUNDING = 0.289;
    private static final int SAMPLES = 10_000;
    private static final double CUT_SHARE = 0.05;

    private final int width;
    private final int height;
    private final int columns;
    private final int rows;
    private final float[] sky;
    private final float[] noise;
    private final boolean cutAtBlack;

    private SkyMesh(int width, int height, int columns, int rows, float[] sky, float[] noise, boolean cutAtBlack) {
        this.width = width;
        this.height = height;
        this.columns = columns;
        this.rows = rows;
        this.sky = sky;
        this.noise = noise;
        this.cutAtBlack = cutAtBlack;
    }

    /**
     * Measures a frame's sky.
     *
     * @param full value at and above which a pixel is full, and no measure of the sky
     */
    static SkyMesh of(Frame frame, float full) {
        int columns = Math.max(1, Math.round(frame.width() / (float) TILE));
        int rows = Math.max(1, Math.round(frame.height() / (float) TILE));
        float[] sky = new float[columns * rows];
        float[] noise = new float[columns * rows];
        float[] some = sortedSamples(frame);
        double floor = ROUNDING * leastStep(some);
        boolean cut = isCutAtBlack(some);
        IntStream.range(0, rows).parallel().forEach(r -> {
            Tile tile = new Tile(frame, full, floor, cut, columns, rows);
            for (int c = 0; c < columns; c++) {
                tile.measure(c, r);
                sky[r * columns + c] = (float) tile.level();
                noise[r * columns + c] = (float) Math.max(floor, tile.noise());
            }
        });
        float[] wholeNoise = NodeRepair.withoutObjects(noise, columns, rows);
        float[] wholeSky = NodeRepair.withoutObjects(sky, noise, columns, rows);
        return new SkyMesh(frame.width(), frame.height(), columns, rows, wholeSky, wholeNoise, cut);
    }

    /** Pixels from all over the frame in order, those that are missing left out. */
    private static float[] sortedSamples(Frame frame) {
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
        return finite;
    }

    /** Least difference between two pixels: one count, for most files; nought if all are alike. */
    private static float leastStep(float[] sorted) {
        float least = Float.POSITIVE_INFINITY;
        for (int i = 1; i < sorted.length; i++) {
            float gap = sorted[i] - sorted[i - 1];
            if (gap > 0 && gap < least) {
                least = gap;
            }
        }
        return least == Float.POSITIVE_INFINITY ? 0 : least;
    }

    /** Whether many pixels share the least value: the lower half of the noise has been cut off. */
    private static boolean isCutAtBlack(float[] sorted) {
        int cut = (int) (CUT_SHARE * sorted.length);
        return sorted.length > 0 && sorted[cut] == sorted[0];
    }

    /** Whether the file cut its noise off at black, so that what is left is skew. */
    boolean isCutAtBlack() {
        return cutAtBlack;
    }

    /** Whether any part of the frame has a sky with noise: a frame all black, all white or all alike has none. */
    boolean isBlank() {
        for (float n : noise) {
            if (n > 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * Writes one row of pixels, sky off and noise to one.
     *
     * @param pixels of the whole frame
     * @param out row, whose first pixel stands at {@code offset}
     */
    void overNoise(float[] pixels, int y, float[] out, int offset) {
        double v = (y + 0.5) * rows / height - 0.5;
        int r = Math.max(0, Math.min(rows - 2, (int) Math.floor(v)));
        float t = (float) (rows == 1 ? 0 : v - r);
        float still = Math.max(0, Math.min(1, t));
        float step = columns == 1 ? 0 : columns / (float) width;
        for (int c = -1; c < columns; c++) {
            int from = c < 0 ? 0 : firstPixel(c);
            int to = c == columns - 1 ? width : firstPixel(c + 1);
            // Beyond the outermost nodes the level goes on in a straight line, the noise stays.
            int level = Math.max(0, Math.min(columns - 2, c));
            float s0 = blend(sky, level, r, t);
            float slope = columns == 1 ? 0 : (blend(sky, level + 1, r, t) - s0) * step;
            float n0 = inverse(blend(noise, Math.max(0, c), r, still));
            float inverseSlope = (inverse(blend(noise, Math.min(c + 1, columns - 1), r, still)) - n0) * step;
            float start = (float) (s0 - slope * nodeX(level));
            float inverseStart = (float) (n0 - inverseSlope * nodeX(c));
            subtract(pixels, y * width, start, slope, inverseStart, inverseSlope, out, offset, from, to);
        }
    }

    private static void subtract(
            float[] pixels,
            int row,
            float level,
            float slope,
            float inverse,
            float inverseSlope,
            float[] out,
            int offset,
            int from,
            int to) {
        for (int x = from; x < to; x++) {
            out[x + offset] = (pixels[row + x] - (level + slope * x)) * (inverse + inverseSlope * x);
        }
    }

    private double nodeX(int column) {
        return (column + 0.5) * width / columns - 0.5;
    }

    private static float inverse(float noise) {
        return noise > 0 ? 1 / noise : 0;
    }

    double skyAt(double x, double y) {
        return at(sky, x, y);
    }

    /** Noise of a pixel; infinite where there is none to measure by. */
    double noiseAt(double x, double y) {
        double u = Math.max(0, Math.min(columns - 1, (x + 0.5) * columns / width - 0.5));
        double v = Math.max(0, Math.min(rows - 1, (y + 0.5) * rows / height - 0.5));
        int c = Math.max(0, Math.min(columns - 2, (int) Math.floor(u)));
        int r = Math.max(0, Math.min(rows - 2, (int) Math.floor(v)));
        float t = (float) (rows == 1 ? 0 : v - r);
        double left = inverse(blend(noise, c, r, t));
        double between = columns == 1 ? left : left + (u - c) * (inverse(blend(noise, c + 1, r, t)) - left);
        return 1 / between;
    }

    private int firstPixel(int column) {
        return (int) Math.ceil((column + 0.5) * width / columns - 0.5);
    }

    private float blend(float[] nodes, int c, int r, float t) {
        float here = nodes[r * columns + c];
        return rows == 1 ? here : here + t * (nodes[(r + 1) * columns + c] - here);
    }

    private double at(float[] nodes, double x, double y) {
        double u = (x + 0.5) * columns / width - 0.5;
        double v = (y + 0.5) * rows / height - 0.5;
        int c = Math.max(0, Math.min(columns - 2, (int) Math.floor(u)));
        int r = Math.max(0, Math.min(rows - 2, (int) Math.floor(v)));
        float t = (float) (rows == 1 ? 0 : v - r);
        double left = blend(nodes, c, r, t);
        return columns == 1 ? left : left + (u - c) * (blend(nodes, c + 1, r, t) - left);
    }

    /** One tile's samples. */
    private static final class Tile {
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

        Tile(Frame frame, float full, double floor, boolean cutAtBlack, int columns, int rows) {
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

    /** Nodes that an object fills, or that have no sky, take the middle value of their neighbours. */
    private static final class NodeRepair {
        private static final double FAR = 3;

        private NodeRepair() {}

        static float[] withoutObjects(float[] nodes, int columns, int rows) {
            return withoutObjects(nodes, nodes, columns, rows);
        }

        /** Where the noise stands out from its neighbours', both level and noise are an object's. */
        static float[] withoutObjects(float[] nodes, float[] noise, int columns, int rows) {
            float[] repaired = nodes.clone();
            for (int r = 0; r < rows; r++) {
                for (int c = 0; c < columns; c++) {
                    int i = r * columns + c;
                    float usual = neighbours(noise, columns, rows, c, r, 1);
                    if (!(noise[i] <= FAR * usual) && !(usual == 0 && noise[i] > 0)) {
                        repaired[i] = neighbours(nodes, columns, rows, c, r, 1);
                    }
                    for (int reach = 2;
                            !(repaired[i] > Float.NEGATIVE_INFINITY) && reach < columns + rows;
                            reach *= 2) {
                        repaired[i] = neighbours(nodes, columns, rows, c, r, reach);
                    }
                }
            }
            for (int i = 0; i < repaired.length; i++) {
                repaired[i] = repaired[i] > Float.NEGATIVE_INFINITY ? repaired[i] : 0;
            }
            return repaired;
        }

        private static float neighbours(float[] nodes, int columns, int rows, int c, int r, int reach) {
            float[] found = new float[(2 * reach + 1) * (2 * reach + 1)];
            int n = 0;
            for (int y = Math.max(0, r - reach); y <= Math.min(rows - 1, r + reach); y++) {
                for (int x = Math.max(0, c - reach); x <= Math.min(columns - 1, c + reach); x++) {
                    float v = nodes[y * columns + x];
                    if ((x != c || y != r) && v > Float.NEGATIVE_INFINITY) {
                        found[n++] = v;
                    }
                }
            }
            if (n == 0) {
                return Float.NaN;
            }
            Arrays.sort(found, 0, n);
            return found[n / 2];
        }
    }
}
