package polewright.image.star;

import java.util.stream.IntStream;
import polewright.image.Frame;

/**
 * The sky's level and its noise over a frame: one node a tile, straight lines between nodes.
 */
final class BackgroundMesh {
    private static final int TILE = 64;
    // Noise of rounding to whole counts, in counts: 1/√12.
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
     * Measures a frame's sky.
     *
     * @param full value at and above which a pixel is full, and no measure of the sky
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
}
