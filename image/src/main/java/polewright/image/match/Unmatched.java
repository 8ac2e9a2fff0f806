package polewright.image.match;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import polewright.sky.PlainNumber;

/**
 * The frame matches nowhere in the sky.
 *
 * @param starsFound on the frame
 * @param reason why, in plain words
 * @param remedy what to do, as an imperative without its full stop
 */
public record Unmatched(int starsFound, String reason, String remedy) implements MatchOutcome {
    /**
     * No match in any of the searches. Says what was searched, as a wrong hint is the likeliest cause.
     *
     * @param starsFound on the frame
     * @param tried the hints of the searches, at least one; they differ only in the part of the sky
     */
    public static Unmatched anywhere(int starsFound, List<MatchHint> tried) {
        List<String> searched = new ArrayList<>();
        List<SkyPatch> patches =
                tried.stream().flatMap(hint -> hint.near().stream()).toList();
        if (!patches.isEmpty()) {
            searched.add("within " + PlainNumber.of(patches.get(0).radius().degrees()) + " degrees of "
                    + patches.stream().map(SkyPatch::words).collect(Collectors.joining(" or of ")));
        }
        ScaleRange scale = tried.get(0).scale();
        if (!scale.equals(ScaleRange.ANY)) {
            searched.add("at " + PlainNumber.of(scale.least().arcseconds()) + " to "
                    + PlainNumber.of(scale.most().arcseconds()) + " arcseconds per pixel");
        }
        String what = "the stars found on it (" + starsFound + ") do not match any stars ";
        if (searched.isEmpty()) {
            return new Unmatched(starsFound, what + "of the sky", "check focus and trails, or take another frame");
        }
        return new Unmatched(
                starsFound,
                what + String.join(" ", searched),
                "search " + wider(!patches.isEmpty(), !scale.equals(ScaleRange.ANY)) + ", or check focus and trails");
    }

    private static String wider(boolean isPlaceGiven, boolean isScaleGiven) {
        if (!isPlaceGiven) {
            return "at any scale";
        }
        return isScaleGiven ? "the whole sky at any scale" : "the whole sky";
    }
}
