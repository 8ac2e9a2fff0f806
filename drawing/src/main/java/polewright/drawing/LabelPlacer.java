package polewright.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;

/**
 * Finds places for labels, one after the other: near what they name, off the lines, never overlapping.
 *
 * <p>Every position on a fine grid is tried, so a label is refused only if the paper is full.
 */
public final class LabelPlacer {
    public static final double LINE_HEIGHT = 16;
    public static final double LETTER_SIZE = 14;
    /** Distance beyond its gap up to which a label needs no leader. */
    private static final double FREE = 5;

    private static final double BASELINE = 13;
    private static final double AIR = 3;
    // Labels closer than that look like one.
    private static final double APART = 6;
    private static final double STEP = 4;
    private static final double NEAR_END = 8;
    private static final double CROSSED_LABEL = 300;
    private static final double COVERED_LEADER = 12;
    private static final double FREE_END = 3;
    private static final double FIRST_RING = 16;

    /**
     * A label to be placed.
     *
     * @param targets what it may point at, any of them
     * @param gap ideal distance from its target
     * @param reach largest distance from its target
     * @param step between the positions tried
     * @param isFit whether a position is acceptable
     */
    public record Wanted(
            List<String> lines, List<Box> targets, double gap, double reach, double step, Predicate<Placed> isFit) {
        public Wanted {
            lines = List.copyOf(lines);
            targets = List.copyOf(targets);
        }

        private double width(double size) {
            return lines.stream()
                    .mapToDouble(line -> Lettering.width(line, size))
                    .max()
                    .orElse(0);
        }

        /** Deviation from the ideal distance; a label touching what it names is worse than one farther off. */
        private double stretch(double distance) {
            return distance < gap ? FREE_END * (gap - distance) : distance - gap;
        }

        private double mostStretch() {
            return Math.max(stretch(0), stretch(reach));
        }
    }

    /**
     * A text of one or more lines in its place.
     *
     * @param pointedAt the nearest point of its target
     * @param gap ideal distance from it
     * @param stretch deviation from that ideal distance
     * @param size of its letters
     */
    public record Placed(List<String> lines, Box box, Vector2D pointedAt, double gap, double stretch, double size) {
        public boolean needsLeader() {
            return leaderStart().distance(pointedAt) > gap + FREE * unit();
        }

        /** Letters need less than the space reserved for them: they are aligned to the side of what they name. */
        public Anchor anchor() {
            if (pointedAt.getX() <= box.left()) {
                return Anchor.START;
            }
            return pointedAt.getX() >= box.right() ? Anchor.END : Anchor.MIDDLE;
        }

        public double anchorX() {
            return switch (anchor()) {
                case START -> box.left();
                case MIDDLE -> box.middle().getX();
                case END -> box.right();
            };
        }

        /** The area of the letters, without the space above and below the lines. */
        public Box letters() {
            return new Box(box.left(), box.top() + AIR * unit(), box.right(), box.bottom() - AIR * unit());
        }

        public Vector2D leaderStart() {
            return box.nearestTo(pointedAt);
        }

        /** Writes it, with its leader if it needs one. */
        public void write(Canvas canvas, Palette palette, String colour) {
            if (needsLeader()) {
                canvas.line("leader", Look.line(palette.ink(), 1.2 * unit()), leaderStart(), pointedAt);
            }
            double y = box.top() + BASELINE * unit();
            for (String line : lines) {
                canvas.text(new Vector2D(anchorX(), y), anchor(), size, colour, line);
                y += LINE_HEIGHT * unit();
            }
        }

        private double unit() {
            return size / LETTER_SIZE;
        }
    }

    private final Box area;
    private final double size;
    private final List<Box> taken = new ArrayList<>();
    private final ShunnedPoints shunned = new ShunnedPoints();

    public LabelPlacer(Box area) {
        this(area, LETTER_SIZE);
    }

    /** @param size of the letters */
    public LabelPlacer(Box area, double size) {
        this.area = area;
        this.size = size;
    }

    public void keepOff(Box box) {
        taken.add(box);
    }

