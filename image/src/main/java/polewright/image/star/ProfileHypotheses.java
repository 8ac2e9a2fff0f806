package polewright.image.star;

/**
 * Three explanations of the same light, by the chi square of their residuals with the same variances.
 *
 * @param star as the star that was fitted
 * @param onePixel as one hot pixel
 * @param twoPixels as two adjacent ones
 */
record ProfileHypotheses(double star, double onePixel, double twoPixels) {
    // The factor by which one pixel, or two, must fit better: a star a little sharper than the typical one must not be
    // rejected, and two free pixels follow noise better than a star can.
    private static final double ONE_MARGIN = 4;
    private static final double TWO_MARGIN = 9;

    /**
     * Whether a pair of pixels could explain light of some total chi square better than its star, given the best single
     * pixel.
     */
    static boolean mayBePair(double star, double total, double one) {
        return total - 2 * one + TWO_MARGIN < star;
    }

    boolean hotPixelsTellItBetter() {
        return onePixel + ONE_MARGIN < star || twoPixels + TWO_MARGIN < star;
    }
}
