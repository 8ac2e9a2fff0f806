package polewright.image.star;

/** Powers that Moffat's profile takes: whole ones and halves, which need no logarithm. */
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
}
