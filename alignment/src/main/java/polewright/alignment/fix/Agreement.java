package polewright.alignment.fix;

import java.util.Optional;
import polewright.alignment.sighting.Sighting;

/**
 * How one sighting agrees with the rest of the night.
 *
 * @param seq the event
 * @param type its kind
 * @param kind what kind of sighting, in plain words
 * @param squaredInnovation χ² of the sighting against all others together
 * @param figures its degrees of freedom
 * @param contradictory whether it was set aside
 * @param accused whether it is wrong with odds of a hundred to one; one that was set aside may be right, if something else
 *     may be wrong instead
 * @param eastShare how much of what it tells is of east and west, 0 to 1; the rest is of the axis's height
 * @param likelyCause for one set aside: completes "it would fit if …"; empty when no usual mistake explains it
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
    // Less in common than this, and the one says nothing of the other.
    private static final double SOMETHING_IN_COMMON = 0.1;

    /** Whether another sighting tells of the same direction, so that the two can be compared. */
    public boolean tellsOfWhat(Agreement other) {
        return eastShare * other.eastShare + (1 - eastShare) * (1 - other.eastShare) > SOMETHING_IN_COMMON;
    }
}
