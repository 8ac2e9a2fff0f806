package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.mount.reach.PointingLimits;
import polewright.mount.reach.SkyPath;
import polewright.sky.almanac.SunDepth;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/** The altitude of each planned target through the night, numbered as in the plan; thick during its slot. */
public final class NightDrawing {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 330;
    private static final double LEFT = 56;
    private static final double RIGHT = 704;
    private static final double TOP = 24;
    private static final double BOTTOM = 280;
    private static final double TEXT = 22;
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final Duration AROUND = Duration.ofMinutes(30);

    private final TonightsPlan plan;
    private final Palette palette;
    private final Interval shown;
    private final Svg svg;

    private NightDrawing(TonightsPlan plan, Palette palette) {
        this.plan = plan;
        this.palette = palette;
        Interval night = plan.evening().darkness().sunsetToSunrise();
        this.shown = new Interval(night.from().minus(AROUND), night.to().plus(AROUND));
        this.svg = new Svg(
                WIDTH,
                HEIGHT,
                "Altitude of tonight's targets",
                plan.plan().slots().size() + " targets from sunset to sunrise, and the Moon.",
                palette);
    }

    /** The picture as SVG, with hours of that time zone below it. */
    public static String svg(TonightsPlan plan, ZoneId zone, Palette palette) {
        NightDrawing drawing = new NightDrawing(plan, palette);
        drawing.darkness();
        drawing.scales(zone);
        drawing.moon();
        drawing.targets();
        return drawing.svg.finished();
    }

    /** Bars along the bottom, thicker for darker: they print, where a grey would not. */
    private void darkness() {
        double thickness = 3;
        for (SunDepth depth : SunDepth.values()) {
            double height = thickness;
            plan.evening()
                    .darkness()
                    .below(depth)
                    .flatMap(shown::intersection)
                    .ifPresent(dark -> svg.polygon(
                            Look.filled(palette.guide(), palette.guide(), 0),
                            new Vector2D(x(dark.from()), BOTTOM),
                            new Vector2D(x(dark.from()), BOTTOM + height),
                            new Vector2D(x(dark.to()), BOTTOM + height),
                            new Vector2D(x(dark.to()), BOTTOM)));
            thickness += 3;
        }
    }

    private void scales(ZoneId zone) {
        for (int altitude : new int[] {0, 30, 60, 90}) {
            svg.line(
                    Look.line(palette.guide(), 1).dashed("3 6"),
                    new Vector2D(LEFT, y(altitude)),
                    new Vector2D(RIGHT, y(altitude)));
            svg.text(new Vector2D(LEFT - 6, y(altitude) + 7), Anchor.END, TEXT, palette.text(), altitude + "°");
        }
        ZonedDateTime hour =
                shown.from().atZone(zone).truncatedTo(ChronoUnit.HOURS).plusHours(1);
        int every = shown.length().toHours() > 9 ? 2 : 1;
        for (; !hour.toInstant().isAfter(shown.to()); hour = hour.plusHours(1)) {
            if (hour.getHour() % every == 0) {
                svg.text(
                        new Vector2D(x(hour.toInstant()), BOTTOM + 38),
                        Anchor.MIDDLE,
                        TEXT,
                        palette.text(),
                        String.valueOf(hour.getHour()));
            }
        }
    }

    private void moon() {
        List<Vector2D> points = new ArrayList<>();
        for (Instant at = shown.from(); !at.isAfter(shown.to()); at = at.plus(STEP)) {
            ObservingMoment moment = plan.evening().moment(at);
            double altitude = moment.refracted(SolarSystem.apparent(SolarSystemBody.MOON, moment))
                    .altitude()
                    .degrees();
            if (altitude >= 0) {
                points.add(new Vector2D(x(at), y(altitude)));
            } else {
                curve(points, Look.line(palette.guide(), 2).dashed("2 5"));
                points.clear();
            }
        }
        if (!points.isEmpty()) {
            svg.text(
                    points.get(points.size() / 2).add(new Vector2D(0, -8)),
                    Anchor.MIDDLE,
                    TEXT,
                    palette.text(),
                    "Moon");
        }
        curve(points, Look.line(palette.guide(), 2).dashed("2 5"));
    }

    private void targets() {
        PointingLimits reach = plan.evening().reach();
        int number = 1;
        for (NightPlan.Slot slot : plan.plan().slots()) {
            for (Interval window : slot.showing().windows()) {
                curve(points(reach, slot.showing().path(), window), Look.line(palette.ink(), 1));
            }
            List<Vector2D> turn = points(reach, slot.showing().path(), slot.when());
            curve(turn, Look.line(palette.axis(), 5));
            svg.text(
                    turn.get(turn.size() / 2).add(new Vector2D(0, -10)),
                    Anchor.MIDDLE,
                    TEXT,
                    palette.text(),
                    String.valueOf(number++));
        }
    }

    private List<Vector2D> points(PointingLimits reach, SkyPath path, Interval when) {
        List<Vector2D> points = new ArrayList<>();
        for (Instant at = when.from(); at.isBefore(when.to()); at = at.plus(STEP)) {
            points.add(new Vector2D(x(at), y(reach.altitudeSeen(path.at(at)).degrees())));
        }
        points.add(new Vector2D(
                x(when.to()), y(reach.altitudeSeen(path.at(when.to())).degrees())));
        return points;
    }

    private void curve(List<Vector2D> points, Look look) {
        if (points.size() > 1) {
            svg.polyline(look, points);
        }
    }

    private double x(Instant at) {
        double share = Duration.between(shown.from(), at).toSeconds()
                / (double) shown.length().toSeconds();
        return LEFT + share * (RIGHT - LEFT);
    }

    private static double y(double altitudeDeg) {
        return BOTTOM - altitudeDeg / 90 * (BOTTOM - TOP);
    }
}
