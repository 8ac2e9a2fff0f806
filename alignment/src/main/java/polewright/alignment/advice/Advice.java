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
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /**
     * Probability that the axis is within the allowance, 0 to 1: as it is if the clamps are tight, or once they have
     * been tightened if they are loose.
     */
    double probabilityNow();

    /**
     * Turn these screws.
     *
     * @param turns in the order in which to make them
     * @param tests the screws whose direction is not known yet: their turns are test turns, long enough for the next
     *     sighting to show the direction clearly, and short enough to be turned back easily
     * @param loosenFirst whether the clamps are tight now and have to be loosened first
     * @param offsetAfter where the axis is expected to point after the turns, before the clamps are tightened
     * @param probabilityAfter expected probability of being within the allowance after the turns, with the clamps
     *     tightened
     * @param sky how a star in the view moves during each turn; empty for a rig without optics
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

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.turnScrews(this);
        }
    }

    /**
     * Too far for the screws: move the whole mount by hand.
     *
     * @param azimuth how far to swing it, positive to the right as seen facing the pole
     * @param altitude how far to raise the axis
     */
    record MoveByHand(double probabilityNow, Angle azimuth, Angle altitude) implements Advice {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.moveByHand(this);
        }
    }

    /**
     * Take this sighting.
     *
     * @param star the star to use; empty if none is needed or the sky is not known
     * @param watch how long to watch the star; zero for a reading
     * @param reason in plain words
     */
    record TakeSighting(
            double probabilityNow, SightingKind kind, Optional<AdvisedStar> star, Duration watch, String reason)
            implements Advice {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.takeSighting(this);
        }
    }

    /** The Sun is up, and every reading that can be taken by day has been taken. */
    record WaitForDark(double probabilityNow) implements Advice {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.waitForDark(this);
        }
    }

    /**
     * It is dark, but the observer has ruled out every sighting that could come next.
     *
     * @param lookAgain when the first of them may be tried again, once a cloud has passed; empty if only the observer
     *     can judge
     */
    record WaitForSky(double probabilityNow, Optional<Instant> lookAgain) implements Advice {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.waitForSky(this);
        }
    }

    /** Good enough, or likely to be, which is best checked with the clamps tight: tighten them gently. */
    record Clamp(double probabilityNow) implements Advice {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.clamp(this);
        }
    }

    /**
     * Confirmed after clamping, and good enough or as good as this mount's screws and clamps allow: nothing more to do.
     *
     * @param offset where the axis points
     */
    record Stop(double probabilityNow, AxisOffset offset) implements Advice {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.stop(this);
        }
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R turnScrews(TurnScrews advice);

        R moveByHand(MoveByHand advice);

        R takeSighting(TakeSighting advice);

        R waitForDark(WaitForDark advice);

        R waitForSky(WaitForSky advice);

        R clamp(Clamp advice);

        R stop(Stop advice);
    }
}
