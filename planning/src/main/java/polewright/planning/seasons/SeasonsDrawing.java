package polewright.planning.seasons;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.planning.seasons.AxisHistory.Point;
import polewright.planning.seasons.NightlyDrifts.Direction;
import polewright.sky.PlainNumber;

/**
 * The cumulative movement of the axis by pier and wedge from night to night, without deliberate turns: a strip for east
 * and one for up on one scale, time to the right. Error bars are one sigma of the last drift; the dashed line is the
 * fit.
 */
public final class SeasonsDrawing {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 640;
    private static final Box EAST = new Box(84, 46, 704, 254);
    private static final Box UP = new Box(84, 310, 704, 518);
    private static final double TEXT = 26;
    private static final double[] ROUND = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120};
    private static final int MOST_STEPS = 4;
    private static final double DOT = 6;
    private static final double CAP = 6;
    private static final double LEAST_BETWEEN_DATES = 124;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM yy", Locale.ENGLISH);

    private final Svg svg;
    private final Palette palette;
    private final Instant from;
    private final Instant to;
    private final double step;
    private final int steps;

    private SeasonsDrawing(List<AxisHistory> courses, int nights, Palette palette) {
        this.palette = palette;
        this.svg = new Svg(
                WIDTH,
                HEIGHT,
                "Motion of the axis from night to night",
                nights + " nights; east above, up below, in arcminutes, without the turns made.",
                palette);
        List<Instant> times = courses.stream()
                .flatMap(c -> c.points().stream())
                .map(Point::at)
                .toList();
        Instant first = times.stream().min(Instant::compareTo).orElse(Instant.EPOCH);
        Instant last = times.stream().max(Instant::compareTo).orElse(Instant.EPOCH);
        // A margin on either side, so that the first and last dots are clear of the edge.
        Duration margin = Duration.between(first, last).dividedBy(30).plusHours(1);
        this.from = first.minus(margin);
        this.to = last.plus(margin);
        this.step = step(courses.stream()
                .mapToDouble(c -> c.highest() - c.lowest())
                .max()
                .orElse(0));
        this.steps = courses.stream()
                .mapToInt(c -> (int) Math.round((above(c.highest()) - below(c.lowest())) / step))
                .max()
                .orElse(1);
    }

    /** The picture as SVG. */
    public static String svg(Seasons.Compared seasons, Palette palette) {
        AxisHistory east = AxisHistory.of(seasons, Direction.EAST);
        AxisHistory up = AxisHistory.of(seasons, Direction.UP);
        SeasonsDrawing drawing =
                new SeasonsDrawing(List.of(east, up), seasons.nights().size(), palette);
        if (east.points().isEmpty()) {
            drawing.svg.text(EAST.middle(), Anchor.MIDDLE, TEXT, palette.text(), "No drift between two nights known.");
            return drawing.svg.finished();
        }
        drawing.strip(EAST, "east", "west", east);
        drawing.strip(UP, "up", "down", up);
        drawing.dates();
        drawing.key(HEIGHT - 46, "Bars: one sigma. Dashed: trend.");
        drawing.key(HEIGHT - 14, "Open: a new series begins.");
        return drawing.svg.finished();
    }

    private void strip(Box box, String above, String below, AxisHistory course) {
        // Both strips have the same scale, so that small movements look small; each is placed around its own dots.
        Scale scale = new Scale(box, below(course.lowest()), steps * step);
        svg.open(above);
        svg.text(
                new Vector2D(box.left(), box.top() - 14),
                Anchor.START,
                TEXT,
                palette.text(),
                "Moved " + above + " (below 0: " + below + "), arcmin");
        for (int i = 0; i <= steps; i++) {
            double arcmin = scale.lowest() + i * step;
            boolean isZero = Math.abs(arcmin) < step / 2;
            svg.line(
                    isZero
                            ? Look.line(palette.guide(), 2)
                            : Look.line(palette.guide(), 1).dashed("3 6"),
                    new Vector2D(box.left(), scale.y(arcmin)),
                    new Vector2D(box.right(), scale.y(arcmin)));
            svg.text(
                    new Vector2D(box.left() - 8, scale.y(arcmin) + 9),
                    Anchor.END,
                    TEXT,
                    palette.text(),
                    figure(arcmin));
        }
        if (course.line().size() > 1) {
            svg.openWindow(box);
            svg.open("line");
            svg.polyline(
                    Look.line(palette.axis(), 3).dashed("9 7"),
                    course.line().stream()
                            .map(spot -> at(scale, spot.at(), spot.arcmin()))
                            .toList());
            svg.close();
            svg.closeWindow();
        }
        for (int i = 0; i < course.points().size(); i++) {
            Point point = course.points().get(i);
            if (point.isJoined()) {
                Point before = course.points().get(i - 1);
                svg.line(
                        "drift",
                        Look.line(palette.guide(), 1.5),
                        at(scale, before.at(), before.arcmin()),
                        at(scale, point.at(), point.arcmin()));
            }
        }
        course.points().forEach(point -> dot(scale, point));
        svg.close();
    }

    private void dot(Scale scale, Point point) {
        Vector2D middle = at(scale, point.at(), point.arcmin());
        Look ink = Look.line(palette.ink(), 2);
        if (point.isJoined()) {
            double top = scale.y(point.arcmin() + point.sigmaArcmin());
            double bottom = scale.y(point.arcmin() - point.sigmaArcmin());
            svg.line("sigma", ink, new Vector2D(middle.getX(), top), new Vector2D(middle.getX(), bottom));
            svg.line(ink, new Vector2D(middle.getX() - CAP, top), new Vector2D(middle.getX() + CAP, top));
            svg.line(ink, new Vector2D(middle.getX() - CAP, bottom), new Vector2D(middle.getX() + CAP, bottom));
        }
        svg.circle(Look.filled(point.isJoined() ? palette.ink() : palette.background(), palette.ink(), 2), middle, DOT);
    }

    private void key(double y, String words) {
        svg.text(new Vector2D(EAST.left(), y), Anchor.START, TEXT, palette.text(), words);
    }

    /** Below both strips: firsts of months, or days if there are few of those, as many as fit. */
    private void dates() {
        LocalDate first = from.atZone(ZoneOffset.UTC).toLocalDate();
        LocalDate last = to.atZone(ZoneOffset.UTC).toLocalDate();
        boolean isLong = Duration.between(from, to).toDays() > 120;
        double free = Double.NEGATIVE_INFINITY;
        for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
            Instant midnight = day.atStartOfDay(ZoneOffset.UTC).toInstant();
            double x = x(midnight);
            boolean isMarked = !isLong || day.getDayOfMonth() == 1;
            if (isMarked && x >= EAST.left() && x >= free && x <= EAST.right() - 44) {
                free = x + LEAST_BETWEEN_DATES;
                for (Box box : List.of(EAST, UP)) {
                    svg.line(
                            Look.line(palette.guide(), 1),
                            new Vector2D(x, box.bottom()),
                            new Vector2D(x, box.bottom() + 8));
                }
                svg.text(
                        new Vector2D(x, UP.bottom() + 36),
                        Anchor.MIDDLE,
                        TEXT,
                        palette.text(),
                        (isLong ? MONTH : DAY).format(day));
            }
        }
    }

    private Vector2D at(Scale scale, Instant at, double arcmin) {
        return new Vector2D(x(at), scale.y(arcmin));
    }

    private double x(Instant at) {
        double share = Duration.between(from, at).toSeconds()
                / (double) Duration.between(from, to).toSeconds();
        return EAST.left() + share * EAST.width();
    }

    private double below(double arcmin) {
        return step * Math.floor(arcmin / step - 0.1);
    }

    private double above(double arcmin) {
        return step * Math.ceil(arcmin / step + 0.1);
    }

    /** The vertical scale of a strip. */
    private record Scale(Box box, double lowest, double span) {
        double y(double arcmin) {
            return box.bottom() - (arcmin - lowest) / span * box.height();
        }
    }

    private static double step(double range) {
        for (double round : ROUND) {
            if (range <= MOST_STEPS * round) {
                return round;
            }
        }
        return ROUND[ROUND.length - 1] * Math.ceil(range / MOST_STEPS / ROUND[ROUND.length - 1]);
    }

    private String figure(double arcmin) {
        double rounded = Math.rint(arcmin / step) * step;
        double clean = Math.rint(rounded * 10) / 10;
        return clean < 0 ? "−" + PlainNumber.of(-clean) : PlainNumber.of(clean + 0.0);
    }
}
