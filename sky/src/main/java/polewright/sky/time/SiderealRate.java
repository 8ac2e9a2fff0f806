package polewright.sky.time;

import java.time.Duration;
import polewright.sky.angle.Angle;

/**
 * The rotation rate of the sky: one turn in 86 164.0905 s of mean solar time, 15.041 067″ per second. Source: 86 400 s
 * by 1.002 737 909 350 795, the ratio of 1982 (S. Aoki et al., Astron. Astrophys. 105 (1982) 359), as handbooks print
 * it.
 */
public final class SiderealRate {
    /** One turn of the sky, seconds of mean solar time. */
    public static final double SECONDS_PER_TURN = 86164.0905;

    /** Radians per second of mean solar time. */
    public static final double RAD_PER_SECOND = 2 * Math.PI / SECONDS_PER_TURN;

    private SiderealRate() {}

    /** The rotation of the sky in an interval of mean solar time. */
    public static Angle during(double seconds) {
        return new Angle(RAD_PER_SECOND * seconds);
    }

    /** The time the sky takes to rotate by an angle; negative for a negative angle. */
    public static Duration lasting(Angle turn) {
        return Duration.ofMillis(Math.round(turn.radians() / RAD_PER_SECOND * 1000));
    }
}
