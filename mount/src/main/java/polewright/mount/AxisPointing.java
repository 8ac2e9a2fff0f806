package polewright.mount;

import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * The direction of the polar axis: a mechanical line, so refraction does not apply.
 *
 * @param elevatedEnd ENU unit vector of the end meant for the elevated pole
 */
public record AxisPointing(Vector3D elevatedEnd) {
    public static AxisPointing of(Angle azimuth, Angle altitude) {
        return new AxisPointing(enu(azimuth.radians(), altitude.radians()));
    }

    /** The axis exactly at the true pole. */
    public static AxisPointing atPole(Site site) {
        return of(site.poleAzimuth(), site.poleAltitude());
    }

    /**
     * The axis at this offset. {@code east} and {@code up} are the components of the unit vector, as in
     * {@link #offset}, so together they are under 1 radian (57.3°).
     */
    public static AxisPointing of(Site site, AxisOffset offset) {
        double east = offset.east().radians();
        double up = offset.up().radians();
        double square = east * east + up * up;
        if (!(square < 1)) {
            throw new InputRefused(
                    String.format(
                            Locale.ROOT,
                            "an axis offset of %.1f degrees is beyond 57",
                            offset.distance().degrees()),
                    "point the tripod at the pole by compass first");
        }
        double along = Math.sqrt(1 - square);
        return new AxisPointing(
                new Vector3D(along, atPole(site).elevatedEnd, east, Vector3D.PLUS_I, up, upDirection(site)));
    }

    /**
     * Offset on the sky from the true pole: the components of (axis − pole) along east and up, in radians of the unit
     * sphere. At 15° they are 1.1 % less than the angle itself.
     */
    public AxisOffset offset(Site site) {
        return new AxisOffset(new Angle(elevatedEnd.getX()), new Angle(elevatedEnd.dotProduct(upDirection(site))));
    }

    /** Derivative of the elevated end with respect to the east component of the offset, per radian. */
    public Vector3D slopeEast(Site site) {
        return slope(site, Vector3D.PLUS_I);
    }

    /** Derivative of the elevated end with respect to the up component of the offset, per radian. */
    public Vector3D slopeUp(Site site) {
        return slope(site, upDirection(site));
    }

    private Vector3D slope(Site site, Vector3D along) {
        Vector3D pole = atPole(site).elevatedEnd;
        return new Vector3D(1, along, -elevatedEnd.dotProduct(along) / elevatedEnd.dotProduct(pole), pole);
    }

    /** Azimuth of the elevated end, from north through east, [0, 360°). */
    public Angle azimuth() {
        return new Angle(Math.atan2(elevatedEnd.getX(), elevatedEnd.getY())).wrappedPositive();
    }

    public Angle altitude() {
        return new Angle(Math.atan2(elevatedEnd.getZ(), Math.hypot(elevatedEnd.getX(), elevatedEnd.getY())));
    }

    /** Azimuth minus that of the pole, counted north through east: at a southern site positive is west of the pole. */
    public Angle azimuthError(Site site) {
        return azimuth().minus(site.poleAzimuth()).wrappedSigned();
    }

    /** Altitude minus that of the pole; positive is too high. */
    public Angle altitudeError(Site site) {
        return altitude().minus(site.poleAltitude());
    }

    /** The end toward the north celestial pole. */
    public Vector3D northernEnd(Site site) {
        return elevatedEnd.scalarMultiply(site.hemisphereSign());
    }

    /** Angle between two axes. */
    public Angle separation(AxisPointing other) {
        return new Angle(Vector3D.angle(elevatedEnd, other.elevatedEnd));
    }

    /** Perpendicular to the pole in the meridian, toward the zenith: (0, −sin φ, cos φ) in both hemispheres. */
    public static Vector3D upDirection(Site site) {
        return new Vector3D(0, -site.latitude().sin(), site.latitude().cos());
    }

    private static Vector3D enu(double azimuthRad, double altitudeRad) {
        double cosAlt = Math.cos(altitudeRad);
        return new Vector3D(cosAlt * Math.sin(azimuthRad), cosAlt * Math.cos(azimuthRad), Math.sin(altitudeRad));
    }
}
