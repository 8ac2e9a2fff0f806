package polewright.frames.star;

/**
 * A Gaussian laid through a star's pixels.
 *
 * @param x column of the centre
 * @param y row
 * @param height above the sky at the centre, counts
 * @param shape of the star, pixel included
 * @param varianceX of x, from the noise of the pixels
 * @param varianceY of y
 * @param flux all the light, counts
 * @param signalToNoise of the flux, in the sky's noise alone
 * @param chiSquare squared differences over their variances
 * @param freedom pixels less parameters
 * @param freeShape whether the shape was found with the rest
 */
record Fit(
        double x,
        double y,
        double height,
        StarShape shape,
        double varianceX,
        double varianceY,
        double flux,
        double signalToNoise,
        double chiSquare,
        int freedom,
        boolean freeShape) {
    double reducedChiSquare() {
        return freedom > 0 ? chiSquare / freedom : 1;
    }

    /** Light of the Gaussian at a pixel. */
    double lightAt(double px, double py) {
        double dx = px - x;
        double dy = py - y;
        double det = shape.determinant();
        return height * Math.exp(-(shape.yy() * dx * dx - 2 * shape.xy() * dx * dy + shape.xx() * dy * dy) / (2 * det));
    }
}
