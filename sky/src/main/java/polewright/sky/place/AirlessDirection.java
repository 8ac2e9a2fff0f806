package polewright.sky.place;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/**
 * A geometric direction in the site's horizontal frame, without refraction.
 *
 * @param enu unit vector: x east, y north, z up
 */
public record AirlessDirection(Vector3D enu) {
    public static AirlessDirection of(Angle azimuth, Angle altitude) {
        return new AirlessDirection(Spherical.unit(Angle.QUARTER_TURN.minus(azimuth), altitude));
    }

    /** From north through east, [0, 360°). */
    public Angle azimuth() {
        return new Angle(Math.atan2(enu.getX(), enu.getY())).wrappedPositive();
    }

    /** The true altitude. */
    public Angle altitude() {
        return Spherical.latitude(enu);
    }
}
