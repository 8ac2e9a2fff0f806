package polewright.operations.camera;

import java.time.Instant;
import java.util.Optional;
import polewright.image.FrameFacts;
import polewright.image.MissingFacts;

/** When the middle of an exposure was: as told, or as its file says. */
@FunctionalInterface
public interface ExposureTime {
    /**
     * The middle.
     *
     * @param name of the file, for messages
     */
    Optional<Instant> middle(String name, FrameFacts facts);

    /** As told, or by the file if it says so. */
    static ExposureTime ifKnown(Optional<Instant> told) {
        return (name, facts) -> told.or(facts::middle);
    }

    /** As told, or by the file, which is refused if it does not say so. */
    static ExposureTime needed(Optional<Instant> told, MissingFacts.TimeRemedy remedy) {
        return (name, facts) -> Optional.of(told.orElseGet(() -> MissingFacts.middle(name, facts, remedy)));
    }
}
