package polewright.planning.tonight;

import polewright.sky.angle.Angle;

/**
 * A slew from one star to the next.
 *
 * @param longitude rotation of the lower axis: hour angle, west positive, or azimuth of an upright fork
 * @param latitude rotation of the upper axis: declination or altitude
 * @param order which axis first
 */
public record StarMove(Angle longitude, Angle latitude, Order order) {
    /** Which axis turns first, if the Sun makes a difference. */
    public enum Order {
        BOTH_TOGETHER,
        LOWER_AXIS_FIRST,
        UPPER_AXIS_FIRST
    }

    /** The larger of the two rotations: both axes run at once. */
    public Angle slower() {
        return new Angle(Math.max(longitude.abs().radians(), latitude.abs().radians()));
    }
}
