package polewright.image.star;

/**
 * One star of a frame.
 *
 * @param x column of its centre, pixels (see {@link polewright.image})
 * @param y row
 * @param sigmaX 1 sigma of x, pixels
 * @param sigmaY 1 sigma of y, pixels
 * @param flux counts above the sky, all of it
 * @param peakToNoise height of the peak above the sky after matched filtering, over its noise
 * @param fwhm full width at half maximum, pixels; geometric mean of both axes
 * @param elongation long over short axis, 1 for round
 * @param longAxisRad direction of the long axis from +x toward +y, radians, [0, π)
 * @param saturated whether pixels of it are full
 */
public record FoundStar(
        double x,
        double y,
        double sigmaX,
        double sigmaY,
        double flux,
        double peakToNoise,
        double fwhm,
        double elongation,
        double longAxisRad,
        boolean saturated) {}
