package polewright.drawing.frame;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Canvas;
import polewright.drawing.LabelPlacer;
import polewright.drawing.Palette;
import polewright.drawing.Strokes;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;
import polewright.sky.angle.Angle;

/** The overlay on a frame's image, on a page and in a file: its stars, the pole and the axis. */
public final class FrameDrawing {
    private static final int MOST_RINGS = 220;
    private static final int MOST_NAMES = 10;
    // Names must not cover stars.
    private static final int BRIGHT_STARS = 12;
    private static final double MARGIN = 24;
    private static final double FAINTEST_RING = 5;
    private static final double BRIGHTEST_RING = 12;
    // In letters.
    private static final double ANYWHERE = 30;
    private static final double NEXT_TO_A_STAR = 0.8;

    private final FrameScene frame;
    private final Palette palette;
    private final Canvas canvas;
    private final double letters;
    private final LabelPlacer placer;

    private FrameDrawing(FrameScene frame, Canvas canvas, Palette palette) {
        this.frame = frame;
        this.palette = palette;
        this.canvas = canvas;
        this.letters = letters(frame.width());
        this.placer = new LabelPlacer(new Box(4, 4, frame.width() - 4.0, frame.height() - 4.0), letters);
    }

    /** Size of letters on a picture that a phone shows at a third of its width. */
    public static double letters(int width) {
        return Math.max(14, width / 34.0);
    }

    /** SVG text with a transparent background, to lie over the image. */
    public static String svg(FrameScene frame, Palette palette) {
        Svg svg = Svg.overlay(frame.width(), frame.height(), "Frame " + frame.name(), description(frame), palette);
        draw(frame, svg, palette);
        return svg.finished();
    }

    /** Draws it over an image. */
    public static void draw(FrameScene frame, Canvas canvas, Palette palette) {
        FrameDrawing drawing = new FrameDrawing(frame, canvas, palette);
        drawing.stars();
        drawing.lineToPole();
        drawing.compass();
        drawing.scale();
        frame.axis().ifPresent(axis -> drawing.mark("axis", axis));
        drawing.mark("pole", frame.pole());
        drawing.names();
    }

    /** A description for people who cannot see the picture. */
    public static String description(FrameScene frame) {
        String stars = frame.stars().size() + " of " + frame.found() + " stars matched. ";
        return stars
                + where("The pole", frame.pole())
                + frame.axis().map(axis -> " " + where("The axis", axis)).orElse("");
    }

    private static String where(String what, FrameScene.Mark mark) {
        String away = size(mark.away()) + " from the centre";
        return what + " is " + (mark.isOnFrame() ? "on the frame, " : "off the frame, ") + away + ", "
                + side(mark.direction()) + ".";
    }

    /** A direction in the picture, in words. */
    private static String side(double direction) {
        String[] sides = {
            "to the right",
            "to the lower right",
            "down",
            "to the lower left",
            "to the left",
            "to the upper left",
            "up",
            "to the upper right"
        };
        return sides[Math.floorMod(Math.round(direction / (Math.PI / 4)), sides.length)];
    }

    private void stars() {
        canvas.open("stars");
        frame.unmatched().stream().limit(MOST_RINGS).forEach(star -> unmatched(canvas, palette, at(star)));
        List<FrameScene.Star> drawn =
                frame.stars().subList(0, Math.min(MOST_RINGS, frame.stars().size()));
        for (FrameScene.Star star : drawn) {
            matched(canvas, palette, at(star.place()), ring(star));
            placer.shun(List.of(at(star.place())), letters / 2);
        }
        drawn.stream()
                .limit(BRIGHT_STARS)
                .forEach(star -> placer.keepOff(Box.about(at(star.place()), 2 * ring(star), 2 * ring(star))));
        canvas.close();
    }

    /** The mark of a matched star. */
    static void matched(Canvas canvas, Palette palette, Vector2D at, double radius) {
        canvas.circle(Look.line(palette.ink(), 2), at, radius);
    }

    /** The mark of a star that was not matched: two ticks that point at it from below. */
    static void unmatched(Canvas canvas, Palette palette, Vector2D at) {
        Look look = Look.line(palette.guide(), 2.5);
        canvas.line(look, moved(at, -12, 12), moved(at, -6, 6));
        canvas.line(look, moved(at, 12, 12), moved(at, 6, 6));
    }

    private double ring(FrameScene.Star star) {
        double brightest = frame.stars().get(0).magnitude();
        return Math.max(FAINTEST_RING, BRIGHTEST_RING - 1.4 * Math.max(0, star.magnitude() - brightest));
    }

    /** The direction in which the screws have to move the axis. */
    private void lineToPole() {
        Optional<FrameScene.Place> from = frame.axis().flatMap(FrameScene.Mark::place);
        Optional<FrameScene.Place> to = frame.pole().place();
        if (from.isPresent() && to.isPresent()) {
            canvas.line("way", Look.line(palette.axis(), 2).dashed("2 9"), at(from.get()), at(to.get()));
            placer.shun(Strokes.sampled(List.of(at(from.get()), at(to.get())), letters / 2), letters / 2);
        }
    }

