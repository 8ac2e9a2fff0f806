package polewright.sky.place;

import polewright.sky.angle.Angle;

/** How the sky turns in the field of a mount that moves in altitude and azimuth. */
public final class FieldRotation {
    /** Of the sky: 15.0411° in an hour of mean solar time. */
    private static final double SKY_DEGREES_PER_HOUR = 360 * 3600 / 86164.0905;

    private FieldRotation() {}

    /**
     * Rate of the parallactic angle, −15.0411°/h · cos φ cos A / cos a (A azimuth from north through east, a altitude).
     * Exact but for refraction; zero due east and west, without bound at the zenith. Source: derived here from the
     * parallactic angle; handbooks print its size.
     *
     * @return turn of the vertical against the sky's north, north through east, for one hour at the present rate
     */
    public static Angle perHour(Site site, AirlessDirection direction) {
        return Angle.ofDegrees(-SKY_DEGREES_PER_HOUR
                * site.latitude().cos()
                * direction.azimuth().cos()
                / direction.altitude().cos());
    }
}
