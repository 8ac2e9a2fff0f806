package polewright.alignment.allowance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.AxisOffset;
import polewright.sky.angle.Angle;

/**
 * The axis offsets at which every item of the work succeeds: a convex polygon of many short edges.
 *
 * @param work the work it is for
 * @param edges anticlockwise, closed, at least three; normalised so that the first begins at the westernmost corner
 * @param bestAim the point farthest from every edge
 * @param depth its distance from the nearest edge
 * @param strictest the item whose edge is nearest to the best aim
 */
public record WorkZone(Work work, List<ZoneEdge> edges, AxisOffset bestAim, Angle depth, String strictest)
        implements Allowance {
    // The lower of two corners on one western side, so that this side is the last edge.
    private static final Comparator<AxisOffset> WESTERNMOST =
            Comparator.comparing(AxisOffset::east).thenComparing(AxisOffset::up);

    public WorkZone {
        edges = fromWesternmost(edges);
    }

    @Override
    public boolean contains(AxisOffset offset) {
        for (ZoneEdge edge : edges) {
            if (leftOf(edge, offset) < 0) {
                return false;
            }
        }
        return true;
    }

    @Override
    public Span eastSpan() {
        return new Span(
                edges.get(0).from().east(), edges.get(easternmost()).from().east());
    }

    @Override
    public Optional<Span> upSpanAt(Angle east) {
        int easternmost = easternmost();
        if (east.compareTo(edges.get(0).from().east()) < 0
                || east.compareTo(edges.get(easternmost).from().east()) > 0) {
            return Optional.empty();
        }
        // Eastward along the lower side, back along the upper.
        int below = firstThat(1, easternmost, k -> edges.get(k).from().east().compareTo(east) >= 0) - 1;
        int above = firstThat(
                        easternmost + 1,
                        edges.size(),
                        k -> edges.get(k).from().east().compareTo(east) < 0)
                - 1;
        return Optional.of(new Span(upAt(edges.get(below), east), upAt(edges.get(above), east)));
    }

    /** Index of the edge that begins at the easternmost corner. */
    private int easternmost() {
        return firstThat(1, edges.size(), k -> {
            ZoneEdge edge = edges.get(k);
            return edge.to().east().compareTo(edge.from().east()) <= 0;
        });
    }

    /** Binary search: the smallest index for which a monotonic test holds; {@code high} if there is none below it. */
    private static int firstThat(int low, int high, IntPredicate test) {
        int from = low;
        int to = high;
        while (from < to) {
            int middle = (from + to) >>> 1;
            if (test.test(middle)) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        return from;
    }

    private static Angle upAt(ZoneEdge edge, Angle east) {
        double from = edge.from().east().radians();
        double to = edge.to().east().radians();
        double share = to == from ? 0 : (east.radians() - from) / (to - from);
        return new Angle(edge.from().up().radians()
                + share * (edge.to().up().radians() - edge.from().up().radians()));
    }

    private static List<ZoneEdge> fromWesternmost(List<ZoneEdge> edges) {
        int first = 0;
        for (int i = 1; i < edges.size(); i++) {
            if (WESTERNMOST.compare(edges.get(i).from(), edges.get(first).from()) < 0) {
                first = i;
            }
        }
        List<ZoneEdge> turned = new ArrayList<>(edges.subList(first, edges.size()));
        turned.addAll(edges.subList(0, first));
        return List.copyOf(turned);
    }

    @Override
    public String words() {
        boolean toleratesMore = strictest.equals(ZoneFinder.ANY_MOUNT);
        return "good enough for "
                + (toleratesMore
                        ? work.items().stream().map(WorkItem::name).collect(Collectors.joining(" and "))
                        : strictest);
    }

    /** Twice the area of the triangle of edge and point, positive on the zone's side, rad². */
    private static double leftOf(ZoneEdge edge, AxisOffset point) {
        AxisOffset along = edge.to().minus(edge.from());
        AxisOffset toPoint = point.minus(edge.from());
        return along.east().radians() * toPoint.up().radians()
                - along.up().radians() * toPoint.east().radians();
    }
}
