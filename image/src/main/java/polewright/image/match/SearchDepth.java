package polewright.image.match;

import java.util.ArrayList;
import java.util.List;
import polewright.sky.angle.Angle;

/**
 * How many of the sky's brightest stars to search, and for which scales.
 *
 * @param stars number in the whole sky
 * @param scale the scales at which the patterns of a frame are among them
 */
record SearchDepth(int stars, ScaleRange scale) {
    /** The number of a frame's brightest stars used for patterns. */
    static final int PATTERN_STARS = 90;

    // Star density at the galactic poles is lower than the mean of the sky by this factor.
    private static final double UNEVENNESS = 3.5;
    private static final int[] FIRST_TRIED = {32_000, 512_000};
    private static final double OVERLAP = 1.2;
    private static final double LEAST_DEPTH = 8000;
    private static final double DEPTH_STEP = 4;

    /** If the scale is unknown, wide frames first: their patterns are all among few bright stars. */
    static List<SearchDepth> of(Detections detections, MatchHint hint, int atlasSize) {
        double least = hint.scale().least().radians();
        double most = hint.scale().most().radians();
        List<SearchDepth> depths = new ArrayList<>();
        double upTo = most;
        if (hint.near().isEmpty() && most > 2 * least) {
            for (int stars : FIRST_TRIED) {
                double from = scaleServedBy(stars, detections);
                if (from > 1.5 * least && from < upTo) {
                    depths.add(new SearchDepth(stars, new ScaleRange(new Angle(from), new Angle(upTo))));
                    upTo = Math.min(most, OVERLAP * from);
                }
            }
        }
        double needed = UNEVENNESS * PATTERN_STARS * 4 * Math.PI / steradians(detections, least);
        depths.add(new SearchDepth(rounded(needed, atlasSize), new ScaleRange(new Angle(least), new Angle(upTo))));
        return depths;
    }

    /** In coarse steps, so that frames of about the same scale share an index. */
    private static int rounded(double stars, int atlasSize) {
        double step = Math.ceil(Math.log(Math.max(1, stars / LEAST_DEPTH)) / Math.log(DEPTH_STEP));
        return (int) Math.min(atlasSize, LEAST_DEPTH * Math.pow(DEPTH_STEP, step));
    }

    /** The smallest scale at which a frame's patterns are among this many stars of the sky. */
    private static double scaleServedBy(int stars, Detections detections) {
        double frame = UNEVENNESS * PATTERN_STARS * 4 * Math.PI / stars;
        double half = Math.acos(Math.max(-1, 1 - frame / (2 * Math.PI * shape(detections))));
        return Math.tan(Math.min(1.4, half)) / detections.halfDiagonal();
    }

    private static double steradians(Detections detections, double radPerPixel) {
        double half = Math.atan(detections.halfDiagonal() * radPerPixel);
        return shape(detections) * 2 * Math.PI * (1 - Math.cos(half));
    }

    /** The frame's fraction of its circumscribed circle. */
    private static double shape(Detections detections) {
        double h = detections.halfDiagonal();
        return detections.width() * (double) detections.height() / (Math.PI * h * h);
    }
}
