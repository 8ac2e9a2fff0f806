package polewright.alignment.advice;

import java.time.Duration;
import java.util.Optional;

/**
 * A sighting that could be taken next, with its expected value.
 *
 * @param kind the kind of sighting
 * @param star the star to use, if it needs one and the sky is known
 * @param watch how long to watch it; zero for a reading
 * @param minutes time that it takes, including slewing, setting up and waiting
 * @param probabilityAfter expected probability of being within the allowance, clamped, after the sighting and after
 *     turning on its result if that helps
 * @param gainPerMinute the value by which sightings are ranked
 */
public record RankedSighting(
        SightingKind kind,
        Optional<AdvisedStar> star,
        Duration watch,
        double minutes,
        double probabilityAfter,
        double gainPerMinute) {}
