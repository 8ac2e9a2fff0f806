package polewright.operations.watch;

import java.util.Optional;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.ScrewProgress;
import polewright.alignment.fix.AxisState;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/** What one more frame told. */
public sealed interface WatchStep {
    /**
     * It stands for a place in right ascension; the axis is not known yet.
     *
     * @param places how many differ so far
     */
    record Placed(int places) implements WatchStep {}

    /**
     * This frame does not go with those before it: the axis is looked for from this frame on.
     *
     * @param slew how far the axis would have moved, where that is farther than screws take it, so that the mount was
     *     slewed; empty where the frames before are too long ago
     * @param leftOff where the screws had taken the axis by then, if they had and the log does not have it
     */
    record StartedAfresh(Optional<Angle> slew, Optional<LeftOff> leftOff) implements WatchStep {}

    /** Right ascension has been turned by enough: here is the axis. */
    record AxisFound(AxisFromFrames axis) implements WatchStep {}

    /** One more place in right ascension: the axis is known better. */
    record AxisSharpened(AxisFromFrames axis) implements WatchStep {}

    /**
     * The screws are being turned.
     *
     * @param offset where the axis is now, on the sky
     * @param moved how far the axis has gone since it was found, on the sky
     * @param orders what to turn now, and what remains in all
     * @param azimuthWentWrong which way the azimuth screw was last seen to take the axis away from the aim, if it did
     * @param altitudeWentWrong the same of the altitude screw
     * @param isSenseAssumed whether it is only assumed yet which way a screw goes that has to be turned
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
        /** The turns to make now, clockwise positive: fewer than remain while a screw is tried. */
        public AxisState.Turns ordered() {
            return new AxisState.Turns(
                    orders.azimuth().clockwiseTurns(), orders.altitude().clockwiseTurns());
        }

        /** All turns that remain, clockwise positive. */
        public AxisState.Turns remaining() {
            return new AxisState.Turns(
                    orders.azimuth().remaining(), orders.altitude().remaining());
        }
    }

    /**
     * Where the screws had taken the axis.
     *
     * @param sighting the frames that tell it
     * @param made what the hand made of it; empty where turns of the screws do not explain it
     */
    record LeftOff(TurnedFrames sighting, Optional<FollowedScrews.Made> made) {}
}
