package polewright.operations.camera;

import java.time.Instant;
import java.util.Optional;
import polewright.image.FrameFacts;
import polewright.image.MissingFacts;

/** Determines the middle of an exposure: the given time, or that of the file. */
@FunctionalInterface
public interface ExposureTime {
    /**
     * The middle of the exposure.
     *
     * @param name of the file, for messages
     */
    Optional<Instant> middle(String name, FrameFacts facts);

    /** The given time, or that of the file if it has one. */
    static ExposureTime ifKnown(Optional<Instant> given) {
        return (name, facts) -> given.or(facts::middle);
    }

    /** The given time, or that of the file, which is refused if it has none. */
    static ExposureTime needed(Optional<Instant> given, MissingFacts.TimeRemedy remedy) {
        return (name, facts) -> Optional.of(given.orElseGet(() -> MissingFacts.middle(name, facts, remedy)));
    }
}
