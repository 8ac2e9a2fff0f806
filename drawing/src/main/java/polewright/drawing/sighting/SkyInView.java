package polewright.drawing.sighting;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.View;
import polewright.sky.place.Site;

/**
 * The directions of celestial north and west in a view.
 *
 * @param north unit vector, (right, up) in the view
 * @param west unit vector, a quarter turn from it; the sense depends on whether the view is mirrored
 */
public record SkyInView(Vector2D north, Vector2D west) {
    /**
     * At a star, in a view aligned with the vertical.
     *
     * @param star ENU unit vector; not the pole itself
     */
    public static SkyInView about(Vector3D star, Site site, View view) {
        Vector3D pole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        Vector3D right = star.crossProduct(Vector3D.PLUS_K).normalize();
        Vector3D up = right.crossProduct(star);
        Vector3D west = star.crossProduct(pole).normalize();
        // From inside the sphere, north is a quarter turn back from west.
        Vector3D north = west.crossProduct(star);
        return new SkyInView(
                view.fromSky(new Vector2D(north.dotProduct(right), north.dotProduct(up))),
                view.fromSky(new Vector2D(west.dotProduct(right), west.dotProduct(up))));
    }

    /**
     * At a star on the meridian, between the zenith and the far side of the equator: the usual place to watch a drift.
     */
    public static SkyInView onMeridian(Site site, View view) {
        double upward = site.isNorthern() ? 1 : -1;
        return new SkyInView(view.fromSky(new Vector2D(0, upward)), view.fromSky(new Vector2D(upward, 0)));
    }

    /** A view, however rotated, in which stars leave toward {@code west} when the drive is stopped. */
    public static SkyInView of(ClockDirection west, boolean isMirrored) {
        double angle = west.clockwiseFromTop().radians();
        Vector2D leaving = new Vector2D(Math.sin(angle), Math.cos(angle));
        Vector2D quarterBack = new Vector2D(-leaving.getY(), leaving.getX());
        return new SkyInView(isMirrored ? quarterBack.negate() : quarterBack, leaving);
    }
}
