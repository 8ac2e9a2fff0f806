package polewright.image.star;

/**
 * Sums the output of a {@link PointFilter} along the stars' common trail: together they are the matched filter for a
 * trailed star. The trail is constant over blocks of the frame.
 */
final class TrailFilter {
    private static final int BLOCK = 128;
    private static final int MOST_REACH = 64;

    private final TrailField field;
    private final double sigma;
    private final int reach;

    /**
     * @param sigma of the point filter
     * @param width of the frame
     * @param height of the frame
     */
    TrailFilter(TrailField field, double sigma, int width, int height) {
        this.field = field;
        this.sigma = sigma;
        double most = Math.max(
                Math.max(Math.abs(field.y(0, 0)), Math.abs(field.y(width, 0))),
                Math.max(Math.abs(field.y(0, height)), Math.abs(field.y(width, height))));
        reach = Math.min(MOST_REACH, (int) Math.ceil(most / 2));
    }

    /** Rows used above and below. */
    int reach() {
        return reach;
    }

    /** The sums for a band of rows around {@code y}. */
    Plan plan(int width, double y) {
        int blocks = (width + BLOCK - 1) / BLOCK;
        int[][] right = new int[blocks][];
        int[][] down = new int[blocks][];
        float[] weight = new float[blocks];
        for (int b = 0; b < blocks; b++) {
            double x = Math.min(width, (b + 0.5) * BLOCK);
            double tx = field.x(x, y);
            double ty = field.y(x, y);
            double shorter = Math.min(1, 2 * MOST_REACH / Math.max(1e-9, Math.hypot(tx, ty)));
            int taps = Math.max(1, (int) Math.ceil(Math.hypot(tx, ty) * shorter / Math.max(1, sigma)));
            right[b] = new int[taps];
            down[b] = new int[taps];
            for (int k = 0; k < taps; k++) {
                double t = ((k + 0.5) / taps - 0.5) * shorter;
                right[b][k] = (int) Math.round(t * tx);
                down[b][k] = Math.max(-reach, Math.min(reach, (int) Math.round(t * ty)));
            }
            weight[b] = (float) (1 / Math.sqrt(variance(right[b], down[b])));
        }
        return new Plan(right, down, weight);
    }

    /** Variance of a sum of filtered values, whose noise is correlated if they are close together. */
    private double variance(int[] right, int[] down) {
        double sum = 0;
        for (int i = 0; i < right.length; i++) {
            for (int k = 0; k < right.length; k++) {
                double dx = right[i] - right[k];
                double dy = down[i] - down[k];
                sum += Math.exp(-(dx * dx + dy * dy) / (4 * sigma * sigma));
            }
        }
        return sum;
    }

    /** The positions summed for each block. */
    static final class Plan {
        /** Nothing to sum. */
        static final Plan NONE = new Plan(new int[0][], new int[0][], new float[0]);

        private final int[][] right;
        private final int[][] down;
        private final float[] weight;

        private Plan(int[][] right, int[][] down, float[] weight) {
            this.right = right;
            this.down = down;
            this.weight = weight;
        }

        /** One row of sums; {@code row} is the index in the ring. */
        void sum(float[][] ring, int row, float[] out, int width) {
            for (int b = 0; b < weight.length; b++) {
                int from = b * BLOCK;
                int to = Math.min(width, from + BLOCK);
                for (int x = from; x < to; x++) {
                    out[x] = 0;
                }
                for (int k = 0; k < right[b].length; k++) {
                    float[] in = ring[Math.floorMod(row + down[b][k], ring.length)];
                    int shift = right[b][k];
                    int end = Math.min(to, width - shift);
                    for (int x = Math.max(from, -shift); x < end; x++) {
                        out[x] += in[x + shift];
                    }
                }
                for (int x = from; x < to; x++) {
                    out[x] *= weight[b];
                }
            }
        }
    }
}
