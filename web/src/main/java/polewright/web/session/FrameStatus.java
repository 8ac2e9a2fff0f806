package polewright.web.session;

import java.util.Optional;
import polewright.operations.watch.LiveView;
import polewright.operations.watch.WatchStep;

/**
 * How it stands with the frames.
 *
 * @param number another whenever something is new
 * @param newest the last frame, if one came since the server was started
 * @param isCurrent whether it came since the watch began: else what it told is past
 * @param note what stands in the way; may be empty
 */
public record FrameStatus(long number, Optional<LiveView.Shot> newest, boolean isCurrent, String note) {
    static final FrameStatus NOTHING = new FrameStatus(0, Optional.empty(), false, "");

    /** What the newest frame told, if that still holds. */
    public Optional<WatchStep> step() {
        return newest.filter(shot -> isCurrent).flatMap(LiveView.Shot::step);
    }

    /** Which turns remain, while the screws are. */
    public Optional<WatchStep.ScrewsFollowed> followed() {
        return step().filter(WatchStep.ScrewsFollowed.class::isInstance).map(WatchStep.ScrewsFollowed.class::cast);
    }
}
