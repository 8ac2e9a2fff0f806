package polewright.mount.pointing;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;

/**
 * Offset from one place on the sky to another along the great circle, valid close to a pole too.
 *
 * @param west at the starting place
 * @param north at the starting place
 */
public record SkyOffset(Angle west, Angle north) {
    public static SkyOffset between(HourAnglePlace from, HourAnglePlace to) {
        Vector3D start = unit(from);
        Vector3D end = unit(to);
        double h = from.hourAngle().radians();
        Vector3D westward = new Vector3D(-Math.sin(h), Math.cos(h), 0);
        Vector3D northward = start.crossProduct(westward);
        Vector3D way = end.subtract(start);
        double west = way.dotProduct(westward);
        double north = way.dotProduct(northward);
        double sine = Math.hypot(west, north);
        double stretch = sine < 1e-6 ? 1 : Vector3D.angle(start, end) / sine;
        return new SkyOffset(new Angle(west * stretch), new Angle(north * stretch));
    }

    public Angle distance() {
        return new Angle(Math.hypot(west.radians(), north.radians()));
    }

    /** x toward the upper culmination of the equator, y west, z north. */
    private static Vector3D unit(HourAnglePlace place) {
        double cosDec = place.declination().cos();
        return new Vector3D(
                cosDec * place.hourAngle().cos(),
                cosDec * place.hourAngle().sin(),
                place.declination().sin());
    }
}
