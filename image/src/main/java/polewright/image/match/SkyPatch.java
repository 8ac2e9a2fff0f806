package polewright.image.match;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * The part of the sky in which the centre of a frame is known to lie.
 *
 * @param rightAscension ICRS, of the patch's centre
 * @param declination ICRS
 * @param radius largest distance of the frame's centre from it, up to 180°
 */
public record SkyPatch(Angle rightAscension, Angle declination, Angle radius) {
    public SkyPatch {
        if (!(Math.abs(declination.degrees()) <= 90)) {
            throw new InputRefused(
                    "a declination of " + PlainNumber.asTyped(declination.degrees()) + " degrees is beyond 90",
                    "give -90 to 90, north positive");
        }
        if (!(radius.degrees() > 0 && radius.degrees() <= 180)) {
            throw new InputRefused(
                    "a radius of " + PlainNumber.asTyped(radius.degrees()) + " degrees is outside 0 to 180",
                    "give how far from there the frame may be, such as 10");
        }
    }

    /** ICRS direction of its centre. */
    Vector3D direction() {
        return new Vector3D(rightAscension.radians(), declination.radians());
    }

    /** The position of its centre, in words. */
    String words() {
        double declinationDeg = tenths(declination);
        if (Math.abs(declinationDeg) == 90) {
            return "the " + (declinationDeg > 0 ? "north" : "south") + " celestial pole";
        }
        return "right ascension " + PlainNumber.of(tenths(rightAscension)) + ", declination "
                + PlainNumber.of(declinationDeg);
    }

    private static double tenths(Angle angle) {
        return Math.rint(angle.degrees() * 10) / 10;
    }

    /** Around a celestial pole. */
    public static SkyPatch aroundPole(boolean north, Angle radius) {
        return new SkyPatch(Angle.ZERO, Angle.ofDegrees(north ? 90 : -90), radius);
    }
}
