package polewright.image.star;

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
        // An even number of weights beside the middle one: they are taken two at a time.
        weights = new float[reach + reach % 2 + 1];
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
        scale(in, reach, weights[0], out, length);
        for (int k = 1; k < reach; k += 2) {
            addAlong(in, reach, k, weights[k], weights[k + 1], out, length);
        }
    }

    /** Filters across rows: {@code row} counts round the ring, {@code 2 reach + 1} rows or more. */
    void across(float[][] ring, int row, float[] out, int length) {
        scale(ring[Math.floorMod(row, ring.length)], 0, weights[0], out, length);
        for (int k = 1; k < reach(); k += 2) {
            addAcross(
                    ring[Math.floorMod(row - k, ring.length)],
                    ring[Math.floorMod(row + k, ring.length)],
                    weights[k],
                    ring[Math.floorMod(row - k - 1, ring.length)],
                    ring[Math.floorMod(row + k + 1, ring.length)],
                    weights[k + 1],
                    out,
                    length);
        }
    }

    private static void scale(float[] in, int offset, float weight, float[] out, int length) {
        for (int x = 0; x < length; x++) {
            out[x] = weight * in[x + offset];
        }
    }

    // Small methods of one loop each, which the compiler turns into vector instructions.
    private static void addAlong(float[] in, int reach, int k, float near, float far, float[] out, int length) {
        int left = reach - k;
        int right = reach + k;
        int farLeft = left - 1;
        int farRight = right + 1;
        for (int x = 0; x < length; x++) {
            out[x] += near * (in[x + left] + in[x + right]) + far * (in[x + farLeft] + in[x + farRight]);
        }
    }

    private static void addAcross(
            float[] above,
            float[] below,
            float near,
            float[] higher,
            float[] lower,
            float far,
            float[] out,
            int length) {
        for (int x = 0; x < length; x++) {
            out[x] += near * (above[x] + below[x]) + far * (higher[x] + lower[x]);
        }
    }
}
