package polewright.drawing.chart;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.LabelPlacer;
import polewright.drawing.Palette;
import polewright.drawing.ScaleBar;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.mount.rig.Orientation;
import polewright.sky.angle.Angle;

/** A printable field chart: the round field as seen, stars sized by magnitude, the target in the middle. */
public final class FieldChartDrawing {
    private static final int WIDTH = 360;
    private static final int HEIGHT = 482;
    private static final Vector2D MIDDLE = new Vector2D(180, 244);
    private static final double RADIUS = 146;
    private static final double TEXT = 14;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm zzz", Locale.ENGLISH);

    private final FieldChart chart;
    private final Palette palette;
    private final Svg svg;
    private final double unitsPerRad;

    private FieldChartDrawing(FieldChart chart, String optic, Palette palette) {
        this.chart = chart;
        this.palette = palette;
        this.unitsPerRad = RADIUS / (chart.field().radians() / 2);
        this.svg = new Svg(
                WIDTH,
                HEIGHT,
                "Finder chart for " + chart.target().label(),
                "The field of the " + optic + ", " + degrees(chart.field()) + " wide, with "
                        + chart.stars().size() + " stars, "
                        + words(chart.sky().view().orientation()) + ".",
                palette);
    }

    /**
     * The picture as SVG.
     *
     * @param optic name of the optic, e.g. {@code finder}
     * @param inner a smaller field to mark in the middle, of an eyepiece used after a finder; zero for none
     * @param zone time zone of the time shown
     */
    public static String svg(FieldChart chart, String optic, Angle inner, ZoneId zone, Palette palette) {
        FieldChartDrawing drawing = new FieldChartDrawing(chart, optic, palette);
        drawing.heading(optic, zone);
        drawing.directions();
        drawing.objects();
        drawing.stars();
        drawing.middle(inner);
        drawing.names();
        drawing.footing();
        return drawing.svg.finished();
    }

    private void heading(String optic, ZoneId zone) {
        svg.text(
                new Vector2D(12, 24),
                Anchor.START,
                TEXT + 2,
                palette.text(),
                chart.target().label());
        svg.text(
                new Vector2D(12, 44),
                Anchor.START,
                TEXT,
                palette.text(),
                optic + ", " + degrees(chart.field()) + ", "
                        + words(chart.sky().view().orientation()));
        svg.text(
                new Vector2D(12, 62),
                Anchor.START,
                TEXT,
                palette.text(),
                TIME.format(chart.moment().time().utc().atZone(zone)));
        svg.circle(Look.filled("none", palette.ink(), 2), MIDDLE, RADIUS);
    }

    /** Letters outside the field: directions of north, east and the zenith. */
    private void directions() {
        chart.sky().northward(chart.moment().site()).ifPresent(north -> direction(north, "N"));
        chart.sky().eastward(chart.moment().site()).ifPresent(east -> direction(east, "E"));
        chart.sky().zenithward().ifPresent(direction -> {
            Vector2D tip = onPaper(direction, RADIUS - 10);
            svg.line("zenith", Look.line(palette.guide(), 3), onPaper(direction, RADIUS), tip);
            svg.text(
                    onPaper(direction, RADIUS - 24).add(new Vector2D(0, 5)),
                    Anchor.MIDDLE,
                    TEXT - 2,
                    palette.text(),
                    "up");
        });
    }

    private void direction(Vector2D direction, String letter) {
        svg.line(Look.line(palette.ink(), 2), onPaper(direction, RADIUS), onPaper(direction, RADIUS + 7));
        svg.text(onPaper(direction, RADIUS + 19).add(new Vector2D(0, 5)), Anchor.MIDDLE, TEXT, palette.text(), letter);
    }

    private void objects() {
        for (FieldChart.Mark mark : chart.objects()) {
            double radius = Math.max(4, Math.min(RADIUS, mark.radius().radians() * unitsPerRad));
            svg.circle(Look.line(palette.axis(), 1.5).dashed("4 3"), onPaper(mark.place()), radius);
        }
    }

    private void stars() {
        svg.open("stars");
        for (FieldChart.Star star : chart.stars()) {
            svg.circle(
                    Look.filled(palette.ink(), palette.background(), 0.5),
                    onPaper(star.place()),
                    discRadius(star.magnitude()));
        }
        svg.close();
    }

