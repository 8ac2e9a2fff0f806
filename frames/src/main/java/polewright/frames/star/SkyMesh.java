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
    // Standard deviation of a normal distribution cut at three sigma.
    private static final double CUT_SIGMA = 0.98658;
    private static final int ROUNDS = 5;
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
        IntStream.range(0, rows).parallel().forEach(r -> {
            Tile tile = new Tile(frame, full, floor, columns, rows);
            for (int c = 0; c < columns; c++) {
                tile.measure(c, r);
                sky[r * columns + c] = (float) tile.level();
                noise[r * columns + c] = (float) Math.max(floor, tile.noise());
            }
        });
        float[] wholeNoise = NodeRepair.withoutObjects(noise, columns, rows);
        float[] wholeSky = NodeRepair.withoutObjects(sky, noise, columns, rows);
        return new SkyMesh(frame.width(), frame.height(), columns, rows, wholeSky, wholeNoise, isCutAtBlack(some));
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

    /** Writes level and 1/noise of one row; 1/noise is nought where there is no noise to measure by. */
    void row(int y, float[] level, float[] perNoise) {
        double v = (y + 0.5) * rows / height - 0.5;
        int r = Math.max(0, Math.min(rows - 2, (int) Math.floor(v)));
        float t = (float) (rows == 1 ? 0 : v - r);
        for (int c = 0; c < Math.max(1, columns - 1); c++) {
            int from = c == 0 ? 0 : firstPixel(c);
            int to = c >= columns - 2 ? width : firstPixel(c + 1);
            double x0 = (c + 0.5) * width / columns - 0.5;
            float step = columns == 1 ? 0 : columns / (float) width;
            float s0 = blend(sky, c, r, t);
            float s1 = blend(sky, Math.min(c + 1, columns - 1), r, t);
            float n0 = blend(noise, c, r, t);
            float n1 = blend(noise, Math.min(c + 1, columns - 1), r, t);
            line(level, from, to, x0, s0, (s1 - s0) * step);
            line(perNoise, from, to, x0, n0, (n1 - n0) * step);
            float least = Math.min(n0, n1) / 2;
            for (int x = from; x < to; x++) {
                float n = Math.max(perNoise[x], least);
                perNoise[x] = n > 0 ? 1 / n : 0;
            }
        }
    }

    double skyAt(double x, double y) {
        return at(sky, x, y);
    }

    double noiseAt(double x, double y) {
        double u = (x + 0.5) * columns / width - 0.5;
        double v = (y + 0.5) * rows / height - 0.5;
        int c = (int) Math.max(0, Math.min(columns - 1, Math.round(u)));
        int r = (int) Math.max(0, Math.min(rows - 1, Math.round(v)));
        return Math.max(at(noise, x, y), noise[r * columns + c] / 2);
    }

    private int firstPixel(int column) {
        return (int) Math.ceil((column + 0.5) * width / columns - 0.5);
    }

    private static void line(float[] out, int from, int to, double x0, float value, float slope) {
        float start = (float) (value - x0 * slope);
        for (int x = from; x < to; x++) {
            out[x] = start + slope * x;
        }
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
        private final int columns;
        private final int rows;
        private final float[] value;
        private final float[] sorted;
        private final float[] u;
        private final float[] v;
        private final double[] result = new double[2];

        Tile(Frame frame, float full, double floor, int columns, int rows) {
            this.frame = frame;
            this.full = full;
            this.floor = floor;
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
            double median = Quantile.select(sorted, n, n / 2);
            double spread = (median - Quantile.select(sorted, n, n / 6)) * 1.03;
            double upper = (Quantile.select(sorted, n, n - 1 - n / 6) - median) * 1.03;
            double mean = median;
            double sigma = Math.max(spread, Math.min(upper, 2 * spread));
            double slopeU = 0;
            double slopeV = 0;
            for (int round = 0; round < ROUNDS; round++) {
                double limit = CLIP * Math.max(sigma, floor);
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
                sigma = Math.sqrt(Math.max(0, square / kept - shift * shift)) / CUT_SIGMA;
                mean += shift;
                if (sumUu > 0 && sumVv > 0) {
                    double moreU = (sumU - shift * sumOu) / sumUu;
                    double moreV = (sumV - shift * sumOv) / sumVv;
                    slopeU += moreU;
                    slopeV += moreV;
                    mean -= moreU * sumOu / kept + moreV * sumOv / kept;
                }
                if (round > 1 && Math.abs(sigma - before) < 0.002 * sigma) {
                    break;
                }
            }
            result[0] = mean;
            result[1] = sigma;
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
