package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import polewright.simulation.camera.CameraPath;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * The motion of the right-ascension axis.
 *
 * @param rate in units of the sidereal rate: 1 tracks the sky, 0 is off
 * @param periodicError amplitude of the worm's sinusoidal error
 * @param period of the worm
 */
public record Drive(double rate, Angle periodicError, Duration period) {
    public static final Drive STANDING = new Drive(0, Angle.ZERO, Duration.ofMinutes(8));
    public static final Drive TRACKING = new Drive(1, Angle.ZERO, Duration.ofMinutes(8));

    public Drive {
        if (period.isNegative() || period.isZero()) {
            throw new InputRefused("a worm period of " + period + " cannot be", "give the time of one turn, 8 minutes");
        }
    }

    /** Sidereal tracking with periodic error. */
    public static Drive trackingWith(Angle periodicError, Duration period) {
        return new Drive(1, periodicError, period);
    }

    /** How far the axis has been driven westward between two instants, including the periodic error. */
    Angle driven(Instant from, Instant to) {
        double seconds = Duration.between(from, to).toNanos() / 1e9;
        return new Angle(rate * CameraPath.SIDEREAL_RAD_PER_SECOND * seconds)
                .plus(error(to))
                .minus(error(from));
    }

    /**
     * The worm turns with the drive, regardless of how the axis was set by hand, so its phase depends on time alone.
     */
    private Angle error(Instant at) {
        double periodMillis = period.toNanos() / 1e6;
        double phase = at.toEpochMilli() % periodMillis / periodMillis;
        return periodicError.times(rate == 0 ? 0 : Math.sin(2 * Math.PI * phase));
    }
}
