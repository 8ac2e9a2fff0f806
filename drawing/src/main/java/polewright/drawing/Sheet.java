package polewright.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.LabelPlacer.Wanted;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * The paper of a picture. Lines and marks are drawn at once, names at the end, where there is room. Widths of lines, sizes
 * of letters and shapes of marks are defined here, so that they are the same in all pictures.
 *
 * <p>Sizes are those of a sheet as wide as a phone's page, {@value #WIDTH}.
 */
public final class Sheet {
    public static final int WIDTH = 360;
    public static final double MARGIN = 10;
    public static final double HEADING = 16;
    /** Size of letters. */
    public static final double LETTERS = LabelPlacer.LETTER_SIZE;
    /** Distance of lines of text. */
    public static final double LINE = 18;

    private static final double BASELINE = 12;
    private static final double TIP = 9;
    private static final double STEP = 5;
    private static final double ON_A_LINE = 14;
    private static final double REACH = 90;
    private static final double AROUND = 4;
    // One line if it fits without covering anything, otherwise narrower and narrower blocks.
    private static final int[] WRAPPED_AT = {24, 16, 11};
    private static final int MOST_LINES = 3;

    /** A label to be placed at the end. */
    private record Named(Box target, String words, String colour) {}

    private final Svg svg;
    private final Palette palette;
    private final LabelPlacer placer;
    private final List<Named> names = new ArrayList<>();

    /** @param description the content, in whole sentences */
    public Sheet(int width, int height, String title, String description, Palette palette) {
        this.palette = palette;
        svg = new Svg(width, height, title, description, palette);
        placer = new LabelPlacer(new Box(AROUND, AROUND, width - AROUND, height - AROUND));
    }

    /** A sheet as wide as a phone's page, with its title as its heading. */
    public Sheet(int height, String title, String description, Palette palette) {
        this(WIDTH, height, title, description, palette);
        heading(title);
    }

    public Svg svg() {
        return svg;
    }

    public Palette palette() {
        return palette;
    }

    public void heading(String words) {
        svg.text(new Vector2D(MARGIN, 22), Anchor.START, HEADING, palette.text(), words);
        placer.keepOff(new Box(0, 0, MARGIN + Lettering.width(words, HEADING), 34));
    }

    /** A line of text from the left margin. */
    public void write(double baseline, String words) {
        write(new Vector2D(MARGIN, baseline), Anchor.START, words);
    }

    public void write(Vector2D at, Anchor anchor, String words) {
        write(at, anchor, words, palette.text());
    }

    public void write(Vector2D at, Anchor anchor, String words, String colour) {
        svg.text(at, anchor, LETTERS, colour, words);
        double width = Lettering.width(words, LETTERS);
        double left = anchor == Anchor.START ? at.getX() : at.getX() - (anchor == Anchor.END ? width : width / 2);
        placer.keepOff(new Box(left, at.getY() - BASELINE, left + width, at.getY() + AROUND));
    }

    /** Outlines. */
    public Look edge() {
        return Look.line(palette.ink(), 2);
    }

    /** Ticks, and curves of which there are many. */
    public Look thin() {
        return Look.line(palette.ink(), 1.2);
    }

    /** Lines that only guide the eye. */
    public Look faint() {
        return Look.line(palette.guide(), 1.2).dashed("4 5");
    }

    /** Lines of a grid. */
    public Look grid() {
        return Look.line(palette.guide(), 0.7).dashed("2 3");
    }

    /** What is measured. */
    public Look measured() {
        return Look.line(palette.axis(), 2.4);
    }

    /** What matters most. */
    public Look bold() {
        return Look.line(palette.axis(), 4);
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
        placer.shun(Strokes.sampled(points, STEP), ON_A_LINE);
    }

    public void keepOff(Box box) {
        placer.keepOff(box);
    }

    public void star(Vector2D at, double radius) {
        svg.circle(Look.filled(palette.ink(), palette.background(), 0.5), at, radius);
        placer.keepOff(Box.about(at, 2 * radius, 2 * radius));
    }

    /** The celestial pole. */
    public void pole(Vector2D at) {
        double arm = 8;
        svg.line("pole", bold(), at.subtract(new Vector2D(arm, 0)), at.add(new Vector2D(arm, 0)));
        svg.line(bold(), at.subtract(new Vector2D(0, arm)), at.add(new Vector2D(0, arm)));
        Box mark = Box.about(at, 2 * arm, 2 * arm);
        placer.keepOff(mark);
        names.add(new Named(mark, "pole", palette.axis()));
    }

    /** A length in the picture, with its meaning to the right. */
    public void scaleBar(Vector2D from, double length, String words) {
        Vector2D to = from.add(new Vector2D(length, 0));
        svg.line("scale", measured(), from, to);
        write(to.add(new Vector2D(8, 5)), Anchor.START, words);
    }

    /** Text at a fixed place, centred on it. */
    public void letters(Vector2D middle, double size, String colour, String words) {
        double half = Lettering.width(words, size) / 2;
        double x = Math.max(MARGIN / 2 + half, Math.min(WIDTH - MARGIN / 2 - half, middle.getX()));
        Vector2D within = new Vector2D(x, middle.getY());
        svg.text(within.add(new Vector2D(0, size / 3)), Anchor.MIDDLE, size, colour, words);
        placer.keepOff(Box.about(within, 2 * half, size));
    }

    public void name(Vector2D at, String words) {
        name(Box.at(at), words);
    }

    public void name(Box what, String words) {
        names.add(new Named(what, words, palette.text()));
    }

    /** The label of the value to be entered. */
    public void figure(Vector2D at, String words) {
        names.add(new Named(Box.at(at), words, palette.axis()));
    }

    public String finished() {
        svg.open("names");
        for (Named named : names) {
            placer.place(wanted(named)).ifPresent(placed -> placed.write(svg, palette, named.colour()));
        }
        svg.close();
        return svg.finished();
    }

    private static Wanted[] wanted(Named named) {
        return wrapped(named.words())
                .map(lines -> new Wanted(lines, List.of(named.target()), 8, REACH, 4, place -> true))
                .toArray(Wanted[]::new);
    }

    private static Stream<List<String>> wrapped(String words) {
        return words.contains("\n")
                ? Stream.of(words.lines().toList())
                : IntStream.of(WRAPPED_AT)
                        .mapToObj(letters -> Lettering.wrapped(words, letters, MOST_LINES))
                        .filter(lines -> lines.stream().noneMatch(line -> line.endsWith("…")))
                        .distinct();
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
