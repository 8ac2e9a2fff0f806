package polewright.mount.rig;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.RotationCovariance;

/**
 * A camera on the tube, or on a guide telescope attached to it.
 *
 * @param name the user's name for it
 * @param focalLengthMm of the optics in front of it, mm
 * @param pixelMicrons width of a pixel, binning included, µm
 * @param widthPixels pixels in a row
 * @param heightPixels rows
 */
public record Camera(String name, double focalLengthMm, double pixelMicrons, int widthPixels, int heightPixels) {
    // Position error of a star in a quick exposure, and the number of stars in a matched frame (common practice).
    private static final double STAR_SIGMA_PIXELS = 0.2;
    private static final double STARS = 30;

    public Camera {
        requireRange(name, "focal length", focalLengthMm, "mm", 1, 20_000);
        requireRange(name, "pixel", pixelMicrons, "microns", 0.5, 100);
        requireRange(name, "width", widthPixels, "pixels", 64, 100_000);
        requireRange(name, "height", heightPixels, "pixels", 64, 100_000);
    }

    /** Angular size of a pixel at the centre. */
    public Angle perPixel() {
        return new Angle(pixelMicrons / 1000 / focalLengthMm);
    }

    /** Angular size of the shorter side. */
    public Angle field() {
        return new Angle(
                2 * Math.atan(Math.min(widthPixels, heightPixels) * perPixel().radians() / 2));
    }

    /** Usual uncertainty of a solved frame's centre and roll: some thirty stars, each to a fifth of a pixel. */
    public RotationCovariance usualCovariance() {
        Angle ofMean = perPixel().times(STAR_SIGMA_PIXELS / Math.sqrt(STARS));
        double meanSquare = (Math.pow(widthPixels, 2) + Math.pow(heightPixels, 2)) / 12;
        Angle roll = new Angle(STAR_SIGMA_PIXELS / Math.sqrt(STARS * meanSquare));
        return RotationCovariance.ofSigmas(ofMean, roll);
    }

    private static void requireRange(String name, String what, double value, String unit, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new InputRefused(
                    "a " + what + " of " + PlainNumber.asTyped(value) + " " + unit + " for camera '" + name
                            + "' is outside " + PlainNumber.of(low) + " to " + PlainNumber.of(high),
                    "correct the rig file");
        }
    }
}
