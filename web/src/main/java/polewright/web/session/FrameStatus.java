package polewright.web.session;

import java.util.Optional;
import polewright.operations.watch.LiveView;
import polewright.operations.watch.WatchStep;

/**
 * The current state of the frames.
 *
 * @param number changes whenever something is new
 * @param newest the last frame, if one has come since the server was started
 * @param isCurrent whether it came since the watch began; otherwise its result is out of date
 * @param note what prevents frames from being used; may be empty
 */
public record FrameStatus(long number, Optional<LiveView.Shot> newest, boolean isCurrent, String note) {
    static final FrameStatus NOTHING = new FrameStatus(0, Optional.empty(), false, "");

    /** The result of the newest frame, if it is still current. */
    public Optional<WatchStep> step() {
        return newest.filter(shot -> isCurrent).flatMap(LiveView.Shot::step);
    }

    /** The turns that remain, while the screws are being followed. */
    public Optional<WatchStep.ScrewsFollowed> followed() {
        return step().filter(WatchStep.ScrewsFollowed.class::isInstance).map(WatchStep.ScrewsFollowed.class::cast);
    }
}
