package polewright.simulation.practice;

import java.time.Duration;
import java.time.Instant;
import polewright.simulation.HiddenWedge;

/**
 * A deed that was done.
 *
 * @param from when it was begun
 * @param to when it was finished
 * @param wedge how the wedge really stood then
 * @param seen what it let one see
 */
public record CompletedAction(PracticeAction deed, Instant from, Instant to, HiddenWedge wedge, ObservedReadings seen) {
    public Duration took() {
        return Duration.between(from, to);
    }
}
