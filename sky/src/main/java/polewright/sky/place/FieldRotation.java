package polewright.sky.place;

import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/**
 * How the sky turns in the field of a mount that moves in altitude and azimuth. Tonight's advice for such a mount will say
 * by it how long an exposure may run before the corners turn; until then it checks how guided fields are reckoned to turn,
 * as a fork without a wedge is a mount whose axis points at the zenith.
 */
public final class FieldRotation {
    private FieldRotation() {}

    /**
     * Rate of the parallactic angle, −15.0411°/h · cos φ cos A / cos a (A azimuth from north through east, a altitude).
     * Exact but for refraction; zero due east and west, without bound at the zenith. Source: derived here from the
     * parallactic angle; handbooks print its size.
     *
     * @return turn of the vertical against the sky's north, north through east, for one hour at the present rate
     */
    public static Angle perHour(Site site, AirlessDirection direction) {
        return SiderealRate.during(3600)
                .times(-site.latitude().cos()
                        * direction.azimuth().cos()
                        / direction.altitude().cos());
    }
}
