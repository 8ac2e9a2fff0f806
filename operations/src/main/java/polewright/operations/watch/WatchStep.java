package polewright.operations.watch;

import java.util.Optional;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.ScrewProgress;
import polewright.alignment.fix.AxisState;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisEstimate;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/** The result of one more frame. */
public sealed interface WatchStep {
    /** Where the axis is after it; empty while it is not known. */
    Optional<AxisEstimate> axisNow();

    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /**
     * One more place in right ascension; the axis is not known yet.
     *
     * @param places how many differ so far
     */
    record Placed(int places) implements WatchStep {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.placed(this);
        }

        @Override
        public Optional<AxisEstimate> axisNow() {
            return Optional.empty();
        }
    }

    /**
     * This frame does not fit those before it: the search for the axis starts again with it.
     *
     * @param slew how far the axis would have moved, if that is more than screws can, so that the mount was slewed;
     *     empty if the frames before are too old
     * @param leftOff where the screws had moved the axis by then, if they had and that is not in the log
     */
    record StartedAfresh(Optional<Angle> slew, Optional<LeftOff> leftOff) implements WatchStep {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.startedAfresh(this);
        }

        @Override
        public Optional<AxisEstimate> axisNow() {
            return Optional.empty();
        }
    }

    /** Right ascension has been turned far enough to give the axis. */
    record AxisFound(AxisFromFrames axis) implements WatchStep {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.axisFound(this);
        }

        @Override
        public Optional<AxisEstimate> axisNow() {
            return Optional.of(axis.estimate());
        }
    }

    /** One more place in right ascension: the axis is more accurate. */
    record AxisSharpened(AxisFromFrames axis) implements WatchStep {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.axisSharpened(this);
        }

        @Override
        public Optional<AxisEstimate> axisNow() {
            return Optional.of(axis.estimate());
        }
    }

    /**
     * The screws are being turned.
     *
     * @param offset where the axis is now, on the sky
     * @param moved how far the axis has moved since it was found, on the sky
     * @param orders what to turn now, and what remains in all
     * @param azimuthWentWrong the sense in which the azimuth screw was last seen to move the axis away from the
     *     target, if it did
     * @param altitudeWentWrong the same for the altitude screw
     * @param isSenseAssumed whether the sense of a screw that has to be turned is still an assumption
     * @param goodEnough whether the axis is where the clamps may be tightened
     */
    record ScrewsFollowed(
            ScrewProgress soFar,
            AxisOffset offset,
            AxisOffset moved,
            FollowedScrews.Orders orders,
            Optional<FollowedScrews.WrongWay> azimuthWentWrong,
            Optional<FollowedScrews.WrongWay> altitudeWentWrong,
            boolean isSenseAssumed,
            boolean goodEnough)
            implements WatchStep {
        /** The turns to make now, clockwise positive: fewer than remain while a screw is being tested. */
        public AxisState.Turns ordered() {
            return new AxisState.Turns(
                    orders.azimuth().clockwiseTurns(), orders.altitude().clockwiseTurns());
        }

        /** All turns that remain, clockwise positive. */
        public AxisState.Turns remaining() {
            return new AxisState.Turns(
                    orders.azimuth().remaining(), orders.altitude().remaining());
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.screwsFollowed(this);
        }

        @Override
        public Optional<AxisEstimate> axisNow() {
            return Optional.of(soFar.now());
        }
    }

    /**
     * Where the screws had moved the axis.
     *
     * @param sighting the frames that show it
     * @param made the turns made; empty if no turns of the screws explain it
     */
    record LeftOff(TurnedFrames sighting, Optional<FollowedScrews.Made> made) {}

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R placed(Placed step);

        R startedAfresh(StartedAfresh step);

        R axisFound(AxisFound step);

        R axisSharpened(AxisSharpened step);

        R screwsFollowed(ScrewsFollowed step);
    }
}
