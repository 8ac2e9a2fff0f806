package polewright.app.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.axis.AxisOffset;
import polewright.axis.allowance.Allowance;
import polewright.axis.allowance.ItemTolerance;
import polewright.axis.allowance.WorkZone;
import polewright.axis.allowance.ZoneEdge;
import polewright.axis.work.WorkItem;
import polewright.night.NightState;
import polewright.sky.angle.Angle;

/** How far off the axis may be, and why, in words. */
public final class ZoneWords {
    private ZoneWords() {}

    /** In one line: {@code good enough for planets: 3.2′ round the best aim}. */
    public static String line(Allowance allowance) {
        return allowance instanceof WorkZone zone
                ? zone.words() + ": " + AngleWords.size(zone.depth()) + " round the best aim"
                : allowance.words();
    }

    /** Work, zone and best aim, several lines. */
    public static List<String> full(NightState night, List<ItemTolerance> tolerances) {
        List<String> lines = new ArrayList<>();
        if (!(night.allowance() instanceof WorkZone zone)) {
            lines.add("ZONE  The axis may be " + night.allowance().words() + ".");
            lines.add("      What tonight is for has not been said. To work out how exact it has to be:");
            lines.addAll(presets());
            return lines;
        }
        lines.add("WORK  Tonight is for");
        zone.work().items().forEach(item -> {
            lines.add("      - " + WorkWords.of(item));
            alone(item, tolerances).ifPresent(lines::add);
        });
        lines.addAll(of(zone));
        return lines;
    }

    /** The zone, what draws its nearest line, and the best aim. */
    public static List<String> of(WorkZone zone) {
        return List.of(zone(zone), strictest(zone), aim(zone.bestAim()));
    }

    private static List<String> presets() {
        return List.of(
                Wrapping.unbroken("  polewright allow --for \"a casual look\""),
                Wrapping.unbroken("  polewright allow --for \"planets at high power\""),
                Wrapping.unbroken("  polewright allow --for \"short subs\""),
                Wrapping.unbroken("  polewright allow --for \"long guided subs\""));
    }

    private static Optional<String> alone(WorkItem item, List<ItemTolerance> tolerances) {
        return tolerances.stream()
                .filter(tolerance -> tolerance.item().equals(item))
                .map(tolerance -> "        For this alone "
                        + AngleWords.size(tolerance.alone().depth())
                        + " round its best aim; beyond, "
                        + nearest(tolerance.alone()).cause().words() + ".")
                .findFirst();
    }

    private static String zone(WorkZone zone) {
        Allowance.Span east = zone.eastSpan();
        String words = "ZONE  Good enough is " + AngleWords.size(zone.depth())
                + " round the best aim, and more in places: from " + side(east.low()) + " to " + side(east.high());
        return words
                + zone.upSpanAt(zone.bestAim().east())
                        .map(up -> ", and from " + height(up.low()) + " to " + height(up.high()))
                        .orElse("")
                + " the pole.";
    }

    private static String strictest(WorkZone zone) {
        return "WHY   Strictest: " + zone.strictest() + ". Just beyond its line "
                + nearest(zone).cause().words() + ".";
    }

    private static String aim(AxisOffset aim) {
        if (aim.distance().arcminutes() < 0.05) {
            return "AIM   The true pole is the best aim.";
        }
        List<String> parts = new ArrayList<>();
        if (Math.abs(aim.up().arcminutes()) >= 0.05) {
            parts.add(AngleWords.size(aim.up()) + (aim.up().radians() > 0 ? " above" : " below"));
        }
        if (Math.abs(aim.east().arcminutes()) >= 0.05) {
            parts.add(AngleWords.size(aim.east()) + (aim.east().radians() > 0 ? " east of" : " west of"));
        }
        return "AIM   Best is " + String.join(" and ", parts)
                + " the true pole: air bends the stars' paths, and the axis that suits them is not quite the pole.";
    }

    /** The stretch of edge that comes nearest to the best aim. */
    static ZoneEdge nearest(WorkZone zone) {
        return zone.edges().stream()
                .filter(edge -> edge.item().equals(zone.strictest()))
                .min(Comparator.comparingDouble(edge -> distance(edge, zone.bestAim())))
                .orElseThrow(() -> new IllegalStateException("a zone without a line of its strictest item"));
    }

    /** From a point to the line of an edge, rad. */
    private static double distance(ZoneEdge edge, AxisOffset point) {
        AxisOffset along = edge.to().minus(edge.from());
        AxisOffset toPoint = point.minus(edge.from());
        double length = along.distance().radians();
        if (length == 0) {
            return toPoint.distance().radians();
        }
        double cross = along.east().radians() * toPoint.up().radians()
                - along.up().radians() * toPoint.east().radians();
        return Math.abs(cross) / length;
    }

    private static String side(Angle east) {
        return AngleWords.size(east) + (east.radians() >= 0 ? " east" : " west");
    }

    private static String height(Angle up) {
        return AngleWords.size(up) + (up.radians() >= 0 ? " above" : " below");
    }
}
