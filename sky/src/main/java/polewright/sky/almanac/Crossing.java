package polewright.sky.almanac;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import polewright.sky.time.Interval;

/**
 * A crossing of an altitude by a body.
 *
 * @param at time of the crossing
 * @param sense upward or downward
 */
public record Crossing(Instant at, Sense sense) {
    /** Upward or downward. */
    public enum Sense {
        RISING,
        SETTING
    }

    /**
     * The intervals that a body spends on one side of an altitude.
     *
     * @param when the time considered
     * @param crossings all crossings within it, in order
     * @param side {@code RISING} for above the altitude, {@code SETTING} for below it
     * @param startsThere whether the body is on that side at the beginning
     */
    static List<Interval> intervalsOn(Interval when, List<Crossing> crossings, Sense side, boolean startsThere) {
        List<Interval> intervalsOn = new ArrayList<>();
        Instant since = when.from();
        boolean there = startsThere;
        for (Crossing crossing : crossings) {
            if (there && crossing.sense() != side) {
                intervalsOn.add(new Interval(since, crossing.at()));
            }
            there = crossing.sense() == side;
            since = crossing.at();
        }
        if (there) {
            intervalsOn.add(new Interval(since, when.to()));
        }
        return intervalsOn;
    }
}
