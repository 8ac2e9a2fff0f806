package polewright.axis.pointing;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.axis.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** A fork with its errors, worked out once for many readings; its directions are those of {@link ForkModel}. */
final class ForkGeometry {
    private final double zero;
    private final double declinationZero;
    private final double notSquare;
    private final double sagFlat;
    private final double sagSide;
    private final double cosCone;
    private final double sinCone;
    private final double tubeSag;
    private final Vector3D axis;
    private final Vector3D eastward;
    private final Vector3D meridianward;
    private final double sinLat;
    private final double cosLat;

    ForkGeometry(Site site, TermValues terms) {
        zero = terms.of(PointingTerm.HOUR_ANGLE_ZERO).radians();
        declinationZero = terms.of(PointingTerm.DECLINATION_ZERO).radians();
        notSquare = terms.of(PointingTerm.AXES_NOT_SQUARE).radians();
        sagFlat = terms.of(PointingTerm.FORK_SAG_FLAT).radians();
        sagSide = terms.of(PointingTerm.FORK_SAG_SIDE).radians();
        double cone = terms.of(PointingTerm.CONE).radians();
        cosCone = Math.cos(cone);
        sinCone = Math.sin(cone);
        tubeSag = terms.of(PointingTerm.TUBE_SAG).radians();
        axis = AxisPointing.of(site, terms.axisOffset()).northernEnd(site);
        eastward = ForkModel.eastward(axis);
        meridianward = eastward.crossProduct(axis);
        sinLat = site.latitude().sin();
        cosLat = site.latitude().cos();
    }

    HourAnglePlace looksAt(MountReading reading) {
        return hourAngle(direction(reading));
    }

    /** Where the tube looks: a unit vector east, north, up. */
    Vector3D direction(MountReading reading) {
        // The fork sags by how it stands, not by what a circle that was never set says.
        double hourAngle = reading.hourAngle().radians() + zero;
        double cosH = Math.cos(hourAngle);
        double sinH = Math.sin(hourAngle);
        double tilt = notSquare + sagSide * sinH;
        double declination = reading.declination().radians() + declinationZero + sagFlat * cosH;
        // (meridian, east, pole) of the mount: the tube, turned about the declination axis, that axis's tilt, the hour
        // axis.
        double meridian = cosCone * Math.cos(declination);
        double pole = cosCone * Math.sin(declination);
        double cosTilt = Math.cos(tilt);
        double sinTilt = Math.sin(tilt);
        double tiltedEast = sinCone * cosTilt - pole * sinTilt;
        double tiltedPole = sinCone * sinTilt + pole * cosTilt;
        double turnedMeridian = meridian * cosH + tiltedEast * sinH;
        double turnedEast = -meridian * sinH + tiltedEast * cosH;
        return sagged(new Vector3D(turnedMeridian, meridianward, turnedEast, eastward, tiltedPole, axis));
    }

    /** Lower by the tube's sag, in proportion to the cosine of altitude. */
    private Vector3D sagged(Vector3D direction) {
        double level = Math.sqrt(direction.getX() * direction.getX() + direction.getY() * direction.getY());
        if (tubeSag == 0 || level == 0) {
            return direction;
        }
        double droop = tubeSag * level;
        double cos = Math.cos(droop);
        double sin = Math.sin(droop);
        double stretch = (level * cos + direction.getZ() * sin) / level;
        return new Vector3D(
                direction.getX() * stretch, direction.getY() * stretch, direction.getZ() * cos - level * sin);
    }

    private HourAnglePlace hourAngle(Vector3D v) {
        double x = -sinLat * v.getY() + cosLat * v.getZ();
        double z = cosLat * v.getY() + sinLat * v.getZ();
        return new HourAnglePlace(
                new Angle(Math.atan2(-v.getX(), x)), new Angle(Math.atan2(z, Math.hypot(x, v.getX()))));
    }
}
