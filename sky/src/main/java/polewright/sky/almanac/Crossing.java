package polewright.sky.almanac;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import polewright.sky.time.Interval;

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

    /**
     * The stretches of some time that a body spends on one side of an altitude.
     *
     * @param crossings all of that time, in order
     * @param side {@code RISING} for above the altitude, {@code SETTING} for below it
     * @param startsThere whether the body is on that side when the time begins
     */
    static List<Interval> stretches(Interval when, List<Crossing> crossings, Sense side, boolean startsThere) {
        List<Interval> stretches = new ArrayList<>();
        Instant since = when.from();
        boolean there = startsThere;
        for (Crossing crossing : crossings) {
            if (there && crossing.sense() != side) {
                stretches.add(new Interval(since, crossing.at()));
            }
            there = crossing.sense() == side;
            since = crossing.at();
        }
        if (there) {
            stretches.add(new Interval(since, when.to()));
        }
        return stretches;
    }
}
