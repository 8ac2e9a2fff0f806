package polewright.drawing.strip;

import java.time.Instant;
import java.util.List;
import polewright.sky.time.Interval;

/**
 * Altitudes through a night.
 *
 * @param shown the time from the left to the right edge
 * @param dark the times of darkness, each within the one before
 * @param moon its altitude, also while it is below the horizon
 * @param targets in the order in which they are numbered
 */
public record NightAltitudes(Interval shown, List<Interval> dark, List<Point> moon, List<Target> targets) {
    public NightAltitudes {
        dark = List.copyOf(dark);
        moon = List.copyOf(moon);
        targets = List.copyOf(targets);
    }

    /** An altitude at one time. */
    public record Point(Instant at, double altitudeDeg) {}

    /**
     * A target.
     *
     * @param visible its altitude in each of the times in which it can be observed
     * @param slot its altitude during its slot
     */
    public record Target(List<List<Point>> visible, List<Point> slot) {}
}
