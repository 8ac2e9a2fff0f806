package polewright.image.star;

/**
 * The fit of a star's image to its pixels.
 *
 * @param x column of the centre
 * @param y row
 * @param image the light around it
 * @param varianceX of x, from the noise of the pixels and the quality of the fit
 * @param varianceY of y
 * @param signalToNoise of the light, against the background noise alone
 * @param chiSquare squared residuals divided by their variances
 * @param freedom pixels minus parameters
 * @param freeShape whether the shape was fitted too
 * @param rivals chi square of the same light as hot pixels
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
