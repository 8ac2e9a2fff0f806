package polewright.image.match;

import java.util.Optional;

/**
 * What is known of a frame before it is matched.
 *
 * @param near where its centre lies; the whole sky if empty
 * @param scale range of the pixel scale
 * @param mirrored whether the image is mirror-reversed, as by one mirror or a star diagonal; both are tried if empty
 * @param julianYear when it was taken, e.g. 2026.9, for proper motion
 */
public record MatchHint(Optional<SkyPatch> near, ScaleRange scale, Optional<Boolean> mirrored, double julianYear) {
    /** Only the year is known. */
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
