package polewright.alignment.advice;

import java.time.Duration;
import java.util.Optional;

/**
 * A sighting that can be taken.
 *
 * @param star which star, where it needs one and the sky is known
 * @param watched how long the star is watched, minutes; 0 for a reading
 * @param minutes what it costs, all told
 * @param tells what it would tell
 */
record Candidate(SightingKind kind, Optional<AdvisedStar> star, int watched, double minutes, InformationMatrix tells) {
    /** To take it. */
    Advice advised(double probabilityNow, String reason) {
        return new Advice.TakeSighting(probabilityNow, kind, star, Duration.ofMinutes(watched), reason);
    }
}
