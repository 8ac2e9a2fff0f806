package polewright.mount.pointing;

import polewright.sky.angle.Angle;

/** The display of a mount when a star was centred. */
public sealed interface MountDisplay {
    /** Declination as displayed. */
    Angle declination();

    /**
     * Right ascension, for the equator and equinox of date or J2000.0.
     *
     * @param isJ2000 whether the display uses J2000.0
     */
    record RightAscension(Angle rightAscension, Angle declination, boolean isJ2000) implements MountDisplay {}

    /** Hour angle, west positive. */
    record HourAngle(Angle hourAngle, Angle declination) implements MountDisplay {}
}
