package polewright.app.watch;

import java.util.Optional;
import polewright.axis.AxisOffset;
import polewright.axis.camera.AxisFromFrames;
import polewright.axis.camera.ScrewsSoFar;
import polewright.axis.fix.AxisState;
import polewright.axis.sighting.TurnedFrames;
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
    record StartedAfresh(Optional<Angle> slew, Optional<TurnedFrames> leftOff) implements WatchStep {}

    /** Right ascension has been turned by enough: here is the axis. */
    record AxisFound(AxisFromFrames axis) implements WatchStep {}

    /** One more place in right ascension: the axis is known better. */
    record AxisSharpened(AxisFromFrames axis) implements WatchStep {}

    /**
     * The screws are being turned.
     *
     * @param moved how far the axis has gone since it was found, on the sky
     * @param remaining turns that remain to the best aim, clockwise positive
     * @param goodEnough whether the axis is where the clamps may be tightened
     */
    record ScrewsFollowed(ScrewsSoFar soFar, AxisOffset moved, AxisState.Turns remaining, boolean goodEnough)
            implements WatchStep {}
}
