package polewright.sky.place;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/** Longitude and latitude of a unit vector in a right-handed frame; the longitude of a pole is 0. */
final class Spherical {
    private Spherical() {}

    static Vector3D unit(Angle longitude, Angle latitude) {
        double cosLat = latitude.cos();
        return new Vector3D(cosLat * longitude.cos(), cosLat * longitude.sin(), latitude.sin());
    }

    static Angle longitude(Vector3D v) {
        return new Angle(Math.atan2(v.getY(), v.getX())).wrappedPositive();
    }

    static Angle latitude(Vector3D v) {
        // atan2 keeps its precision near the pole, where asin loses half the digits.
        return new Angle(Math.atan2(v.getZ(), Math.sqrt(v.getX() * v.getX() + v.getY() * v.getY())));
    }
}
