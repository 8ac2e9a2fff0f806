package polewright.frames.star;

/**
 * The filter that finds a point of light best in white noise: the image of such a point, here a round Gaussian, as two
 * passes of one dimension. Its weights are scaled so that noise of unit variance stays so; a star's height after it is
 * its signal to noise.
 */
final class PointFilter {
    private static final double REACH_SIGMAS = 2.6;

    private final float[] weights;

    /** @param sigma of the star's image, pixels */
    PointFilter(double sigma) {
        int reach = Math.max(2, (int) Math.ceil(REACH_SIGMAS * sigma));
        weights = new float[reach + 1];
        double square = 0;
        for (int i = -reach; i <= reach; i++) {
            square += Math.exp(-i * i / (sigma * sigma));
        }
        for (int i = 0; i <= reach; i++) {
            weights[i] = (float) (Math.exp(-i * i / (2 * sigma * sigma)) / Math.sqrt(square));
        }
    }

    /** Pixels on either side that count. */
    int reach() {
        return weights.length - 1;
    }

    /** Filters one row along itself: {@code in} has {@link #reach()} more pixels at either end than {@code out}. */
    void along(float[] in, float[] out, int length) {
        int reach = reach();
        float middle = weights[0];
        for (int x = 0; x < length; x++) {
            out[x] = middle * in[x + reach];
        }
        for (int k = 1; k <= reach; k++) {
            float weight = weights[k];
            int left = reach - k;
            int right = reach + k;
            for (int x = 0; x < length; x++) {
                out[x] += weight * (in[x + left] + in[x + right]);
            }
        }
    }

    /** Filters across rows: {@code row} counts round the ring, {@code 2 reach + 1} rows or more. */
    void across(float[][] ring, int row, float[] out, int length) {
        float[] here = ring[Math.floorMod(row, ring.length)];
        float middle = weights[0];
        for (int x = 0; x < length; x++) {
            out[x] = middle * here[x];
        }
        for (int k = 1; k <= reach(); k++) {
            float weight = weights[k];
            float[] above = ring[Math.floorMod(row - k, ring.length)];
            float[] below = ring[Math.floorMod(row + k, ring.length)];
            for (int x = 0; x < length; x++) {
                out[x] += weight * (above[x] + below[x]);
            }
        }
    }
}
