package polewright.drawing.zone;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.allowance.LimitCause;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneEdge;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/** Sample zones: the intersection of several rules, with 200 short edges. */
final class SampleZones {
    private static final int EDGES = 200;

    /**
     * A rule of one item: the distance of its line from the aim in each direction.
     *
     * @param reach arcminutes from the aim to the line, as a function of the direction's angle from east, anticlockwise
     */
    record Rule(String item, LimitCause cause, DoubleUnaryOperator reach) {
        /** A half-plane: within {@code distance} of the aim in the direction of {@code degrees}. */
        static Rule straight(String item, LimitCause cause, double degrees, double distance) {
            return new Rule(item, cause, angle -> {
                double cosine = Math.cos(angle - Math.toRadians(degrees));
                return cosine > 1e-9 ? distance / cosine : Double.POSITIVE_INFINITY;
            });
        }

        /** An ellipse around the aim, its first semi-axis in the direction of {@code degrees}. */
        static Rule ellipse(String item, LimitCause cause, double degrees, double first, double second) {
            return new Rule(item, cause, angle -> {
                double along = Math.cos(angle - Math.toRadians(degrees)) / first;
                double across = Math.sin(angle - Math.toRadians(degrees)) / second;
                return 1 / Math.hypot(along, across);
            });
        }
    }

    private SampleZones() {}

    /** Three items whose intersection is about 3′ × 6′, the aim shifted up by refraction. */
    static WorkZone threeItems() {
        return zone(
                AxisOffset.ofArcminutes(0.3, 1.4),
                Rule.ellipse("Vega 120 s", LimitCause.DRIFT, 75, 3.4, 1.7),
                Rule.straight("M 13 guided", LimitCause.CORNER, 20, 1.3),
                Rule.straight("M 13 guided", LimitCause.CORNER, 200, 1.5),
                Rule.straight("Saturn at 200×", LimitCause.LEAVES_FIELD, -80, 2.4));
    }

    /** A sliver of 1′ × 16′. */
    static WorkZone thin() {
        return zone(
                AxisOffset.ofArcminutes(-1, 0.8),
                Rule.ellipse("Long guided nebula", LimitCause.CORNER, 30, 8, 0.5),
                Rule.straight("Go-to with the finder", LimitCause.GO_TO, 30, 6));
    }

    /** Eight items, more than there is room for at the edge. */
    static WorkZone manyItems() {
        List<Rule> rules = new ArrayList<>();
        List<LimitCause> causes = List.of(LimitCause.values());
        for (int i = 0; i < 8; i++) {
            rules.add(Rule.straight(
                    "Target number " + (i + 1), causes.get(i % causes.size()), 45 * i + 7, 4 + 0.4 * (i % 3)));
        }
        return zone(AxisOffset.ofArcminutes(1, -1), rules.toArray(Rule[]::new));
    }

    static WorkZone zone(AxisOffset aim, Rule... rules) {
        List<ZoneEdge> edges = new ArrayList<>();
        double depth = Double.POSITIVE_INFINITY;
        for (int i = 0; i < EDGES; i++) {
            double from = 2 * Math.PI * i / EDGES;
            double to = 2 * Math.PI * ((i + 1) % EDGES) / EDGES;
            Rule rule = strictest(from + Math.PI / EDGES, rules);
            edges.add(new ZoneEdge(corner(aim, from, rules), corner(aim, to, rules), rule.item(), rule.cause()));
            depth = Math.min(depth, reach(from, rules));
        }
        VisualObservation look = new VisualObservation(
                rules[0].item(),
                Angle.ofDegrees(1),
                Duration.ofMinutes(15),
                new VisualObservation.Finding.Centred(),
                SkyRegion.Above.THIRTY_DEGREES);
        return new WorkZone(new Work(List.of(look)), edges, aim, Angle.ofArcminutes(depth), rules[0].item());
    }

    private static AxisOffset corner(AxisOffset aim, double angle, Rule... rules) {
        double reach = reach(angle, rules);
        Vector2D point = new Vector2D(aim.east().arcminutes(), aim.up().arcminutes())
                .add(reach, new Vector2D(Math.cos(angle), Math.sin(angle)));
        return AxisOffset.ofArcminutes(point.getX(), point.getY());
    }

    private static double reach(double angle, Rule... rules) {
        return strictest(angle, rules).reach().applyAsDouble(angle);
    }

    private static Rule strictest(double angle, Rule... rules) {
        Rule strictest = rules[0];
        for (Rule rule : rules) {
            if (rule.reach().applyAsDouble(angle) < strictest.reach().applyAsDouble(angle)) {
                strictest = rule;
            }
        }
        return strictest;
    }
}
