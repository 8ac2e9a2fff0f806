package polewright.mount.pointing;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** The direction of a fork's tube from its reading and its errors: exact rotations, no small-angle approximation. */
public final class ForkModel {
    private static final int INVERSE_ROUNDS = 8;

    private ForkModel() {}

    /**
     * The tube's direction.
     *
     * @param terms the mount's errors
     * @param reading hour angle and declination of its circles
     */
    public static HourAnglePlace looksAt(Site site, TermValues terms, MountReading reading) {
        return hourAngle(site, new ForkGeometry(site, terms.radians()).direction(reading));
    }

    /**
     * The reading at which the tube points in a direction; the inverse of {@link #looksAt}. For directions out of
     * reach, within the cone error of the mount's own pole, the nearest one.
     *
     * @param isThroughPole whether the tube is to get there through the pole
     */
    public static MountReading readingFor(Site site, TermValues terms, HourAnglePlace wanted, boolean isThroughPole) {
        Vector3D direction = raised(enu(site, wanted), terms.of(PointingTerm.TUBE_SAG));
        Vector3D axis = AxisPointing.of(site, terms.axisOffset()).northernEnd(site);
        Vector3D eastward = eastward(axis);
        double pole = direction.dotProduct(axis);
        double azimuth = Math.atan2(direction.dotProduct(eastward), direction.dotProduct(eastward.crossProduct(axis)));
        double cone = terms.of(PointingTerm.CONE).radians();
        double hourAngle = -azimuth + (isThroughPole ? Math.PI : 0);
        double declination = 0;
        // Flexure depends on the reading sought; each iteration is closer by a factor of the flexure in radians.
        for (int round = 0; round < INVERSE_ROUNDS; round++) {
            double tilt = terms.of(PointingTerm.AXES_NOT_SQUARE).radians()
                    + terms.of(PointingTerm.FORK_SAG_SIDE).radians() * Math.sin(hourAngle);
            double sine = (pole - Math.sin(cone) * Math.sin(tilt)) / (Math.cos(cone) * Math.cos(tilt));
            double short90 = Math.asin(Math.max(-1, Math.min(1, sine)));
            declination = isThroughPole ? Math.PI - short90 : short90;
            double meridian = Math.cos(cone) * Math.cos(declination);
            double east = Math.sin(cone) * Math.cos(tilt) - Math.cos(cone) * Math.sin(declination) * Math.sin(tilt);
            hourAngle = Math.atan2(east, meridian) - azimuth;
        }
        double flat = terms.of(PointingTerm.FORK_SAG_FLAT).radians() * Math.cos(hourAngle);
        return new MountReading(
                new Angle(hourAngle).minus(terms.of(PointingTerm.HOUR_ANGLE_ZERO)),
                new Angle(declination - flat).minus(terms.of(PointingTerm.DECLINATION_ZERO)));
    }

    /** Horizontal, to the right when looking along the axis's northern end; east if the axis is vertical. */
    static Vector3D eastward(Vector3D axis) {
        double level = Math.hypot(axis.getX(), axis.getY());
        return level < 1e-12 ? Vector3D.PLUS_I : new Vector3D(axis.getY() / level, -axis.getX() / level, 0);
    }

    private static HourAnglePlace hourAngle(Site site, Vector3D direction) {
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double x = -sinLat * direction.getY() + cosLat * direction.getZ();
        double z = cosLat * direction.getY() + sinLat * direction.getZ();
        return new HourAnglePlace(
                new Angle(Math.atan2(-direction.getX(), x)), new Angle(Math.atan2(z, Math.hypot(x, direction.getX()))));
    }

    static Vector3D enu(Site site, HourAnglePlace place) {
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double meridian = place.declination().cos() * place.hourAngle().cos();
        double pole = place.declination().sin();
        return new Vector3D(
                -place.declination().cos() * place.hourAngle().sin(),
                cosLat * pole - sinLat * meridian,
                sinLat * pole + cosLat * meridian);
    }

    /** Removes the tube's flexure. */
    private static Vector3D raised(Vector3D direction, Angle sag) {
        AirlessDirection drooping = new AirlessDirection(direction);
        Angle straight = drooping.altitude();
        for (int round = 0; round < INVERSE_ROUNDS; round++) {
            straight = drooping.altitude().plus(sag.times(straight.cos()));
        }
        return AirlessDirection.of(drooping.azimuth(), straight).enu();
    }
}
