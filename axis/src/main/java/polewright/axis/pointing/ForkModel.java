package polewright.axis.pointing;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.axis.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** Where the tube of a fork looks, by its reading and its errors: exact rotations, no small angles. */
public final class ForkModel {
    private ForkModel() {}

    /**
     * Where the tube looks.
     *
     * @param terms what is wrong with the mount
     * @param reading what its circles say
     */
    public static HourAnglePlace looksAt(Site site, TermValues terms, MountReading reading) {
        double h = reading.hourAngle().radians();
        double cosH = Math.cos(h);
        double sinH = Math.sin(h);
        double hourAngle = h + terms.of(PointingTerm.HOUR_ANGLE_ZERO).radians();
        double tilt = terms.of(PointingTerm.AXES_NOT_SQUARE).radians()
                + terms.of(PointingTerm.FORK_SAG_SIDE).radians() * sinH;
        double declination = reading.declination().radians()
                + terms.of(PointingTerm.DECLINATION_ZERO).radians()
                + terms.of(PointingTerm.FORK_SAG_FLAT).radians() * cosH;
        double cone = terms.of(PointingTerm.CONE).radians();
        // (meridian, east, pole) of the mount: the tube, turned about the declination axis, that axis's tilt, the hour
        // axis.
        double meridian = Math.cos(cone) * Math.cos(declination);
        double east = Math.sin(cone);
        double pole = Math.cos(cone) * Math.sin(declination);
        double tiltedEast = east * Math.cos(tilt) - pole * Math.sin(tilt);
        double tiltedPole = east * Math.sin(tilt) + pole * Math.cos(tilt);
        double turnedMeridian = meridian * Math.cos(hourAngle) + tiltedEast * Math.sin(hourAngle);
        double turnedEast = -meridian * Math.sin(hourAngle) + tiltedEast * Math.cos(hourAngle);
        Vector3D axis = AxisPointing.of(site, terms.axisOffset()).northernEnd(site);
        Vector3D eastward = new Vector3D(axis.getY(), -axis.getX(), 0).normalize();
        Vector3D direction =
                new Vector3D(turnedMeridian, eastward.crossProduct(axis), turnedEast, eastward, tiltedPole, axis);
        return hourAngle(site, sagged(direction, terms.of(PointingTerm.TUBE_SAG)));
    }

    private static Vector3D sagged(Vector3D direction, Angle sag) {
        if (sag.radians() == 0) {
            return direction;
        }
        AirlessDirection straight = new AirlessDirection(direction);
        Angle altitude = straight.altitude();
        return AirlessDirection.of(straight.azimuth(), altitude.minus(sag.times(altitude.cos())))
                .enu();
    }

    private static HourAnglePlace hourAngle(Site site, Vector3D v) {
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double x = -sinLat * v.getY() + cosLat * v.getZ();
        double z = cosLat * v.getY() + sinLat * v.getZ();
        return new HourAnglePlace(
                new Angle(Math.atan2(-v.getX(), x)), new Angle(Math.atan2(z, Math.hypot(x, v.getX()))));
    }
}
