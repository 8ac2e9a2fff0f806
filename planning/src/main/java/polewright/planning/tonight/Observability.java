package polewright.planning.tonight;

import java.time.Instant;
import java.util.List;
import polewright.mount.reach.SkyPath;
import polewright.sky.angle.Angle;
import polewright.sky.time.Interval;

/**
 * When and how well a target shows tonight.
 *
 * @param target which
 * @param path where it stands as the night goes on
 * @param windows when it can be reached while it is dark enough for it, in order, at least one
 * @param best when it shows best
 * @param bestAltitude how high it then is, as seen
 * @param transit when it passes the upper meridian nearest to then, by day too
 * @param moonDistance from the Moon then
 * @param sky brightness of the sky there then, magnitudes a square arcsecond
 * @param score 0 to 1: how well worth looking at, see {@link ObservabilityScore}
 */
public record Observability(
        Target target,
        SkyPath path,
        List<Interval> windows,
        Instant best,
        Angle bestAltitude,
        Instant transit,
        Angle moonDistance,
        double sky,
        double score) {
    public Observability {
        windows = List.copyOf(windows);
    }

    /** The window in which it shows best. */
    public Interval bestWindow() {
        return windows.stream()
                .filter(window -> window.contains(best))
                .findFirst()
                .orElse(windows.get(0));
    }
}