    /** Points that a label should avoid covering, each with a cost; a cost of 1 is worth one unit of distance. */
    public void shun(List<Vector2D> points, double cost) {
        points.forEach(point -> shunned.add(point, cost));
    }

    /** The best free place that is acceptable for any of these versions of a label; empty if there is none. */
    public Optional<Placed> place(Wanted... versions) {
        Placed best = null;
        double least = Double.POSITIVE_INFINITY;
        for (Wanted wanted : versions) {
            // Ring by ring outward: most labels find room in the first ring, so few positions farther out are tried.
            double ring = 0;
            double next = FIRST_RING;
            while (ring < least && ring <= wanted.mostStretch()) {
                for (Placed placed : nearestFirst(wanted, ring, next)) {
                    double cost = placed.stretch();
                    if (cost >= least) {
                        break;
                    }
                    cost += shunned.within(placed.box().grown(2), least - cost);
                    if (cost < least) {
                        cost += crossed(placed, least - cost);
                    }
                    if (cost < least && wanted.isFit().test(placed)) {
                        least = cost;
                        best = placed;
                    }
                }
                ring = next;
                next *= 2;
            }
        }
        if (best != null) {
            taken.add(best.box().grown(APART * size / LETTER_SIZE));
            if (best.needsLeader()) {
                shun(Strokes.sampled(List.of(best.leaderStart(), best.pointedAt()), STEP), COVERED_LEADER);
            }
        }
        return Optional.ofNullable(best);
    }

    /** The free places whose stretch is at least {@code least} and less than {@code most}. */
    private List<Placed> nearestFirst(Wanted wanted, double least, double most) {
        double across = wanted.width(size) / 2;
        double along = LINE_HEIGHT * size / LETTER_SIZE * wanted.lines().size() / 2;
        List<Placed> candidates = new ArrayList<>();
        for (Box target : wanted.targets()) {
            Box within = middles(target.grown(wanted.reach()), across, along);
            Box ring = middles(target.grown(Math.min(wanted.reach(), wanted.gap() + most)), across, along);
            for (double x = onGrid(ring.left(), within.left(), wanted.step()); x <= ring.right(); x += wanted.step()) {
                for (double y = onGrid(ring.top(), within.top(), wanted.step());
                        y <= ring.bottom();
                        y += wanted.step()) {
                    Box box = Box.about(new Vector2D(x, y), 2 * across, 2 * along);
                    double distance = box.distanceTo(target);
                    double stretch = wanted.stretch(distance);
                    if (distance <= wanted.reach()
                            && stretch >= least
                            && stretch < most
                            && taken.stream().noneMatch(box::meets)) {
                        candidates.add(new Placed(
                                wanted.lines(), box, target.nearestTo(box.middle()), wanted.gap(), stretch, size));
                    }
                }
            }
        }
        candidates.sort(Comparator.comparingDouble(Placed::stretch));
        return candidates;
    }

    /** Where the middle of a label that touches {@code box} can be on the paper. */
    private Box middles(Box box, double across, double along) {
        return new Box(
                Math.max(area.left(), box.left() - 2 * across) + across,
                Math.max(area.top(), box.top() - 2 * along) + along,
                Math.min(area.right(), box.right() + 2 * across) - across,
                Math.min(area.bottom(), box.bottom() + 2 * along) - along);
    }

    /** The first grid point at or after {@code from}, for a grid starting at {@code origin}. */
    private static double onGrid(double from, double origin, double step) {
        return origin + step * Math.ceil((from - origin) / step);
    }

    /**
     * The cost of a leader: it may cross a line, but should not run along it, and must never cross another label.
     * Evaluation stops once the cost reaches {@code tooMuch}.
     */
    private double crossed(Placed placed, double tooMuch) {
        if (!placed.needsLeader()) {
            return 0;
        }
        double cost = 0;
        for (Vector2D on : Strokes.sampled(List.of(placed.leaderStart(), placed.pointedAt()), STEP)) {
            if (on.distance(placed.pointedAt()) < NEAR_END || cost >= tooMuch) {
                break;
            }
            cost += taken.stream().anyMatch(box -> box.contains(on)) ? CROSSED_LABEL : 0;
            cost += shunned.around(on, STEP / 2);
        }
        return cost;
    }
}
