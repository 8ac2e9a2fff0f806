package polewright.mount.pointing;

import polewright.sky.angle.Angle;

/** What stood on a mount's display when a star was centred. */
public sealed interface MountDisplay {
    /** Declination as displayed. */
    Angle declination();

    /**
     * Right ascension, of the equator and equinox of date or of J2000.0.
     *
     * @param isJ2000 whether the display counts from the fixed equinox
     */
    record RightAscension(Angle rightAscension, Angle declination, boolean isJ2000) implements MountDisplay {}

    /** Hour angle, west positive. */
    record HourAngle(Angle hourAngle, Angle declination) implements MountDisplay {}
}