    private void mark(String name, FrameScene.Mark mark) {
        boolean isAxis = "axis".equals(name);
        String colour = isAxis ? palette.axis() : palette.text();
        canvas.open(name);
        Box box;
        String label = mark.label();
        if (mark.isOnFrame() && mark.place().isPresent()) {
            Vector2D at = at(mark.place().get());
            double arm = letters * 0.7;
            if (isAxis) {
                axis(canvas, palette, at, arm);
                if (!mark.outline().isEmpty()) {
                    canvas.polygon(
                            Look.line(colour, 2),
                            mark.outline().stream().map(FrameDrawing::at).toArray(Vector2D[]::new));
                }
            } else {
                pole(canvas, palette, at, arm);
            }
            box = Box.about(at, 3 * arm, 3 * arm);
        } else {
            box = arrow(mark, colour);
            label += ", " + size(mark.away()) + " from the centre";
        }
        placer.keepOff(box);
        name(box, label, ANYWHERE, colour);
        canvas.close();
    }

    /** The mark of the axis. */
    static void axis(Canvas canvas, Palette palette, Vector2D at, double arm) {
        Look look = Look.line(palette.axis(), 3);
        canvas.line(look, moved(at, -arm, -arm), moved(at, arm, arm));
        canvas.line(look, moved(at, -arm, arm), moved(at, arm, -arm));
    }

    /** The mark of the pole. */
    static void pole(Canvas canvas, Palette palette, Vector2D at, double arm) {
        Look look = Look.line(palette.text(), 3);
        canvas.line(look, moved(at, -1.5 * arm, 0), moved(at, 1.5 * arm, 0));
        canvas.line(look, moved(at, 0, -1.5 * arm), moved(at, 0, 1.5 * arm));
        canvas.circle(Look.line(palette.text(), 2), at, 0.8 * arm);
    }

    /** An arrow at the edge toward something off the frame; returns what it covers. */
    private Box arrow(FrameScene.Mark mark, String colour) {
        Vector2D edge = at(mark.edge());
        Vector2D tip = new Vector2D(
                Math.max(6, Math.min(frame.width() - 6.0, edge.getX())),
                Math.max(6, Math.min(frame.height() - 6.0, edge.getY())));
        Tilted along = new Tilted(tip, -mark.direction());
        canvas.polygon(
                Look.filled(colour, palette.background(), 1),
                tip,
                along.at(-letters, 0.5 * letters),
                along.at(-letters, -0.5 * letters));
        return Box.about(along.at(-0.5 * letters, 0), 1.2 * letters, 1.2 * letters);
    }

    /** Two short arrows in a corner, toward north and east. */
    private void compass() {
        double arm = 2.2 * letters;
        Vector2D foot = new Vector2D(MARGIN + 1.5 * arm, frame.height() - MARGIN - 1.5 * arm);
        canvas.open("compass");
        toward(foot, frame.north(), arm, "N");
        toward(foot, frame.east(), arm, "E");
        canvas.close();
        placer.keepOff(Box.about(foot, 3.2 * arm, 3.2 * arm));
    }

    private void toward(Vector2D foot, double direction, double arm, String letter) {
        Tilted way = new Tilted(foot, -direction);
        canvas.line(Look.line(palette.text(), 2), foot, way.at(arm, 0));
        Vector2D middle = way.at(arm + 0.6 * letters, 0);
        canvas.text(moved(middle, 0, 0.35 * letters), Anchor.MIDDLE, letters, palette.text(), letter);
    }

    private void scale() {
        double length = frame.points(frame.scale().length());
        Vector2D to = new Vector2D(frame.width() - MARGIN, frame.height() - MARGIN);
        Vector2D from = moved(to, -length, 0);
        Look look = Look.line(palette.text(), 3);
        canvas.open("scale");
        canvas.line(look, from, to);
        canvas.line(look, moved(from, 0, -6), moved(from, 0, 6));
        canvas.line(look, moved(to, 0, -6), moved(to, 0, 6));
        Vector2D middle = moved(to, -length / 2, -10);
        canvas.text(
                middle, Anchor.MIDDLE, letters, palette.text(), frame.scale().words());
        canvas.close();
        placer.keepOff(Box.about(middle, length + letters, 3 * letters));
    }

    private void names() {
        canvas.open("names");
        int written = 0;
        for (FrameScene.Star star : frame.stars()) {
            if (star.name().isPresent() && written < MOST_NAMES) {
                Box ring = Box.about(at(star.place()), 2 * ring(star), 2 * ring(star));
                written += name(ring, star.name().get(), NEXT_TO_A_STAR, palette.text()) ? 1 : 0;
            }
        }
        canvas.close();
    }

    /** Writes a name no farther from what it names than a number of letters; false if there is no room. */
    private boolean name(Box what, String words, double reach, String colour) {
        Optional<LabelPlacer.Placed> place = placer.place(new LabelPlacer.Wanted(
                List.of(words), List.of(what), letters / 4, reach * letters, letters / 4, any -> true));
        place.ifPresent(label -> label.write(canvas, palette, colour));
        return place.isPresent();
    }

    private static Vector2D at(FrameScene.Place place) {
        return new Vector2D(place.x(), place.y());
    }

    private static Vector2D moved(Vector2D point, double right, double down) {
        return new Vector2D(point.getX() + right, point.getY() + down);
    }

    private static String size(Angle angle) {
        if (angle.degrees() >= 1) {
            return angle.degrees() == Math.rint(angle.degrees())
                    ? String.format(Locale.ROOT, "%.0f°", angle.degrees())
                    : String.format(Locale.ROOT, "%.1f°", angle.degrees());
        }
        return angle.arcminutes() >= 1
                ? String.format(Locale.ROOT, "%.0f′", angle.arcminutes())
                : String.format(Locale.ROOT, "%.0f″", angle.arcseconds());
    }
}
