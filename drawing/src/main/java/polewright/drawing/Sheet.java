package polewright.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.LabelPlacer.Placed;
import polewright.drawing.Svg.Look;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** Paper for a sketch: lines and arrows are drawn at once, labels at the end, where there is room. */
public final class Sheet {
    public static final int WIDTH = 360;
    public static final double MARGIN = 10;
    public static final double HEADING = 16;
    private static final double BASELINE = 12;
    private static final double TIP = 9;
    private static final double STEP = 5;
    private static final double ON_A_LINE = 14;
    private static final double REACH = 90;

    /** A label to be placed at the end. */
    private record Named(Vector2D at, String words, String colour) {}

    private final Svg svg;
    private final Palette palette;
    private final LabelPlacer placer;
    private final List<Named> names = new ArrayList<>();

    /** @param description the content, in whole sentences */
    public Sheet(int height, String title, String description, Palette palette) {
        this.palette = palette;
        svg = new Svg(WIDTH, height, title, description, palette);
        placer = new LabelPlacer(new Box(4, 34, WIDTH - 4, height - 4));
        svg.text(new Vector2D(MARGIN, 22), Svg.Anchor.START, HEADING, palette.text(), title);
    }

    public Svg svg() {
        return svg;
    }

    public Palette palette() {
        return palette;
    }

    public Look edge() {
        return Look.line(palette.ink(), 2);
    }

    public Look faint() {
        return Look.line(palette.guide(), 1.2).dashed("4 5");
    }

    public Look measured() {
        return Look.line(palette.axis(), 2.4);
    }

    public Look metal() {
        return Look.filled(palette.metal(), palette.ink(), 1.6);
    }

    public void line(String name, Look look, Vector2D from, Vector2D to) {
        svg.line(name, look, from, to);
        placer.shun(Strokes.sampled(List.of(from, to), STEP), ON_A_LINE);
    }

    /** A line with an arrowhead at its end. */
    public void arrow(String name, Look look, Vector2D from, Vector2D to) {
        line(name, look, from, to);
        head(look.stroke(), from, to);
    }

    public void head(String colour, Vector2D from, Vector2D to) {
        Tilted tip = Tilted.along(from, to);
        svg.polygon(Look.filled(colour, colour, 1), tip.at(2, 0), tip.at(-TIP, 5), tip.at(-TIP, -5));
    }

    /** An arc with an arrowhead at its end, clockwise positive; angles clockwise from the top of the paper. */
    public void sweep(String name, Look look, Vector2D centre, double radius, Angle from, Angle clockwise) {
        double begin = Math.PI / 2 - from.radians();
        List<Vector2D> points = Strokes.arc(centre, radius, begin, -clockwise.radians());
        svg.open(name);
        svg.polyline(look, points);
        if (Math.abs(clockwise.radians()) * radius > 2 * TIP) {
            svg.arcHead(look.stroke(), centre, radius, begin - clockwise.radians(), clockwise.radians() < 0);
        }
        svg.close();
        placer.shun(Strokes.sampled(points, STEP), ON_A_LINE);
    }

    public void shun(List<Vector2D> points) {
        placer.shun(points, ON_A_LINE);
    }

    public void keepOff(Box box) {
        placer.keepOff(box);
    }

    public void star(Vector2D at, double radius) {
        svg.circle(Look.filled(palette.ink(), palette.background(), 0.5), at, radius);
        placer.keepOff(Box.about(at, 2 * radius, 2 * radius));
    }

    /** Text at a fixed place, centred on it. */
    public void letters(Vector2D middle, double size, String colour, String words) {
        double half = Lettering.width(words, size) / 2;
        double x = Math.max(MARGIN / 2 + half, Math.min(WIDTH - MARGIN / 2 - half, middle.getX()));
        Vector2D within = new Vector2D(x, middle.getY());
        svg.text(within.add(new Vector2D(0, size / 3)), Svg.Anchor.MIDDLE, size, colour, words);
        placer.keepOff(Box.about(within, 2 * half, size));
    }

    public void name(Vector2D at, String words) {
        names.add(new Named(at, words, palette.text()));
    }

    /** The label of the value to be entered. */
    public void figure(Vector2D at, String words) {
        names.add(new Named(at, words, palette.axis()));
    }

    public String finished() {
        svg.open("names");
        for (Named named : names) {
            Optional<Placed> found = placer.place(
                    new LabelPlacer.Wanted(lines(named.words()), List.of(Box.at(named.at())), 8, REACH, 4, p -> true));
            found.ifPresent(placed -> write(placed, named.colour()));
        }
        svg.close();
        return svg.finished();
    }

    private static List<String> lines(String words) {
        return words.contains("\n") ? words.lines().toList() : Lettering.wrapped(words, 24, 3);
    }

    private void write(Placed placed, String colour) {
        if (placed.needsLeader()) {
            svg.line(Look.line(palette.guide(), 1), placed.leaderStart(), placed.pointedAt());
        }
        double y = placed.box().top() + BASELINE;
        for (String line : placed.lines()) {
            svg.text(new Vector2D(placed.anchorX(), y), placed.anchor(), LabelPlacer.LETTER_SIZE, colour, line);
            y += LabelPlacer.LINE_HEIGHT;
        }
    }

    /** The point at a distance from {@code centre}, at an angle clockwise from the top of the paper. */
    public static Vector2D clockwise(Vector2D centre, double radius, Angle fromTop) {
        return Svg.around(centre, radius, Math.PI / 2 - fromTop.radians());
    }

    /** In degrees, as typed: {@code 54.6°}. */
    public static String degrees(Angle angle) {
        double rounded = Math.rint(angle.degrees() * 10) / 10;
        return PlainNumber.of(rounded == 0 ? 0 : rounded) + "°";
    }

    public static String figure(double value) {
        return String.format(Locale.ROOT, "%s", PlainNumber.of(Math.rint(value * 1000) / 1000));
    }
}
