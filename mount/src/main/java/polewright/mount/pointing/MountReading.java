package polewright.mount.pointing;

import polewright.sky.angle.Angle;

/**
 * The reading of the mount's circles.
 *
 * @param hourAngle west positive, wrapped to [−180°, 180°)
 * @param declination of the declination axis, −180° to 180°: beyond ±90° the tube has gone through the pole
 */
public record MountReading(Angle hourAngle, Angle declination) {
    public MountReading {
        hourAngle = hourAngle.wrappedSigned();
        declination = declination.wrappedSigned();
    }

    /** The reading for the same direction with the tube turned through the pole: (h + 180°, 180° − δ). */
    public MountReading throughPole() {
        return new MountReading(hourAngle.plus(Angle.HALF_TURN), Angle.HALF_TURN.minus(declination));
    }
}
