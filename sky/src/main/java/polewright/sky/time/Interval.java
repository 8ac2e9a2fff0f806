package polewright.sky.time;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import polewright.sky.InputRefused;

/**
 * An interval of time.
 *
 * @param from its start
 * @param to its end, not before the start
 */
public record Interval(Instant from, Instant to) {
    public Interval {
        if (to.isBefore(from)) {
            throw new InputRefused(
                    "a time that ends at " + to + " begins only at " + from, "give the earlier time" + " first");
        }
    }

    public Duration length() {
        return Duration.between(from, to);
    }

    /** Whether an instant lies within it, ends included. */
    public boolean contains(Instant instant) {
        return !instant.isBefore(from) && !instant.isAfter(to);
    }

    /** The overlap; empty if there is none. */
    public Optional<Interval> intersection(Interval other) {
        Instant later = from.isAfter(other.from) ? from : other.from;
        Instant earlier = to.isBefore(other.to) ? to : other.to;
        return later.isAfter(earlier) ? Optional.empty() : Optional.of(new Interval(later, earlier));
    }
}
