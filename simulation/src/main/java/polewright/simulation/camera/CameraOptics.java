package polewright.simulation.camera;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/**
 * A lens or telescope with a camera behind it.
 *
 * @param focalLengthMm the true value
 * @param apertureMm clear aperture
 * @param blurMicrons width of a star's image on the detector, full width at half maximum, from optics and guiding
 *     alone; the seeing is added
 * @param haloFraction share of a star's light in a faint halo, 2.5 times as wide as the core; 0 for a clean Gaussian
 * @param cornerShade share of the light lost in the corners (vignetting), growing as the square of the distance from
 *     the centre
 * @param distortion of the lens
 * @param mirrored whether an odd number of mirrors (a star diagonal, a guiding prism) swaps left and right
 */
public record CameraOptics(
        double focalLengthMm,
        double apertureMm,
        double blurMicrons,
        double haloFraction,
        double cornerShade,
        Distortion distortion,
        boolean mirrored) {
    public CameraOptics {
        positive(focalLengthMm, "focal length", "mm");
        positive(apertureMm, "aperture", "mm");
        positive(blurMicrons, "blur", "microns");
        share(haloFraction, "halo");
        share(cornerShade, "corner shade");
    }

    /** Ideal optics: no halo, vignetting, distortion or mirror. */
    public static CameraOptics clean(double focalLengthMm, double apertureMm, double blurMicrons) {
        return new CameraOptics(focalLengthMm, apertureMm, blurMicrons, 0, 0, Distortion.NONE, false);
    }

    public CameraOptics withFocalLength(double mm) {
        return new CameraOptics(mm, apertureMm, blurMicrons, haloFraction, cornerShade, distortion, mirrored);
    }

    public CameraOptics withDistortion(Distortion other) {
        return new CameraOptics(focalLengthMm, apertureMm, blurMicrons, haloFraction, cornerShade, other, mirrored);
    }

    public CameraOptics withMirrored(boolean other) {
        return new CameraOptics(focalLengthMm, apertureMm, blurMicrons, haloFraction, cornerShade, distortion, other);
    }

    private static void positive(double value, String what, String unit) {
        if (!(value > 0 && value < 1e6)) {
            throw new InputRefused(
                    "a " + what + " of " + PlainNumber.asTyped(value) + " " + unit + " is not possible",
                    "give it above 0");
        }
    }

    private static void share(double value, String what) {
        if (!(value >= 0 && value < 1)) {
            throw new InputRefused(
                    "a " + what + " of " + PlainNumber.asTyped(value) + " is outside 0 to 1",
                    "give a fraction of the light, 0.1 for 10 %");
        }
    }
}
