package polewright.planning.tonight;

import java.time.Instant;
import java.util.List;
import polewright.mount.reach.SkyPath;
import polewright.sky.angle.Angle;
import polewright.sky.time.Interval;

/**
 * When and how well a target can be observed tonight.
 *
 * @param target the target
 * @param path its place through the night
 * @param windows when it is reachable and the sky dark enough for it, in order, at least one
 * @param best the best time
 * @param bestAltitude its apparent altitude then
 * @param transit its upper transit nearest to then, by day too
 * @param moonDistance from the Moon then
 * @param sky brightness of the sky there then, magnitudes per square arcsecond
 * @param score 0 to 1, see {@link ObservabilityScore}
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

    /** The window that contains the best time. */
    public Interval bestWindow() {
        return windows.stream()
                .filter(window -> window.contains(best))
                .findFirst()
                .orElse(windows.get(0));
    }
}
