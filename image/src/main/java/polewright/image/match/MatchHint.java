package polewright.image.match;

import java.util.Optional;

/**
 * What is known of a frame before it is matched.
 *
 * @param near where its middle lies; the whole sky when empty
 * @param scale how much sky a pixel covers
 * @param mirrored whether left and right are exchanged, as by one mirror or a star diagonal; both are tried when empty
 * @param julianYear when it was taken, e.g. 2026.9, to carry the stars' known motions to
 */
public record MatchHint(Optional<SkyPatch> near, ScaleRange scale, Optional<Boolean> mirrored, double julianYear) {
    /** Nothing known but the year. */
    public static MatchHint none(double julianYear) {
        return new MatchHint(Optional.empty(), ScaleRange.ANY, Optional.empty(), julianYear);
    }

    public MatchHint withScale(ScaleRange range) {
        return new MatchHint(near, range, mirrored, julianYear);
    }

    public MatchHint near(SkyPatch patch) {
        return new MatchHint(Optional.of(patch), scale, mirrored, julianYear);
    }
}
