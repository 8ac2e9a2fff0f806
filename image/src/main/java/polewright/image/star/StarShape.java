package polewright.image.star;

/**
 * Second moments of a star's light on the pixels: those of the light itself plus those of the square pixel, which adds
 * 1/12 to each axis. A Gaussian with these moments, sampled at the pixels' centres, approximates the Gaussian summed
 * over each pixel: for a FWHM of 1.8 pixels the two differ by less than 0.2% of the peak, since only the fourth
 * cumulant of the square, −1/120, is neglected.
 *
 * @param xx variance along x, square pixels
 * @param xy covariance
 * @param yy variance along y
 */
record StarShape(double xx, double xy, double yy) {
    static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));
    private static final double PIXEL_VARIANCE = 1.0 / 12;
    // Light cannot be narrower than this, although rounding and noise can make it seem so.
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

    /** Largest ratio of its width to another shape's, over all directions. */
    double mostOver(StarShape other) {
        return Math.sqrt(meanOver(other) + spreadOver(other));
    }

    /** Smallest ratio of its width to another shape's, over all directions. */
    double leastOver(StarShape other) {
        return Math.sqrt(Math.max(0, meanOver(other) - spreadOver(other)));
    }

    // Mean, and half the difference, of the two eigenvalues of this shape relative to the other.
    private double meanOver(StarShape other) {
        return (xx * other.yy - 2 * xy * other.xy + yy * other.xx) / (2 * other.determinant());
    }

    private double spreadOver(StarShape other) {
        double mean = meanOver(other);
        return Math.sqrt(Math.max(0, mean * mean - determinant() / other.determinant()));
    }

    /** FWHM of the light that fell on the pixels, geometric mean of both axes. */
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
