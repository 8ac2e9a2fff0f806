package polewright.image.match;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * A range of pixel scales at the centre of a frame.
 *
 * @param least smallest angle per pixel
 * @param most largest angle per pixel
 */
public record ScaleRange(Angle least, Angle most) {
    /** From a long telescope with small pixels to a wide lens. */
    public static final ScaleRange ANY = new ScaleRange(Angle.ofArcseconds(0.2), Angle.ofArcseconds(400));

    public ScaleRange {
        if (!(least.arcseconds() > 0.01 && most.compareTo(least) >= 0 && most.arcseconds() < 3600)) {
            throw new InputRefused(
                    "a scale of " + PlainNumber.asTyped(least.arcseconds()) + " to "
                            + PlainNumber.asTyped(most.arcseconds()) + " arcseconds per pixel cannot be used",
                    "give the angle of one pixel, such as 2.5, or the focal length and the width of a pixel");
        }
    }

    /** A scale known to within a fraction of itself, e.g. 0.2 for 20 %. */
    public static ScaleRange about(Angle perPixel, double share) {
        if (!(share > 0 && share < 1)) {
            throw new InputRefused(
                    "a scale known to " + PlainNumber.asTyped(100 * share) + " % cannot be used",
                    "give more than 0 and less than 100");
        }
        return new ScaleRange(perPixel.times(1 - share), perPixel.times(1 + share));
    }

    boolean holds(double radPerPixel) {
        return radPerPixel >= least.radians() && radPerPixel <= most.radians();
    }

    /** Widened on both sides by a fraction of itself. */
    ScaleRange widened(double share) {
        return new ScaleRange(least.times(1 - share), most.times(1 + share));
    }
}
