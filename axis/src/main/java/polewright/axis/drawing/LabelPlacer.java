package polewright.axis.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.axis.drawing.Svg.Anchor;

/**
 * Finds room for labels, one after the other: near what they name, off the lines, never on one another.
 *
 * <p>Every place of a fine grid is tried, so a label is refused only where the paper is full.
 */
final class LabelPlacer {
    static final double LINE_HEIGHT = 16;
    static final double LETTER_SIZE = 14;
    /** How far from what it points at a label may stand without a leader, beyond its gap. */
    private static final double FREE = 5;

    private static final double AIR = 3;
    // Labels closer than that read as one.
    private static final double APART = 6;
    private static final double STEP = 4;
    private static final double NEAR_END = 8;
    private static final double CROSSED_LABEL = 300;
    private static final double COVERED_LEADER = 12;
    private static final double FREE_END = 3;

    /** Something best left uncovered. */
    private record Shunned(Vector2D point, double cost) {}

    /**
     * A label that wants a place.
     *
     * @param targets what it may point at, any of them
     * @param gap how far from its target it stands best
     * @param reach how far from its target it may stand
     * @param step between the places that are tried
     * @param isFit whether a place will do at all
     */
    record Wanted(
            List<String> lines, List<Box> targets, double gap, double reach, double step, Predicate<Placed> isFit) {
        Wanted {
            lines = List.copyOf(lines);
            targets = List.copyOf(targets);
        }

        private double width() {
            return lines.stream()
                    .mapToDouble(line -> Lettering.width(line, LETTER_SIZE))
                    .max()
                    .orElse(0);
        }
    }

    /**
     * A text of one or more lines that found its place.
     *
     * @param pointedAt the point of its target that is nearest
     * @param gap how far from it would be best
     */
    record Placed(List<String> lines, Box box, Vector2D pointedAt, double gap) {
        boolean needsLeader() {
            return leaderStart().distance(pointedAt) > gap + FREE;
        }

        /** Letters take less than the room kept for them: they stand on the side of what they name. */
        Anchor anchor() {
            if (pointedAt.getX() <= box.left()) {
                return Anchor.START;
            }
            return pointedAt.getX() >= box.right() ? Anchor.END : Anchor.MIDDLE;
        }

        double anchorX() {
            return switch (anchor()) {
                case START -> box.left();
                case MIDDLE -> box.middle().getX();
                case END -> box.right();
            };
        }

        /** What the letters fill: above and below them the lines have some air. */
        Box letters() {
            return new Box(box.left(), box.top() + AIR, box.right(), box.bottom() - AIR);
        }

        /** How far from a good distance it stands; a label that touches what it names is worse than one farther off. */
        private double stretch() {
            double distance = leaderStart().distance(pointedAt);
            return distance < gap ? FREE_END * (gap - distance) : distance - gap;
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

    /** The best free place that is fit; empty when there is none. */
    Optional<Placed> place(Wanted wanted) {
        Placed best = null;
        double least = Double.POSITIVE_INFINITY;
        for (Placed placed : nearestFirst(wanted)) {
            if (placed.stretch() >= least) {
                break;
            }
            double cost = placed.stretch();
            cost += covered(placed.box(), least - cost);
            if (cost < least) {
                cost += crossed(placed);
            }
            if (cost < least && wanted.isFit().test(placed)) {
                least = cost;
                best = placed;
            }
        }
        if (best != null) {
            taken.add(best.box().grown(APART));
            if (best.needsLeader()) {
                shun(Strokes.sampled(List.of(best.leaderStart(), best.pointedAt()), STEP), COVERED_LEADER);
            }
        }
        return Optional.ofNullable(best);
    }

    private List<Placed> nearestFirst(Wanted wanted) {
        double across = wanted.width() / 2;
        double along = LINE_HEIGHT * wanted.lines().size() / 2;
        List<Placed> candidates = new ArrayList<>();
        for (Box target : wanted.targets()) {
            Box within = target.grown(wanted.reach());
            double left = Math.max(area.left(), within.left() - 2 * across) + across;
            double right = Math.min(area.right(), within.right() + 2 * across) - across;
            double top = Math.max(area.top(), within.top() - 2 * along) + along;
            double bottom = Math.min(area.bottom(), within.bottom() + 2 * along) - along;
            for (double x = left; x <= right; x += wanted.step()) {
                for (double y = top; y <= bottom; y += wanted.step()) {
                    Vector2D middle = new Vector2D(x, y);
                    Box box = Box.about(middle, 2 * across, 2 * along);
                    if (box.distanceTo(target) <= wanted.reach()
                            && taken.stream().noneMatch(box::meets)) {
                        candidates.add(new Placed(wanted.lines(), box, target.nearestTo(middle), wanted.gap()));
                    }
                }
            }
        }
        candidates.sort(Comparator.comparingDouble(Placed::stretch));
        return candidates;
    }

    /** What it costs to cover what lies there; no more than that it is too much, once it is. */
    private double covered(Box box, double tooMuch) {
        Box wide = box.grown(2);
        double cost = 0;
        for (Shunned one : shunned) {
            cost += wide.contains(one.point()) ? one.cost() : 0;
            if (cost >= tooMuch) {
                break;
            }
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
            if (on.distance(placed.pointedAt()) < NEAR_END) {
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
