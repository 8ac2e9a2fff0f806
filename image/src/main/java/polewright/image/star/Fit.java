package polewright.image.star;

/**
 * A star's image laid through its pixels.
 *
 * @param x column of the centre
 * @param y row
 * @param image the light about it
 * @param varianceX of x, from the noise of the pixels and from how well the image fits them
 * @param varianceY of y
 * @param signalToNoise of the light, in the sky's noise alone
 * @param chiSquare squared differences over their variances
 * @param freedom pixels less parameters
 * @param freeShape whether the shape was found with the rest
 * @param rivals how hot pixels would tell the same light
 */
record Fit(
        double x,
        double y,
        StarImage image,
        double varianceX,
        double varianceY,
        double signalToNoise,
        double chiSquare,
        int freedom,
        boolean freeShape,
        ProfileHypotheses rivals) {
    StarShape shape() {
        return image.shape();
    }
}
