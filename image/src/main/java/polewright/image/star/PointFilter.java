package polewright.image.star;

/**
 * The matched filter for a point source in white noise: its image, here a round Gaussian, as two one-dimensional
 * passes. Its weights are scaled to preserve unit variance of the noise, so a star's height after it is its signal to
 * noise.
 */
final class PointFilter {
    private static final double REACH_SIGMAS = 2.6;

    private final float[] weights;

    /** @param sigma of the star's image, pixels */
    PointFilter(double sigma) {
        int reach = Math.max(2, (int) Math.ceil(REACH_SIGMAS * sigma));
        // An even number of weights besides the middle one: they are taken two at a time.
        weights = new float[reach + reach % 2 + 1];
        double square = 0;
        for (int i = -reach; i <= reach; i++) {
            square += Math.exp(-i * i / (sigma * sigma));
        }
        for (int i = 0; i <= reach; i++) {
            weights[i] = (float) (Math.exp(-i * i / (2 * sigma * sigma)) / Math.sqrt(square));
        }
    }

    /** Pixels used on either side. */
    int reach() {
        return weights.length - 1;
    }

    /**
     * Filters one row along itself: {@code in} has {@link #reach()} more pixels at either end than {@code out}.
     *
     * @param shifted buffer of four rows
     */
    void along(float[] in, float[] out, int length, float[][] shifted) {
        int reach = reach();
        System.arraycopy(in, reach, shifted[0], 0, length);
        scale(shifted[0], weights[0], out, length);
        for (int k = 1; k < reach; k += 2) {
            // The JIT vectorises only arrays read at the same index: a copy costs less.
            System.arraycopy(in, reach - k, shifted[0], 0, length);
            System.arraycopy(in, reach + k, shifted[1], 0, length);
            System.arraycopy(in, reach - k - 1, shifted[2], 0, length);
            System.arraycopy(in, reach + k + 1, shifted[3], 0, length);
            add(shifted[0], shifted[1], weights[k], shifted[2], shifted[3], weights[k + 1], out, length);
        }
    }

    /** Filters across rows: {@code row} is the index in the ring, of {@code 2 reach + 1} rows or more. */
    void across(float[][] ring, int row, float[] out, int length) {
        scale(ring[Math.floorMod(row, ring.length)], weights[0], out, length);
        for (int k = 1; k < reach(); k += 2) {
            add(
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

    // Small methods of one loop each, which the JIT vectorises.
    private static void scale(float[] in, float weight, float[] out, int length) {
        for (int x = 0; x < length; x++) {
            out[x] = weight * in[x];
        }
    }

    private static void add(
            float[] left,
            float[] right,
            float near,
            float[] farLeft,
            float[] farRight,
            float far,
            float[] out,
            int length) {
        for (int x = 0; x < length; x++) {
            out[x] += near * (left[x] + right[x]) + far * (farLeft[x] + farRight[x]);
        }
    }
}
