package polewright.image.star;

/**
 * One star of a frame.
 *
 * @param x column of its centre, pixels (see {@link polewright.image})
 * @param y row
 * @param sigmaX 1 sigma of x, pixels
 * @param sigmaY 1 sigma of y, pixels
 * @param flux total counts above the background
 * @param peakToNoise height of the peak above the background after matched filtering, divided by its noise
 * @param fwhm full width at half maximum, pixels; geometric mean of both axes
 * @param elongation long over short axis, 1 for round
 * @param longAxisRad direction of the long axis from +x toward +y, radians, [0, π)
 * @param saturated whether it has saturated pixels
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
