package polewright.report.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.ItemTolerance;
import polewright.alignment.allowance.LimitCause;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.allowance.ZoneEdge;
import polewright.alignment.allowance.ZoneFinder;
import polewright.alignment.work.WorkItem;
import polewright.alignment.work.WorkPreset;
import polewright.mount.AxisOffset;
import polewright.session.NightState;
import polewright.sky.angle.Angle;

/** The tolerance on the axis, and its reasons, in words. */
public final class ZoneWords {
    // An aim nearer the pole than this counts as the pole.
    private static final double LEAST_TOLD_ARCMIN = 0.05;
    private static final double LEAST_TOLD_SHARE = 0.02;
    // A hundredth more is a flat side that spans 16 degrees of the circle: less than a drawing shows.
    private static final double ROUND = 1.01;

    // Under the text of the line above.
    private static final String INDENT = "      ";

    private ZoneWords() {}

    /** In one line: {@code good enough for planets: within 3.2′ of the best aim}. */
    public static String line(Allowance allowance) {
        return allowance instanceof WorkZone zone
                ? zone.words() + ": within " + AngleWords.size(zone.depth()) + " of the best aim"
                : allowance.words();
    }

    /** The requirement and the probability that it is met now: one line. */
    public static Line chance(NightState night) {
        return Tag.ZONE.line(capitalised(line(night.allowance())) + ". Chance now: "
                + AdviceWords.percent(night.advice().probabilityNow()) + ".");
    }

    private static String capitalised(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    /** Work, zone and best aim, several lines. */
    public static List<Line> full(NightState night, List<ItemTolerance> tolerances) {
        List<Line> lines = new ArrayList<>();
        if (!(night.allowance() instanceof WorkZone zone)) {
            lines.add(Tag.ZONE.line("The axis must be " + night.allowance().words() + "."));
            lines.add(Tag.PLAIN.line(INDENT + "Set what tonight is for, and the tolerance follows from it."));
            lines.addAll(presets());
            return lines;
        }
        lines.add(Tag.WORK.line("Tonight is for"));
        int number = 1;
        for (WorkItem item : zone.work().items()) {
            lines.add(Tag.PLAIN.line(INDENT + number++ + ". " + WorkWords.of(item)));
            alone(item, tolerances).map(Tag.PLAIN::line).ifPresent(lines::add);
        }
        lines.addAll(of(zone));
        ZoneNotes.of(zone, night.begun().rig()).forEach(note -> lines.add(note.tagged()));
        return lines;
    }

    /** The zone, what limits its nearest edge, and the best aim. */
    public static List<Line> of(WorkZone zone) {
        return List.of(zone(zone), strictest(zone), aim(zone));
    }

    private static List<Line> presets() {
        return Arrays.stream(WorkPreset.values())
                .map(preset -> Tag.TYPED.line(Wrapping.unbroken(INDENT + "polewright allow --for " + preset.words())))
                .toList();
    }

    private static Optional<String> alone(WorkItem item, List<ItemTolerance> tolerances) {
        return tolerances.stream()
                .filter(tolerance -> tolerance.item().equals(item))
                .map(ItemTolerance::alone)
                .map(zone -> {
                    LimitCause cause = nearest(zone).cause();
                    String within = "         On its own: within " + AngleWords.size(zone.depth()) + " of its best aim";
                    return cause == LimitCause.MOUNT
                            ? within + ", the limit for any mount."
                            : within + "; farther out, " + goesWrong(cause) + ".";
                })
                .findFirst();
    }

    private static Line zone(WorkZone zone) {
        Allowance.Span east = zone.eastSpan();
        String depth = "Good enough: within " + AngleWords.size(zone.depth()) + " of the best aim";
        return Tag.ZONE.line(zone.upSpanAt(zone.bestAim().east())
                .map(up -> isRound(zone)
                        ? depth + ", in any direction."
                        : depth + ", in some directions farther: from " + side(east.low()) + " to " + side(east.high())
                                + ", and from " + height(up.low()) + " to " + height(up.high()) + " the pole.")
                .orElse(depth + "."));
    }

    /** As it is drawn: no corner is farther than the nearest edge. */
    private static boolean isRound(WorkZone zone) {
        double farthest = zone.edges().stream()
                .mapToDouble(
                        edge -> edge.from().minus(zone.bestAim()).distance().radians())
                .max()
                .orElse(0);
        return farthest < zone.depth().radians() * ROUND;
    }

    private static Line strictest(WorkZone zone) {
        LimitCause cause = nearest(zone).cause();
        return cause == LimitCause.MOUNT
                ? Tag.WHY.line("The work would tolerate more, but " + AngleWords.size(ZoneFinder.MOUNT_BOUND)
                        + " is the limit for any mount.")
                : Tag.WHY.line("The limit is set by " + zone.strictest() + ": beyond it, " + goesWrong(cause) + ".");
    }

    /** What goes wrong, as the end of a sentence. */
    static String goesWrong(LimitCause cause) {
        return switch (cause) {
            case DRIFT -> "stars trail";
            case CORNER -> "stars trail in the corners";
            case LEAVES_FRAME -> "the object leaves the frame";
            case LEAVES_FIELD -> "the object leaves the field";
            case GO_TO -> "go-tos miss the field";
            case MOUNT -> "the axis is too far off for any mount";
        };
    }

    private static Line aim(WorkZone zone) {
        AxisOffset aim = zone.bestAim();
        double least =
                Math.max(LEAST_TOLD_ARCMIN, LEAST_TOLD_SHARE * zone.depth().arcminutes());
        List<String> parts = new ArrayList<>();
        if (Math.abs(aim.up().arcminutes()) >= least) {
            parts.add(AngleWords.size(aim.up()) + (aim.up().radians() > 0 ? " above" : " below"));
        }
        if (Math.abs(aim.east().arcminutes()) >= least) {
            parts.add(AngleWords.size(aim.east()) + (aim.east().radians() > 0 ? " east of" : " west of"));
        }
        return parts.isEmpty()
                ? Tag.AIM.line("The true pole is the best aim.")
                : Tag.AIM.line("Best is " + String.join(" and ", parts)
                        + " the true pole, the point farthest from every edge of the zone.");
    }

    /** The piece of edge nearest to the best aim. */
    static ZoneEdge nearest(WorkZone zone) {
        return zone.edges().stream()
                .filter(edge -> edge.item().equals(zone.strictest()))
                .min(Comparator.comparingDouble(edge -> distance(edge, zone.bestAim())))
                .orElseThrow(() -> new IllegalStateException("a zone without a line of its strictest item"));
    }

    /** Distance of a point from the line of an edge, rad. */
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
