package polewright.drawing.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;

/**
 * The field of an optic while the tube is swung back and forth in right ascension: every star traces an arc, and all
 * arcs are concentric. The centre of rotation is not marked: the picture is for practising to find it. The field has a
 * clock face around it and a grid of tenths.
 */
public final class RockedFieldDrawing {
    private static final int WIDTH = 360;
    private static final int HEIGHT = 430;
    private static final Vector2D MIDDLE = new Vector2D(180, 222);
    private static final double RADIUS = 142;
    private static final double TEXT = 14;
    private static final int STEPS_OF_AN_ARC = 12;
    private static final int TENTHS = 10;

    private final RockedField rocked;
    private final Palette palette;
    private final Svg svg;
    private final double unitsPerRad;

    private RockedFieldDrawing(RockedField rocked, String optic, Palette palette) {
        this.rocked = rocked;
        this.palette = palette;
        this.unitsPerRad = RADIUS / (rocked.field().radians() / 2);
        this.svg = new Svg(
                WIDTH,
                HEIGHT,
                "In the " + optic + ", swinging in right ascension",
                "A round field with " + rocked.stars().size()
                        + " stars, each of which draws an arc about the centre of rotation.",
                palette);
    }

    /**
     * The picture as SVG.
     *
     * @param optic name of the optic, e.g. {@code finder}
     */
    public static String svg(RockedField rocked, String optic, Palette palette) {
        RockedFieldDrawing drawing = new RockedFieldDrawing(rocked, optic, palette);
        drawing.heading(optic);
        drawing.tenths();
        drawing.clock();
        rocked.stars().forEach(drawing::arc);
        drawing.stars();
        drawing.footing();
        return drawing.svg.finished();
    }

    private void heading(String optic) {
        svg.text(
                new Vector2D(12, 26),
                Anchor.START,
                TEXT + 2,
                palette.text(),
                String.format(
                        Locale.ROOT, "%s, %.1f° wide", optic, rocked.field().degrees()));
        svg.text(
                new Vector2D(12, 46),
                Anchor.START,
                TEXT,
                palette.text(),
                "all arcs share one centre: the centre of" + " rotation");
    }

    private void tenths() {
        svg.open("tenths");
        for (int i = 1; i < TENTHS; i++) {
            double off = RADIUS * (2.0 * i / TENTHS - 1);
            double half = Math.sqrt(RADIUS * RADIUS - off * off);
            Look look = i == TENTHS / 2 ? Look.line(palette.metal(), 1.5) : Look.line(palette.metal(), 0.75);
            svg.line(look, MIDDLE.add(new Vector2D(off, -half)), MIDDLE.add(new Vector2D(off, half)));
            svg.line(look, MIDDLE.add(new Vector2D(-half, off)), MIDDLE.add(new Vector2D(half, off)));
        }
        svg.close();
    }

    private void clock() {
        svg.circle(Look.line(palette.ink(), 2), MIDDLE, RADIUS);
        for (int hour = 1; hour <= 12; hour++) {
            double angle = Math.PI * (0.5 - hour / 6.0);
            svg.line(
                    Look.line(palette.ink(), 2),
                    Svg.around(MIDDLE, RADIUS, angle),
                    Svg.around(MIDDLE, RADIUS + 6, angle));
            svg.text(
                    Svg.around(MIDDLE, RADIUS + 17, angle).add(new Vector2D(0, 5)),
                    Anchor.MIDDLE,
                    TEXT,
                    palette.text(),
                    String.valueOf(hour));
        }
    }

    /** As far as the star stays in the field. */
    private void arc(RockedField.Star star) {
        double radius = star.fromStill().getNorm();
        double middle = Math.atan2(star.fromStill().getY(), star.fromStill().getX());
        List<Vector2D> points = new ArrayList<>();
        for (int i = -STEPS_OF_AN_ARC; i <= STEPS_OF_AN_ARC; i++) {
            double angle = middle + rocked.rocked().radians() * i / STEPS_OF_AN_ARC;
            Vector2D place = rocked.still().add(new Vector2D(radius * Math.cos(angle), radius * Math.sin(angle)));
            if (place.getNorm() <= rocked.field().radians() / 2) {
                points.add(onPaper(place));
            }
        }
        if (points.size() > 1) {
            svg.polyline(Look.line(palette.guide(), star.name().isPresent() ? 2 : 1), points);
        }
    }

    private void stars() {
        svg.open("stars");
        double faintest = rocked.stars().stream()
                .mapToDouble(RockedField.Star::magnitude)
                .max()
                .orElse(0);
        for (RockedField.Star star : rocked.stars()) {
            svg.circle(
                    Look.filled(palette.ink(), palette.background(), 0.5),
                    onPaper(rocked.fromMiddle(star)),
                    Math.min(7, 1 + 0.75 * Math.max(0, faintest - star.magnitude())));
        }
        svg.close();
        rocked.stars().forEach(star -> star.name().ifPresent(name -> name(star, name)));
    }

    private void name(RockedField.Star star, String name) {
        Vector2D at = onPaper(rocked.fromMiddle(star));
        boolean isRight = at.getX() > MIDDLE.getX();
        svg.text(
                at.add(new Vector2D(isRight ? -11 : 11, 5)),
                isRight ? Anchor.END : Anchor.START,
                TEXT,
                palette.axis(),
                name);
    }

    private void footing() {
        double y = MIDDLE.getY() + RADIUS + 44;
        double tenth = 2 * RADIUS / TENTHS;
        svg.line(Look.line(palette.ink(), 2), new Vector2D(12, y), new Vector2D(12 + tenth, y));
        svg.text(new Vector2D(20 + tenth, y + 5), Anchor.START, TEXT, palette.text(), "a tenth (0.1) of the field");
    }

    private Vector2D onPaper(Vector2D place) {
        return new Vector2D(MIDDLE.getX() + unitsPerRad * place.getX(), MIDDLE.getY() - unitsPerRad * place.getY());
    }
}
