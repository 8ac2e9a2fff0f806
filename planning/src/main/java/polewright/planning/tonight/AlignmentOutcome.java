package polewright.planning.tonight;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.sky.angle.Angle;

/** Which stars to align on, or why there are none. */
public sealed interface AlignmentOutcome {
    /** When as many as were asked can be seen by eye; empty when they can be now, or not within a day. */
    Optional<Instant> outByEye();

    /**
     * Stars, in the order in which to go to them.
     *
     * @param expectedError within so much go-tos land 95 times in 100, over the sky that can be reached, after them all;
     *     empty for a fork set upright
     * @param isSunUp then the ways between them keep clear of it, as do the stars
     */
    record Chosen(List<AlignmentStar> stars, Optional<Angle> expectedError, boolean isSunUp, Optional<Instant> outByEye)
            implements AlignmentOutcome {
        public Chosen {
            stars = List.copyOf(stars);
        }
    }

    /**
     * None.
     *
     * @param hurdles how many of the stars that are up each keeps away
     * @param isWayBarredBySun stars there are, but every way to one passes near the Sun
     */
    record Nothing(
            Map<ExclusionReason, Integer> hurdles,
            boolean isWayBarredBySun,
            boolean isSunUp,
            Optional<Instant> outByEye)
            implements AlignmentOutcome {
        public Nothing {
            hurdles = Map.copyOf(hurdles);
        }
    }
}
