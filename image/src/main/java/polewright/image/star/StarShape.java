package polewright.image.star;

/**
 * Second moments of a star's light as the pixels show it: those of the light itself and of the pixel's square, which adds
 * 1/12 to each axis. A Gaussian with these moments, sampled at the pixels' centres, stands for the Gaussian summed over
 * each pixel: for a full width of 1.8 pixels the two differ by less than 0.2% of the peak, the fourth cumulant of the
 * square, −1/120, being all that is left out.
 *
 * @param xx variance along x, square pixels
 * @param xy covariance
 * @param yy variance along y
 */
record StarShape(double xx, double xy, double yy) {
    static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));
    private static final double PIXEL_VARIANCE = 1.0 / 12;
    // Light cannot be narrower than this: rounding and noise can make it seem so.
    private static final double LEAST_VARIANCE = 0.01;

    static StarShape round(double sigma) {
        return new StarShape(sigma * sigma, 0, sigma * sigma);
    }

    /** Geometric mean of both axes, pixel included. */
    double sigma() {
        return Math.sqrt(Math.sqrt(determinant()));
    }

    double determinant() {
        return Math.max(0, xx * yy - xy * xy);
    }

    double majorVariance() {
        return (xx + yy) / 2 + halfSplit();
    }

    double minorVariance() {
        return Math.max(0, (xx + yy) / 2 - halfSplit());
    }

    /** Width over another shape's in the direction in which that is most. */
    double mostOver(StarShape other) {
        return Math.sqrt(meanOver(other) + spreadOver(other));
    }

    /** Width over another shape's in the direction in which that is least. */
    double leastOver(StarShape other) {
        return Math.sqrt(Math.max(0, meanOver(other) - spreadOver(other)));
    }

    // Mean, and half the difference, of the two eigenvalues of this shape measured by the other.
    private double meanOver(StarShape other) {
        return (xx * other.yy - 2 * xy * other.xy + yy * other.xx) / (2 * other.determinant());
    }

    private double spreadOver(StarShape other) {
        double mean = meanOver(other);
        return Math.sqrt(Math.max(0, mean * mean - determinant() / other.determinant()));
    }

    /** Full width at half maximum of the light that fell on the pixels, geometric mean of both axes. */
    double fwhm() {
        return FWHM_PER_SIGMA * Math.sqrt(Math.sqrt(light(majorVariance()) * light(minorVariance())));
    }

    /** Long over short axis of the light. */
    double elongation() {
        return Math.sqrt(light(majorVariance()) / light(minorVariance()));
    }

    /** Direction of the long axis from +x toward +y, [0, π). */
    double longAxisRad() {
        double angle = Math.atan2(2 * xy, xx - yy) / 2;
        return angle < 0 ? Math.min(angle + Math.PI, Math.nextDown(Math.PI)) : angle;
    }

    private double halfSplit() {
        return Math.hypot((xx - yy) / 2, xy);
    }

    private static double light(double variance) {
        return Math.max(LEAST_VARIANCE, variance - PIXEL_VARIANCE);
    }
}
