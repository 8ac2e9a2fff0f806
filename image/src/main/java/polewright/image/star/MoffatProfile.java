package polewright.image.star;

/** Powers for Moffat's profile: integers and halves, which need no logarithm. */
final class MoffatProfile {
    private MoffatProfile() {}

    /** {@code base} to the power {@code beta}, a multiple of one half. */
    static double power(double base, double beta) {
        int whole = (int) beta;
        double square = base;
        double product = beta - whole >= 0.5 ? Math.sqrt(base) : 1;
        for (int left = whole; left > 0; left >>= 1) {
            if ((left & 1) == 1) {
                product *= square;
            }
            square *= square;
        }
        return product;
    }

    /**
     * The same for many bases, each times {@code factor}. Loops without branches for the powers that most stars have.
     */
    static void power(double[] base, double beta, double factor, double[] out, int length) {
        int whole = (int) beta;
        boolean half = beta - whole >= 0.5;
        switch (whole) {
            case 2 -> {
                for (int k = 0; k < length; k++) {
                    out[k] = factor * base[k] * base[k];
                }
            }
            case 3 -> {
                for (int k = 0; k < length; k++) {
                    out[k] = factor * base[k] * base[k] * base[k];
                }
            }
            case 4 -> {
                for (int k = 0; k < length; k++) {
                    double square = base[k] * base[k];
                    out[k] = factor * square * square;
                }
            }
            default -> {
                for (int k = 0; k < length; k++) {
                    out[k] = factor * power(base[k], whole);
                }
            }
        }
        if (half) {
            for (int k = 0; k < length; k++) {
                out[k] *= Math.sqrt(base[k]);
            }
        }
    }
}
