package polewright.mount;

import polewright.sky.angle.Angle;

/**
 * Offset on the sky of the polar axis from the celestial pole elevated at the site, axis minus pole.
 *
 * <p>East on the sky is not azimuth: the azimuth error is east / cos φ (to first order). Screws change azimuth; the fix
 * and the tolerance use this offset.
 *
 * <p>The two are components of the axis's unit vector toward east and up, perpendicular to the pole: an orthographic
 * (sine) projection. At a true distance θ the root sum of squares is sin θ, less than θ by θ³/6: 3.8″ at 165′.
 *
 * @param east positive when the axis points east of the pole, in both hemispheres
 * @param up positive when the axis points above the pole
 */
public record AxisOffset(Angle east, Angle up) {
    public static final AxisOffset NONE = new AxisOffset(Angle.ZERO, Angle.ZERO);

    public static AxisOffset ofArcminutes(double east, double up) {
        return new AxisOffset(Angle.ofArcminutes(east), Angle.ofArcminutes(up));
    }

    /** Distance from the pole in the same projection: the sine of the true distance, as an angle. */
    public Angle distance() {
        return new Angle(Math.hypot(east.radians(), up.radians()));
    }

    public AxisOffset plus(AxisOffset other) {
        return new AxisOffset(east.plus(other.east), up.plus(other.up));
    }

    public AxisOffset minus(AxisOffset other) {
        return new AxisOffset(east.minus(other.east), up.minus(other.up));
    }
}
