package polewright.sky.place;

import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/**
 * Field rotation of an altazimuth mount. Advice for such a mount will use it to limit exposures; for now it is a check
 * on the field rotation computed for guided exposures, because a fork without a wedge is a mount whose axis points at
 * the zenith.
 */
public final class FieldRotation {
    private FieldRotation() {}

    /**
     * Rate of the parallactic angle, −15.0411°/h · cos φ cos A / cos a (A azimuth from north through east, a altitude).
     * Exact except for refraction; zero due east and west, unbounded at the zenith. Source: derived here from the
     * parallactic angle; handbooks print its absolute value.
     *
     * @return rotation of the vertical relative to celestial north, north through east, in one hour at the current rate
     */
    public static Angle perHour(Site site, AirlessDirection direction) {
        return SiderealRate.during(3600)
                .times(-site.latitude().cos()
                        * direction.azimuth().cos()
                        / direction.altitude().cos());
    }
}
