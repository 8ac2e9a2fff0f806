package polewright.alignment.allowance;

import java.time.Duration;
import java.util.Optional;

/** Whether any axis suits the work. */
public sealed interface ZoneOutcome {
    /** There is a zone. */
    record Found(WorkZone zone) implements ZoneOutcome {}

    /**
     * One item cannot be met by any axis, however exact.
     *
     * @param item its name
     * @param cause what goes wrong even so
     * @param longest the longest exposure, or stay in the field, that some axis would allow; empty when not even a
     *     second
     */
    record Impossible(String item, LimitCause cause, Optional<Duration> longest) implements ZoneOutcome {}

    /**
     * Each item could be met, but not both of these by one axis.
     *
     * @param one the name of an item
     * @param other the name of another
     */
    record AtOdds(String one, String other) implements ZoneOutcome {}
}