    /**
     * Half a unit more per half magnitude: with area proportional to brightness, bright stars would hide their
     * surroundings.
     */
    private double discRadius(double magnitude) {
        return Math.min(7, 0.8 + 0.75 * Math.max(0, chart.faintest() - magnitude));
    }

    private void middle(Angle inner) {
        for (Vector2D direction : List.of(Vector2D.PLUS_I, Vector2D.MINUS_I, Vector2D.PLUS_J, Vector2D.MINUS_J)) {
            svg.line("target", Look.line(palette.axis(), 2), onPaper(direction, 11), onPaper(direction, 19));
        }
        double radius = inner.radians() / 2 * unitsPerRad;
        if (radius > 2 && radius < RADIUS) {
            svg.circle(Look.line(palette.axis(), 1), MIDDLE, radius);
        }
    }

    private void names() {
        LabelPlacer placer =
                new LabelPlacer(new Box(6, MIDDLE.getY() - RADIUS + 4, WIDTH - 6, MIDDLE.getY() + RADIUS - 4));
        placer.keepOff(Box.about(MIDDLE, 40, 40));
        chart.stars().stream().limit(60).forEach(star -> placer.shun(List.of(onPaper(star.place())), 6));
        for (FieldChart.Mark mark : chart.objects()) {
            // The target is named in the heading.
            if (!mark.label().equals(chart.target().label())) {
                label(placer, mark.label().replaceFirst(" \\(.*", ""), mark.place(), 6);
            }
        }
        for (FieldChart.Star star : chart.stars()) {
            star.name()
                    .filter(name -> !name.equals(chart.target().label()))
                    .ifPresent(name -> label(placer, name, star.place(), discRadius(star.magnitude())));
        }
    }

    private void label(LabelPlacer placer, String name, Vector2D place, double radius) {
        Box target = Box.about(onPaper(place), 2 * radius, 2 * radius);
        placer.place(new LabelPlacer.Wanted(List.of(name), List.of(target), 2, 26, 3, placed -> true))
                .ifPresent(placed -> svg.text(
                        new Vector2D(placed.anchorX(), placed.box().middle().getY() + 5),
                        placed.anchor(),
                        LabelPlacer.LETTER_SIZE,
                        palette.text(),
                        name));
    }

    private void footing() {
        double y = MIDDLE.getY() + RADIUS + 46;
        ScaleBar scale = ScaleBar.within(chart.field().times(0.25));
        double length = scale.length().radians() * unitsPerRad;
        svg.line(Look.line(palette.ink(), 2), new Vector2D(12, y), new Vector2D(12 + length, y));
        svg.text(new Vector2D(20 + length, y + 5), Anchor.START, TEXT, palette.text(), scale.words());
        svg.text(
                new Vector2D(WIDTH - 12, y + 5),
                Anchor.END,
                TEXT,
                palette.text(),
                String.format(Locale.ROOT, "stars to %.1f", chart.faintest()));
        if (!chart.sky().view().turned().equals(Angle.ZERO)) {
            svg.text(
                    new Vector2D(12, y + 26),
                    Anchor.START,
                    TEXT,
                    palette.text(),
                    "diagonal turned " + Math.round(chart.sky().view().turned().degrees()) + "°");
        }
    }

    private Vector2D onPaper(Vector2D place) {
        return new Vector2D(MIDDLE.getX() + unitsPerRad * place.getX(), MIDDLE.getY() - unitsPerRad * place.getY());
    }

    private static Vector2D onPaper(Vector2D direction, double distance) {
        return new Vector2D(MIDDLE.getX() + distance * direction.getX(), MIDDLE.getY() - distance * direction.getY());
    }

    private static String degrees(Angle angle) {
        return angle.degrees() >= 1.5
                ? String.format(Locale.ROOT, "%.1f° wide", angle.degrees())
                : String.format(Locale.ROOT, "%.0f′ wide", angle.arcminutes());
    }

    private static String words(Orientation orientation) {
        return switch (orientation) {
            case ERECT -> "as the eye sees it";
            case INVERTED -> "upside down";
            case MIRRORED -> "left and right swapped";
        };
    }
}
