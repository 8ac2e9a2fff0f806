package polewright.sky.place;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/**
 * A direction in the site's horizontal frame as the eye or a camera sees it, lifted by refraction.
 *
 * @param enu unit vector: x east, y north, z up
 */
public record RefractedDirection(Vector3D enu) {
    public static RefractedDirection of(Angle azimuth, Angle altitude) {
        return new RefractedDirection(Spherical.unit(Angle.QUARTER_TURN.minus(azimuth), altitude));
    }

    /** From north through east, [0, 360°). */
    public Angle azimuth() {
        return new Angle(Math.atan2(enu.getX(), enu.getY())).wrappedPositive();
    }

    /** The apparent altitude. */
    public Angle altitude() {
        return Spherical.latitude(enu);
    }
}
