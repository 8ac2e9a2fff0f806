package polewright.image.star;

/**
 * Three ways to tell the same light, by the chi square of what each leaves over, all by the same variances.
 *
 * @param star as the star that was fitted
 * @param onePixel as one hot pixel
 * @param twoPixels as two that touch
 */
record ProfileHypotheses(double star, double onePixel, double twoPixels) {
    // How much better the light must be told by one pixel, or by two, to be theirs: a star a little sharper than the
    // usual one must not fall to them, and two free pixels follow noise better than a star can.
    private static final double ONE_MARGIN = 4;
    private static final double TWO_MARGIN = 9;

    /** Whether a pair of pixels might tell a light of some total chi square better than its star, by what the best one tells. */
    static boolean mayBePair(double star, double total, double one) {
        return total - 2 * one + TWO_MARGIN < star;
    }

    boolean hotPixelsTellItBetter() {
        return onePixel + ONE_MARGIN < star || twoPixels + TWO_MARGIN < star;
    }
}
