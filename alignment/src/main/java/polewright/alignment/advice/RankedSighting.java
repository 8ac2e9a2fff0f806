package polewright.alignment.advice;

import java.time.Duration;
import java.util.Optional;

/**
 * A sighting that could be taken next, and what it is worth.
 *
 * @param kind what kind
 * @param star which star to use, where it needs one and the sky is known
 * @param watch how long to watch it; zero for a reading
 * @param minutes what it costs, slewing, setting and waiting included
 * @param probabilityAfter probability of being within the allowance, clamped, that one may expect of it: after turning on
 *     what it tells, where turning then helps
 * @param gainPerMinute what it is ranked by
 */
public record RankedSighting(
        SightingKind kind,
        Optional<AdvisedStar> star,
        Duration watch,
        double minutes,
        double probabilityAfter,
        double gainPerMinute) {}
