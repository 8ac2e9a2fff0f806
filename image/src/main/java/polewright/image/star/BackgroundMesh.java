package polewright.image.star;

import java.util.stream.IntStream;
import polewright.image.Frame;

/** The background level and noise over a frame: one node per tile, linear interpolation between nodes. */
final class BackgroundMesh {
    private static final int TILE = 64;
    // Rounding noise of integer counts, in counts: 1/√12.
    private static final double ROUNDING = 0.289;

    private final int width;
    private final int height;
    private final int columns;
    private final int rows;
    private final float[] sky;
    private final float[] noise;
    private final boolean cutAtBlack;

    private BackgroundMesh(
            int width, int height, int columns, int rows, float[] sky, float[] noise, boolean cutAtBlack) {
        this.width = width;
        this.height = height;
        this.columns = columns;
        this.rows = rows;
        this.sky = sky;
        this.noise = noise;
        this.cutAtBlack = cutAtBlack;
    }

    /**
     * Measures a frame's background.
     *
     * @param full saturation value; such pixels are not background
     */
    static BackgroundMesh of(Frame frame, float full) {
        int columns = Math.max(1, Math.round(frame.width() / (float) TILE));
        int rows = Math.max(1, Math.round(frame.height() / (float) TILE));
        float[] sky = new float[columns * rows];
        float[] noise = new float[columns * rows];
        PixelQuantisation levels = PixelQuantisation.of(frame);
        double floor = ROUNDING * levels.leastStep();
        boolean cut = levels.isCutAtBlack();
        IntStream.range(0, rows).parallel().forEach(r -> {
            BackgroundTile tile = new BackgroundTile(frame, full, floor, cut, columns, rows);
            for (int c = 0; c < columns; c++) {
                tile.measure(c, r);
                sky[r * columns + c] = (float) tile.level();
                noise[r * columns + c] = (float) Math.max(floor, tile.noise());
            }
        });
        float[] wholeNoise = BackgroundRepair.withoutObjects(noise, columns, rows);
        float[] wholeSky = BackgroundRepair.withoutObjects(sky, noise, columns, rows);
        return new BackgroundMesh(frame.width(), frame.height(), columns, rows, wholeSky, wholeNoise, cut);
    }

    /** Whether the file's noise was clipped at black, which leaves it skewed. */
    boolean isCutAtBlack() {
        return cutAtBlack;
    }

    /** Whether no part of the frame has a noisy background: a frame all black, all white or constant has none. */
    boolean isBlank() {
        for (float n : noise) {
            if (n > 0) {
                return false;
            }
        }
        return true;
    }

    /** Subtracts the background from the rows of a frame, from the top down, with buffers of its own. */
    RowScaler rowScaler() {
        return new RowScaler();
    }

    /** Rows of pixels with the background subtracted and unit noise. */
    final class RowScaler {
        // Background level, and one over its noise, along the row of nodes above, and their changes to the one below.
        private final float[] level = new float[width];
        private final float[] levelDown = new float[width];
        private final float[] scale = new float[width];
        private final float[] scaleDown = new float[width];
        private final float[] row = new float[width];
        private int nodes = -1;

        /**
         * Writes one row.
         *
         * @param pixels of the whole frame
         * @param out row, whose first pixel is at {@code offset}
         */
        void read(float[] pixels, int y, float[] out, int offset) {
            double v = (y + 0.5) * rows / height - 0.5;
            int above = Math.max(0, Math.min(rows - 2, (int) Math.floor(v)));
            if (above != nodes) {
                ready(above);
            }
            // Beyond the outermost nodes the level is extrapolated linearly, the noise is constant.
            float down = (float) (rows == 1 ? 0 : v - above);
            System.arraycopy(pixels, y * width, row, 0, width);
            scale(row, level, levelDown, down, scale, scaleDown, Math.max(0, Math.min(1, down)), width);
            System.arraycopy(row, 0, out, offset, width);
        }

        private void ready(int above) {
            nodes = above;
            int below = Math.min(rows - 1, above + 1);
            fillLevels(above, level);
            fillLevels(below, levelDown);
            fillScales(above, scale);
            fillScales(below, scaleDown);
            for (int x = 0; x < width; x++) {
                levelDown[x] -= level[x];
                scaleDown[x] -= scale[x];
            }
        }

        private void fillLevels(int r, float[] along) {
            for (int c = -1; c < columns; c++) {
                int node = Math.max(0, Math.min(columns - 2, c));
                double start = sky[r * columns + node];
                double slope = columns == 1 ? 0 : (sky[r * columns + node + 1] - start) * columns / width;
                for (int x = firstOf(c); x < firstOf(c + 1); x++) {
                    along[x] = (float) (start + slope * (x - nodeX(node)));
                }
            }
        }

        private void fillScales(int r, float[] along) {
            for (int c = -1; c < columns; c++) {
                double start = inverse(noise[r * columns + Math.max(0, c)]);
                double end = inverse(noise[r * columns + Math.min(columns - 1, c + 1)]);
                double slope = (end - start) * columns / width;
                for (int x = firstOf(c); x < firstOf(c + 1); x++) {
                    along[x] = (float) (start + slope * (x - nodeX(c)));
                }
            }
        }

        private int firstOf(int column) {
            return column < 0 ? 0 : column == columns ? width : firstPixel(column);
        }
    }

    // The JIT vectorises this: all arrays are read at the same index.
    private static void scale(
            float[] row,
            float[] level,
            float[] levelDown,
            float down,
            float[] scale,
            float[] scaleDown,
            float scaleBy,
            int length) {
        for (int x = 0; x < length; x++) {
            row[x] = (row[x] - (level[x] + down * levelDown[x])) * (scale[x] + scaleBy * scaleDown[x]);
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

    /** Noise of a pixel; infinite where it cannot be measured. */
    double noiseAt(double x, double y) {
        double u = Math.max(0, Math.min(columns - 1, (x + 0.5) * columns / width - 0.5));
        double v = Math.max(0, Math.min(rows - 1, (y + 0.5) * rows / height - 0.5));
        int c = Math.max(0, Math.min(columns - 2, (int) Math.floor(u)));
        int r = Math.max(0, Math.min(rows - 2, (int) Math.floor(v)));
        float t = (float) (rows == 1 ? 0 : v - r);
        double left = scale(c, r, t);
        double between = columns == 1 ? left : left + (u - c) * (scale(c + 1, r, t) - left);
        return 1 / between;
    }

    /** One over the noise, between two nodes of a column. */
    private double scale(int c, int r, float t) {
        double here = inverse(noise[r * columns + c]);
        return rows == 1 ? here : here + t * (inverse(noise[(r + 1) * columns + c]) - here);
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
}
