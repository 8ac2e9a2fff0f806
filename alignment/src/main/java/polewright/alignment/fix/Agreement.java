package polewright.alignment.fix;

import java.util.Optional;
import polewright.alignment.sighting.Sighting;

/**
 * How one sighting agrees with the rest of the night.
 *
 * @param seq the number of the event
 * @param type the kind of sighting
 * @param kind the kind of sighting in plain words
 * @param squaredInnovation χ² of the sighting against all others together
 * @param figures its degrees of freedom
 * @param contradictory whether it was set aside
 * @param accused whether it is wrong with odds of at least 100 to 1. A sighting that was set aside may still be right
 *     if something else could be wrong instead
 * @param eastShare the share of its information that is about east and west, 0 to 1; the rest is about altitude
 * @param likelyCause for a sighting that was set aside: completes "it would fit if …"; empty when no usual mistake
 *     explains it
 */
public record Agreement(
        long seq,
        Class<? extends Sighting> type,
        String kind,
        double squaredInnovation,
        int figures,
        boolean contradictory,
        boolean accused,
        double eastShare,
        Optional<String> likelyCause) {
    // With less overlap than this, neither sighting tests the other.
    private static final double LEAST_OVERLAP = 0.1;

    /** Whether another sighting measures enough of the same direction for the two to be compared. */
    public boolean isComparableWith(Agreement other) {
        return eastShare * other.eastShare + (1 - eastShare) * (1 - other.eastShare) > LEAST_OVERLAP;
    }
}
