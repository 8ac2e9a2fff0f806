package polewright.planning.tonight;

import polewright.sky.angle.Angle;

/**
 * From one star to the next.
 *
 * @param longitude turn of the lower axis: hour angle, west positive, or azimuth of a fork set upright
 * @param latitude turn of the upper axis: declination or altitude
 * @param order which axis first
 */
public record StarMove(Angle longitude, Angle latitude, Order order) {
    /** Which axis turns first, where the Sun makes a difference. */
    public enum Order {
        BOTH_TOGETHER,
        LOWER_AXIS_FIRST,
        UPPER_AXIS_FIRST
    }

    /** The longer of the two turns: both axes run at once. */
    public Angle slower() {
        return new Angle(Math.max(longitude.abs().radians(), latitude.abs().radians()));
    }
}
