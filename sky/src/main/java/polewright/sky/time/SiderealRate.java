package polewright.sky.time;

import java.time.Duration;
import polewright.sky.angle.Angle;

/**
 * How fast the sky turns past a site: once in 86 164.0905 s of mean solar time, 15.041 067″ a second. Source: 86 400 s by
 * 1.002 737 909 350 795, the ratio of 1982 (S. Aoki et al., Astron. Astrophys. 105 (1982) 359), as handbooks print it.
 */
public final class SiderealRate {
    /** One turn of the sky, seconds of mean solar time. */
    public static final double SECONDS_PER_TURN = 86164.0905;

    /** Radians in a second of mean solar time. */
    public static final double RAD_PER_SECOND = 2 * Math.PI / SECONDS_PER_TURN;

    private SiderealRate() {}

    /** How far the sky turns in so many seconds of mean solar time. */
    public static Angle during(double seconds) {
        return new Angle(RAD_PER_SECOND * seconds);
    }

    /** How long the sky takes to turn so far; negative for a turn back. */
    public static Duration lasting(Angle turn) {
        return Duration.ofMillis(Math.round(turn.radians() / RAD_PER_SECOND * 1000));
    }
}
