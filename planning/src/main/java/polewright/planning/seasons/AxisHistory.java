package polewright.planning.seasons;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import polewright.planning.seasons.NightlyDrifts.Direction;

/**
 * The cumulative movement of the axis by pier and wedge until each night: the drifts added up, without deliberate
 * turns.
 *
 * <p>It begins at zero. Where a drift is unknown or was set aside, the sequence breaks: it continues at the fitted
 * line, or at its last value if there is no line.
 *
 * @param points in time order
 * @param line from the first to the last of them, empty without a fit
 */
record AxisHistory(List<Point> points, List<Spot> line) {
    private static final int LINE_STEPS = 120;

    AxisHistory {
        points = List.copyOf(points);
        line = List.copyOf(line);
    }

    /**
     * A night.
     *
     * @param arcmin cumulative movement since the first
     * @param sigmaArcmin 1 sigma of the drift that led there; 0 at the start of a sequence
     * @param isJoined whether that drift is known
     */
    record Point(Instant at, double arcmin, double sigmaArcmin, boolean isJoined) {}

    /** A point on the line. */
    record Spot(Instant at, double arcmin) {}

    /** The lower end of the lowest error bar, arcminutes. */
    double lowest() {
        return points.stream()
                .mapToDouble(p -> p.arcmin() - p.sigmaArcmin())
                .min()
                .orElse(0);
    }

    /** The upper end of the highest error bar, arcminutes. */
    double highest() {
        return points.stream()
                .mapToDouble(p -> p.arcmin() + p.sigmaArcmin())
                .max()
                .orElse(0);
    }

    static AxisHistory of(Seasons.Compared seasons, Direction direction) {
        List<Point> points = new ArrayList<>();
        double arcmin = 0;
        for (NightGap gap : seasons.gaps()) {
            if (gap instanceof NightGap.Drifted drifted && !isSetAside(drifted, seasons.motion())) {
                if (points.isEmpty()) {
                    points.add(new Point(drifted.before().at(), 0, 0, false));
                } else if (!isFollowing(points, drifted)) {
                    arcmin += carried(
                            points.get(points.size() - 1).at(), drifted.before().at(), seasons.motion(), direction);
                    points.add(new Point(drifted.before().at(), arcmin, 0, false));
                }
                arcmin += direction.of(drifted.drift());
                points.add(new Point(
                        drifted.after().at(), arcmin, Math.sqrt(direction.variance(drifted.covariance())), true));
            }
        }
        return new AxisHistory(points, line(points, seasons.motion(), direction));
    }

    private static boolean isSetAside(NightGap.Drifted gap, PierMotion motion) {
        return motion instanceof PierMotion.Fitted fitted && fitted.setAside().contains(gap);
    }

    /** Whether it begins on the night on which the last one ended. */
    private static boolean isFollowing(List<Point> points, NightGap.Drifted gap) {
        return gap.from()
                .axisAtStart()
                .filter(start -> start.at().equals(points.get(points.size() - 1).at()))
                .isPresent();
    }

    private static List<Spot> line(List<Point> points, PierMotion motion, Direction direction) {
        List<Spot> line = new ArrayList<>();
        if (points.isEmpty() || !(motion instanceof PierMotion.Fitted)) {
            return line;
        }
        Instant from = points.get(0).at();
        Instant to = points.get(points.size() - 1).at();
        // Drifts determine the slope, not the level: the line is placed so that the mean deviation is zero.
        double above = points.stream()
                .mapToDouble(p -> p.arcmin() - carried(from, p.at(), motion, direction))
                .average()
                .orElse(0);
        double seconds = java.time.Duration.between(from, to).toSeconds();
        for (int i = 0; i <= LINE_STEPS; i++) {
            Instant at = from.plusSeconds(Math.round(seconds * i / LINE_STEPS));
            line.add(new Spot(at, above + carried(from, at, motion, direction)));
        }
        return line;
    }

    private static double carried(Instant from, Instant to, PierMotion motion, Direction direction) {
        return motion instanceof PierMotion.Fitted fitted
                ? (direction == Direction.EAST ? fitted.east() : fitted.up()).arcmin(from, to)
                : 0;
    }
}
