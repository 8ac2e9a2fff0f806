package polewright.alignment.advice;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/** The next thing to do, and why. */
public sealed interface Advice {
    /**
     * Probability that the axis is within the allowance, 0 to 1: where it is now if the clamps are tight, where tightening
     * them would leave it if they are loose.
     */
    double probabilityNow();

    /**
     * Turn these screws.
     *
     * @param turns in the order in which to make them
     * @param tests the screws of which it is not known yet which way they go: their turns are test turns, as far as the next
     *     sighting can see without doubt and no farther than is easily turned back
     * @param loosenFirst whether the clamps are tight now
     * @param offsetAfter where the axis is expected to point when they are made, before the clamps are tightened
     * @param probabilityAfter expected probability of being within the allowance when they are made and the clamps
     *     tightened
     * @param sky what a star in the view does meanwhile, turn by turn; empty for a rig without optics
     */
    record TurnScrews(
            double probabilityNow,
            List<ScrewTurn> turns,
            Set<ScrewTurn.Which> tests,
            boolean loosenFirst,
            AxisOffset offsetAfter,
            double probabilityAfter,
            List<SkyMeanwhile> sky)
            implements Advice {
        public TurnScrews {
            turns = List.copyOf(turns);
            tests = Set.copyOf(tests);
            sky = List.copyOf(sky);
        }
    }

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
     * @param star which star, and where to look for it; empty where none is needed or the sky is not known
     * @param watch how long to watch the star; zero for a reading
     * @param reason in plain words
     */
    record TakeSighting(
            double probabilityNow, SightingKind kind, Optional<AdvisedStar> star, Duration watch, String reason)
            implements Advice {}

    /** The Sun is up and all that can be read by day has been read. */
    record WaitForDark(double probabilityNow) implements Advice {}

    /**
     * It is dark, but the observer has ruled out every sighting that could come next.
     *
     * @param lookAgain when the first of them may be tried again, once a cloud has passed; empty if only the observer can
     *     say
     */
    record WaitForSky(double probabilityNow, Optional<Instant> lookAgain) implements Advice {}

    /** Good enough, or likely so and best found out with the clamps tight: tighten them, gently. */
    record Clamp(double probabilityNow) implements Advice {}

    /**
     * Confirmed after clamping, and good enough, or as good as this mount's screws and clamps let it be: nothing more to
     * do.
     *
     * @param offset where the axis points
     */
    record Stop(double probabilityNow, AxisOffset offset) implements Advice {}
}
