package polewright.planning.tonight;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.sky.angle.Angle;

/** The stars to align on, or why there are none. */
public sealed interface AlignmentOutcome {
    /**
     * When the number of stars wanted become visible to the eye; empty if they already are, or will not be within a
     * day.
     */
    Optional<Instant> visibleByEyeFrom();

    /**
     * Stars, in the order in which to go to them.
     *
     * @param expectedError radius within which 95 % of go-tos land, over the reachable sky, after all of them; empty
     *     for an upright fork
     * @param isSunUp if so, the stars and the slews between them keep clear of it
     */
    record Chosen(
            List<AlignmentStar> stars,
            Optional<Angle> expectedError,
            boolean isSunUp,
            Optional<Instant> visibleByEyeFrom)
            implements AlignmentOutcome {
        public Chosen {
            stars = List.copyOf(stars);
        }
    }

    /**
     * No stars.
     *
     * @param exclusions number of stars above the horizon excluded for each reason
     * @param isBlockedBySun there are stars, but every slew to one passes near the Sun
     */
    record Nothing(
            Map<ExclusionReason, Integer> exclusions,
            boolean isBlockedBySun,
            boolean isSunUp,
            Optional<Instant> visibleByEyeFrom)
            implements AlignmentOutcome {
        public Nothing {
            exclusions = Map.copyOf(exclusions);
        }
    }
}
