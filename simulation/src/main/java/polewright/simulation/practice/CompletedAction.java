package polewright.simulation.practice;

import java.time.Duration;
import java.time.Instant;
import polewright.simulation.HiddenWedge;

/**
 * A completed action.
 *
 * @param from when it began
 * @param to when it ended
 * @param wedge its true state then
 * @param seen what the player saw
 */
public record CompletedAction(
        PracticeAction action, Instant from, Instant to, HiddenWedge wedge, ObservedReadings seen) {
    public Duration took() {
        return Duration.between(from, to);
    }
}
