package polewright.frames.star;

import java.util.ArrayList;
import java.util.List;

/**
 * Takes out detections that stand in a straight row across the frame: pieces of what a satellite or an aeroplane drew.
 *
 * <p>Stars scattered at random put about n·2w·L/A of their number within w of a line of length L; a row is believed where
 * there are so many more that chance would not make one in any of the lines tried.
 */
final class LinedUp {
    private static final int LOOKED_AT = 250;
    // Lines are drawn through pairs of these, the brightest; a row of ten has five among them in all likelihood.
    private static final int ENDS = 90;
    private static final double HALF_WIDTH_PIXELS = 1.5;
    private static final double REMOVED_HALF_WIDTH_PIXELS = 4;
    private static final int FEWEST = 10;
    private static final double SIGMAS = 8;
    private static final int MOST_ROWS = 6;

    private LinedUp() {}

    /** The stars, brightest first, without rows of such detections. */
    static List<FoundStar> removed(List<FoundStar> stars, int width, int height) {
        List<FoundStar> left = stars;
        for (int row = 0; row < MOST_ROWS; row++) {
            Line line = fullest(left.subList(0, Math.min(LOOKED_AT, left.size())));
            double byChance = Math.min(LOOKED_AT, left.size())
                    * 2
                    * HALF_WIDTH_PIXELS
                    * Math.hypot(width, height)
                    / ((double) width * height);
            if (line.count < FEWEST || line.count < byChance + SIGMAS * Math.sqrt(byChance)) {
                return left;
            }
            List<FoundStar> others = new ArrayList<>();
            for (FoundStar star : left) {
                if (line.distance(star) > REMOVED_HALF_WIDTH_PIXELS) {
                    others.add(star);
                }
            }
            left = others;
        }
        return left;
    }

    /** Points whose distance x·cos + y·sin − offset is nought. */
    private record Line(double cos, double sin, double offset, int count) {
        static final Line NONE = new Line(1, 0, 0, 0);

        double distance(FoundStar star) {
            return Math.abs(star.x() * cos + star.y() * sin - offset);
        }
    }

    private static Line fullest(List<FoundStar> stars) {
        Line best = Line.NONE;
        int ends = Math.min(ENDS, stars.size());
        for (int i = 0; i < ends; i++) {
            for (int j = i + 1; j < ends; j++) {
                Line line = through(stars.get(i), stars.get(j), stars);
                if (line.count > best.count) {
                    best = line;
                }
            }
        }
        return best;
    }

    private static Line through(FoundStar a, FoundStar b, List<FoundStar> stars) {
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double length = Math.hypot(dx, dy);
        // Of two points close together the direction is not told.
        if (length < 20 * HALF_WIDTH_PIXELS) {
            return Line.NONE;
        }
        double cos = -dy / length;
        double sin = dx / length;
        double offset = a.x() * cos + a.y() * sin;
        int count = 0;
        for (FoundStar star : stars) {
            if (Math.abs(star.x() * cos + star.y() * sin - offset) < HALF_WIDTH_PIXELS) {
                count++;
            }
        }
        return new Line(cos, sin, offset, count);
    }
}
