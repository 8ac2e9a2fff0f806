package polewright.sky.almanac;

import java.time.Instant;

/**
 * A body passes an altitude.
 *
 * @param at when
 * @param sense upward or downward
 */
public record Crossing(Instant at, Sense sense) {
    /** Which way. */
    public enum Sense {
        RISING,
        SETTING
    }
}
