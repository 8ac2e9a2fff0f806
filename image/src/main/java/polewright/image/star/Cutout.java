package polewright.image.star;

import java.util.List;
import polewright.image.Frame;

/**
 * The background-subtracted pixels around one star; unusable ones (missing, saturated, out of the frame) have zero
 * weight.
 */
final class Cutout {
    private static final double BEYOND_SQUARE = 12;
    private static final int FEWEST_ABOUT = 20;
    private static final double PLAINLY = 3;
    private static final double CLIP = 3;

    private final int left;
    private final int top;
    private final int width;
    private final int height;
    private final double[] light;
    private final boolean[] counts;
    private final double skyVariance;

    private Cutout(int left, int top, int width, int height, double[] light, boolean[] counts, double skyVariance) {
        this.left = left;
        this.top = top;
        this.width = width;
        this.height = height;
        this.light = light;
        this.counts = counts;
        this.skyVariance = skyVariance;
    }

    /** Pixels around the one at (x, y), as far as the frame extends. */
    static Cutout about(CutoutMaker of, int x, int y, int reachX, int reachY) {
        Frame frame = of.frame();
        BackgroundMesh mesh = of.mesh();
        int left = Math.max(0, x - reachX);
        int top = Math.max(0, y - reachY);
        int width = Math.min(frame.width(), x + reachX + 1) - left;
        int height = Math.min(frame.height(), y + reachY + 1) - top;
        double[] light = new double[width * height];
        boolean[] counts = new boolean[width * height];
        double sky = mesh.skyAt(x, y);
        double slopeX = mesh.skyAt(x + 1, y) - sky;
        double slopeY = mesh.skyAt(x, y + 1) - sky;
        double noise = mesh.noiseAt(x, y) * of.sharedNoise();
        float[] pixels = frame.pixels();
        float full = of.full();
        for (int j = 0; j < height; j++) {
            int from = (top + j) * frame.width() + left;
            double level = sky + slopeX * (left - x) + slopeY * (top + j - y);
            for (int i = 0; i < width; i++) {
                float p = pixels[from + i];
                int k = j * width + i;
                counts[k] = p < full && p > Float.NEGATIVE_INFINITY;
                light[k] = counts[k] ? p - level - slopeX * i : 0;
            }
        }
        if (of.hot().count() > 0) {
            for (int k = 0; k < counts.length; k++) {
                if (of.hot().contains(left + k % width, top + k / width)) {
                    counts[k] = false;
                    light[k] = 0;
                }
            }
        }
        return new Cutout(left, top, width, height, light, counts, noise * noise);
    }

    /** The same without the light of other stars. */
    Cutout without(List<Fit> others) {
        if (others.isEmpty()) {
            return this;
        }
        double[] less = light.clone();
        for (Fit other : others) {
            for (int k = 0; k < less.length; k++) {
                if (counts[k]) {
                    less[k] -= other.image().lightAt(left + k % width - other.x(), top + k / width - other.y());
                }
            }
        }
        return new Cutout(left, top, width, height, less, counts, skyVariance);
    }

    /**
     * The same with a local background subtracted, where it differs significantly from the mesh: under a glow, in a
     * nebula, on the wings of a brighter star.
     *
     * @param shape of the star, whose own light is excluded
     */
    Cutout onLocalSky(double x, double y, StarShape shape) {
        float[] about = new float[light.length];
        int n = 0;
        double det = shape.determinant();
        for (int j = 0; j < height; j++) {
            double dy = top + j - y;
            for (int i = 0; i < width; i++) {
                double dx = left + i - x;
                double q = (shape.yy() * dx * dx - 2 * shape.xy() * dx * dy + shape.xx() * dy * dy) / det;
                if (q > BEYOND_SQUARE && counts[j * width + i]) {
                    about[n++] = (float) light[j * width + i];
                }
            }
        }
        if (n < FEWEST_ABOUT) {
            return this;
        }
        double level = clippedMean(about, n, CLIP * Math.sqrt(skyVariance));
        if (Math.abs(level) < PLAINLY * Math.sqrt(skyVariance / n)) {
            return this;
        }
        double[] lowered = new double[light.length];
        for (int k = 0; k < light.length; k++) {
            lowered[k] = counts[k] ? light[k] - level : 0;
        }
        return new Cutout(left, top, width, height, lowered, counts, skyVariance);
    }

    private static double clippedMean(float[] values, int n, double limit) {
        double middle = Quantile.select(values, n, n / 2);
        double sum = 0;
        int kept = 0;
        for (int k = 0; k < n; k++) {
            if (Math.abs(values[k] - middle) <= limit) {
                sum += values[k];
                kept++;
            }
        }
        return kept > 0 ? sum / kept : middle;
    }

    int left() {
        return left;
    }

    int top() {
        return top;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    double skyVariance() {
        return skyVariance;
    }

    /** Light above the background at a column and row of the cutout. */
    double light(int column, int row) {
        return light[row * width + column];
    }

    boolean counts(int column, int row) {
        return counts[row * width + column];
    }

    boolean contains(int x, int y) {
        return x >= left && y >= top && x < left + width && y < top + height;
    }
}
