package polewright.axis.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * Finds room for labels, one after the other: near what they name, off the lines, never on one another.
 *
 * <p>Every place of a fine grid is tried, so a label is refused only where the paper is full.
 */
final class LabelPlacer {
    static final double LINE_HEIGHT = 16;

    private static final double STEP = 4;
    private static final double GAP = 8;
    private static final double CROSSED_LABEL = 300;
    private static final double COVERED_LEADER = 12;
    private static final double FREE_END = 3;

    /** Something best left uncovered. */
    private record Shunned(Vector2D point, double cost) {}

    /** A text of one or more lines that found its place, and what it points at. */
    record Placed(List<String> lines, double size, Box box, Vector2D pointedAt) {
        boolean needsLeader() {
            return box.nearestTo(pointedAt).distance(pointedAt) > 1.6 * GAP;
        }

        /** How far from a good distance it stands; a label that touches what it names is worse than one farther off. */
        private double stretch() {
            double distance = leaderStart().distance(pointedAt);
            return distance < GAP ? FREE_END * (GAP - distance) : distance - GAP;
        }

        Vector2D leaderStart() {
            return box.nearestTo(pointedAt);
        }
    }

    private final Box area;
    private final List<Box> taken = new ArrayList<>();
    private final List<Shunned> shunned = new ArrayList<>();

    LabelPlacer(Box area) {
        this.area = area;
    }

    void keepOff(Box box) {
        taken.add(box);
    }

    /** Points that a label should not cover, each at a cost; a cost of 1 is worth a step of one unit away. */
    void shun(List<Vector2D> points, double cost) {
        points.forEach(p -> shunned.add(new Shunned(p, cost)));
    }

    /** The best free place by any of the points it may point at; empty when there is none. */
    Optional<Placed> place(List<String> lines, double size, List<Vector2D> pointsAt) {
        double width = lines.stream()
                .mapToDouble(line -> Lettering.width(line, size))
                .max()
                .orElse(0);
        double height = LINE_HEIGHT * lines.size();
        List<Placed> nearestFirst = candidates(lines, size, width, height, pointsAt);
        Placed best = null;
        double least = Double.POSITIVE_INFINITY;
        for (Placed placed : nearestFirst) {
            if (placed.stretch() >= least) {
                break;
            }
            double cost = placed.stretch() + covered(placed.box());
            if (cost < least) {
                cost += crossed(placed);
            }
            if (cost < least) {
                least = cost;
                best = placed;
            }
        }
        if (best != null) {
            taken.add(best.box().grown(2));
            if (best.needsLeader()) {
                shun(Strokes.sampled(List.of(best.leaderStart(), best.pointedAt()), STEP), COVERED_LEADER);
            }
        }
        return Optional.ofNullable(best);
    }

    private List<Placed> candidates(
            List<String> lines, double size, double width, double height, List<Vector2D> pointsAt) {
        List<Placed> candidates = new ArrayList<>();
        for (double x = area.left() + width / 2; x <= area.right() - width / 2; x += STEP) {
            for (double y = area.top() + height / 2; y <= area.bottom() - height / 2; y += STEP) {
                Box box = Box.about(new Vector2D(x, y), width, height);
                if (taken.stream().noneMatch(box::meets)) {
                    pointsAt.forEach(point -> candidates.add(new Placed(lines, size, box, point)));
                }
            }
        }
        candidates.sort(Comparator.comparingDouble(Placed::stretch));
        return candidates;
    }

    private double covered(Box box) {
        Box wide = box.grown(2);
        double cost = 0;
        for (Shunned one : shunned) {
            cost += wide.contains(one.point()) ? one.cost() : 0;
        }
        return cost;
    }

    /** A leader may cross a line, but had better not run along it, and never over another label. */
    private double crossed(Placed placed) {
        if (!placed.needsLeader()) {
            return 0;
        }
        double cost = 0;
        for (Vector2D on : Strokes.sampled(List.of(placed.leaderStart(), placed.pointedAt()), STEP)) {
            if (on.distance(placed.pointedAt()) < GAP) {
                break;
            }
            cost += taken.stream().anyMatch(box -> box.contains(on)) ? CROSSED_LABEL : 0;
            for (Shunned one : shunned) {
                cost += one.point().distanceSq(on) < STEP * STEP / 4 ? one.cost() : 0;
            }
        }
        return cost;
    }
}
