package polewright.axis.advice;

import java.time.Duration;
import java.util.List;
import polewright.axis.AxisOffset;
import polewright.sky.angle.Angle;

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
     * Too far for the screws: move the whole mount by hand.
     *
     * @param azimuth how far to swing it, right positive for someone facing the pole
     * @param altitude how far to raise the axis
     */
    record MoveByHand(double probabilityNow, Angle azimuth, Angle altitude) implements Advice {}

    /**
     * Take this sighting.
     *
     * @param watch how long to watch the star; zero for a reading
     * @param reason in plain words
     */
    record TakeSighting(double probabilityNow, SightingKind kind, Duration watch, String reason) implements Advice {}

    /** The Sun is up and all that can be read by day has been read. */
    record WaitForDark(double probabilityNow) implements Advice {}

    /** Good enough: tighten the clamps, gently. */
    record Clamp(double probabilityNow) implements Advice {}

    /**
     * Confirmed after clamping, and good enough, or as good as this mount's screws and clamps let it be: nothing more to
     * do.
     *
     * @param offset where the axis points
     */
    record Stop(double probabilityNow, AxisOffset offset) implements Advice {}
}
