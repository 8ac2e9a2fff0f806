package polewright.alignment.allowance;

import java.time.Duration;
import java.util.Optional;

/** The result of the search for a zone. */
public sealed interface ZoneOutcome {
    /** There is a zone. */
    record Found(WorkZone zone) implements ZoneOutcome {}

    /** No axis suits the work. */
    sealed interface None extends ZoneOutcome {
        <R> R accept(Visitor<R> visitor);
    }

    /** One method for each reason why no axis suits the work. */
    interface Visitor<R> {
        R impossible(Impossible none);

        R atOdds(AtOdds none);
    }

    /**
     * One item cannot be satisfied by any axis, however exact.
     *
     * @param item its name
     * @param cause what goes wrong even then
     * @param longest the longest exposure, or stay in the field, that some axis would allow; empty if shorter than a
     *     second
     */
    record Impossible(String item, LimitCause cause, Optional<Duration> longest) implements None {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.impossible(this);
        }
    }

    /**
     * Each item could be satisfied, but no single axis satisfies both.
     *
     * @param one the name of an item
     * @param other the name of another
     */
    record AtOdds(String one, String other) implements None {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.atOdds(this);
        }
    }
}
