package polewright.axis.advice;

import java.util.List;
import polewright.axis.AxisOffset;

/** The next thing to do, and why. */
public sealed interface Advice {
    /** Probability that the axis is within the allowance now, 0 to 1. */
    double probabilityNow();

    /**
     * Turn these screws.
     *
     * @param turns in the order in which to make them
     * @param loosenFirst whether the clamps are tight now
     * @param probabilityAfter expected probability of being within the allowance when they are made
     */
    record TurnScrews(double probabilityNow, List<ScrewTurn> turns, boolean loosenFirst, double probabilityAfter)
            implements Advice {}

    /**
     * Take this sighting.
     *
     * @param reason in plain words
     */
    record TakeSighting(double probabilityNow, SightingKind kind, String reason) implements Advice {}

    /** Good enough: tighten the clamps, gently. */
    record Clamp(double probabilityNow) implements Advice {}

    /**
     * Good enough and confirmed after clamping: nothing more to do.
     *
     * @param offset where the axis points
     */
    record Stop(double probabilityNow, AxisOffset offset) implements Advice {}
}
