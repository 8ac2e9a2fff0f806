package polewright.drawing.zone;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneEdge;
import polewright.mount.AxisOffset;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * The edge of a zone, divided where a different item or cause takes over.
 *
 * @param stretches anticlockwise, east to the right; each begins where the previous one ends
 */
public record ZoneRim(List<Stretch> stretches) {
    private static final int DISC_POINTS = 144;

    /**
     * A stretch of the edge set by one item and cause.
     *
     * @param points from its start to its end; at least two
     * @param item the item that sets it; empty if the user set it, not an item
     * @param cause what goes wrong beyond it, in a few words
     */
    public record Stretch(List<AxisOffset> points, String item, String cause) {
        public Stretch {
            points = List.copyOf(points);
        }

        /** {@code Vega 120 s: stars trail}. */
        public String words() {
            return item.isEmpty() ? cause : item + ": " + cause;
        }

        Angle length() {
            double sum = 0;
            for (int i = 1; i < points.size(); i++) {
                sum += points.get(i).minus(points.get(i - 1)).distance().radians();
            }
            return new Angle(sum);
        }
    }

    public ZoneRim {
        stretches = List.copyOf(stretches);
    }

    public static ZoneRim of(Allowance allowance) {
        if (allowance instanceof WorkZone zone) {
            return of(zone.edges());
        } else if (allowance instanceof DiscAllowance disc) {
            return of(disc);
        }
        throw new IllegalStateException("no outline of " + allowance);
    }

    /** All points once around. */
    public List<AxisOffset> points() {
        List<AxisOffset> points = new ArrayList<>();
        stretches.forEach(s -> points.addAll(s.points().subList(0, s.points().size() - 1)));
        return points;
    }

    /** Each item and cause once, by its longest stretch, longest first. */
    public List<Stretch> causes() {
        Map<String, Stretch> longest = new LinkedHashMap<>();
        for (Stretch stretch : stretches) {
            longest.merge(stretch.words(), stretch, (a, b) -> a.length().compareTo(b.length()) >= 0 ? a : b);
        }
        return longest.values().stream()
                .sorted(Comparator.comparing(Stretch::length).reversed())
                .toList();
    }

    private static ZoneRim of(DiscAllowance disc) {
        List<AxisOffset> points = new ArrayList<>();
        for (int i = 0; i <= DISC_POINTS; i++) {
            // Starts in the south-east, so that a label at its middle is in the north-west.
            double angle = 2 * Math.PI * i / DISC_POINTS - Math.PI / 4;
            points.add(new AxisOffset(
                    disc.radius().times(Math.cos(angle)), disc.radius().times(Math.sin(angle))));
        }
        String radius = PlainNumber.of(disc.radius().arcminutes()) + "′ from the pole";
        return new ZoneRim(List.of(new Stretch(points, "", radius)));
    }

    private static ZoneRim of(List<ZoneEdge> edges) {
        int first = 0;
        for (int i = 0; i < edges.size(); i++) {
            if (!sameCause(edges.get(i), edges.get((i + edges.size() - 1) % edges.size()))) {
                first = i;
                break;
            }
        }
        List<Stretch> stretches = new ArrayList<>();
        List<AxisOffset> points = new ArrayList<>();
        for (int i = 0; i < edges.size(); i++) {
            ZoneEdge edge = edges.get((first + i) % edges.size());
            if (points.isEmpty()) {
                points.add(edge.from());
            }
            points.add(edge.to());
            boolean isLast = i == edges.size() - 1;
            if (isLast || !sameCause(edge, edges.get((first + i + 1) % edges.size()))) {
                stretches.add(new Stretch(points, edge.item(), edge.cause().words()));
                points = new ArrayList<>();
            }
        }
        return new ZoneRim(stretches);
    }

    private static boolean sameCause(ZoneEdge one, ZoneEdge other) {
        return one.item().equals(other.item()) && one.cause() == other.cause();
    }
}
