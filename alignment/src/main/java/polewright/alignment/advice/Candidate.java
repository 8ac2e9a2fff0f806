package polewright.alignment.advice;

import java.time.Duration;
import java.util.Optional;

/**
 * A sighting that could be taken.
 *
 * @param star the star to use, if it needs one and the sky is known
 * @param watched how long the star is watched, minutes; 0 for a reading
 * @param minutes total time that it takes
 * @param information what it would add to the knowledge of the offset
 */
record Candidate(
        SightingKind kind, Optional<AdvisedStar> star, int watched, double minutes, InformationMatrix information) {
    /** The advice to take it. */
    Advice advised(double probabilityNow, String reason) {
        return new Advice.TakeSighting(probabilityNow, kind, star, Duration.ofMinutes(watched), reason);
    }
}
