package polewright.frames.match;

import java.util.ArrayList;
import java.util.List;

/** How many of the sky's brightest stars to search. */
final class SearchDepth {
    /** Stars of a frame, the brightest, that patterns are made of. */
    static final int PATTERN_STARS = 90;

    // The galaxy's poles are so many times poorer in stars than the average of the sky.
    private static final double UNEVENNESS = 3.5;
    private static final int[] FIRST_TRIED = {30_000, 300_000};

    private SearchDepth() {}

    /** Few at first where the scale is open, as the patterns of wide frames are all among the bright stars. */
    static List<Integer> of(Detections detections, MatchHint hint, int atlasSize) {
        double smallest = steradians(detections, hint.scale().least().radians());
        int needed = (int) Math.min(atlasSize, UNEVENNESS * PATTERN_STARS * 4 * Math.PI / smallest);
        List<Integer> depths = new ArrayList<>();
        boolean scaleKnown =
                hint.scale().most().radians() < 2 * hint.scale().least().radians();
        if (hint.near().isEmpty() && !scaleKnown) {
            for (int depth : FIRST_TRIED) {
                if (depth < needed / 2) {
                    depths.add(depth);
                }
            }
        }
        depths.add(needed);
        return depths;
    }

    private static double steradians(Detections detections, double radPerPixel) {
        double h = detections.halfDiagonal();
        double half = Math.atan(h * radPerPixel);
        double shape = detections.width() * (double) detections.height() / (Math.PI * h * h);
        return shape * 2 * Math.PI * (1 - Math.cos(half));
    }
}
