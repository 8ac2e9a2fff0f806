package polewright.axis.allowance;

import java.util.List;
import java.util.Optional;
import polewright.axis.AxisOffset;
import polewright.axis.work.Work;
import polewright.sky.angle.Angle;

/**
 * The axis offsets at which every item of the work comes out well: a convex polygon of many short edges.
 *
 * @param work what it allows
 * @param edges anticlockwise, closed; at least three
 * @param bestAim the point farthest from every edge
 * @param depth how far
 * @param strictest the item whose line comes nearest to the best aim
 */
public record WorkZone(Work work, List<ZoneEdge> edges, AxisOffset bestAim, Angle depth, String strictest)
        implements Allowance {
    public WorkZone {
        edges = List.copyOf(edges);
    }

    @Override
    public boolean contains(AxisOffset offset) {
        return edges.stream().allMatch(edge -> leftOf(edge, offset) >= 0);
    }

    @Override
    public Span eastSpan() {
        var east =
                edges.stream().mapToDouble(edge -> edge.from().east().radians()).summaryStatistics();
        return new Span(new Angle(east.getMin()), new Angle(east.getMax()));
    }

    @Override
    public Optional<Span> upSpanAt(Angle east) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (ZoneEdge edge : edges) {
            double from = edge.from().east().radians();
            double to = edge.to().east().radians();
            if (Math.min(from, to) <= east.radians() && east.radians() <= Math.max(from, to)) {
                double share = to == from ? 0 : (east.radians() - from) / (to - from);
                double up = edge.from().up().radians()
                        + share * (edge.to().up().radians() - edge.from().up().radians());
                low = Math.min(low, up);
                high = Math.max(high, up);
            }
        }
        return low > high ? Optional.empty() : Optional.of(new Span(new Angle(low), new Angle(high)));
    }

    @Override
    public String words() {
        return "good enough for " + strictest;
    }

    /** Twice the area of the triangle of edge and point, positive on the zone's side, rad². */
    private static double leftOf(ZoneEdge edge, AxisOffset point) {
        AxisOffset along = edge.to().minus(edge.from());
        AxisOffset toPoint = point.minus(edge.from());
        return along.east().radians() * toPoint.up().radians()
                - along.up().radians() * toPoint.east().radians();
    }
}
