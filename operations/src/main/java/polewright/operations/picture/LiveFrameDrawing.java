package polewright.operations.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.sky.angle.Angle;

/** Draws a frame's overlay, to lie over its {@link ScreenPicture}: SVG with a transparent background. */
public final class LiveFrameDrawing {
    private static final int MOST_RINGS = 150;
    private static final int MOST_NAMES = 8;
    private static final double MARGIN = 24;
    private static final double FAINTEST_RING = 5;
    private static final double BRIGHTEST_RING = 12;
    private static final double LETTERS_PER_EM = 0.6;

    private final LiveFrame frame;
    private final Palette palette;
    private final Svg svg;
    private final double letters;
    private final List<Box> taken = new ArrayList<>();

    private LiveFrameDrawing(LiveFrame frame, Palette palette) {
        this.frame = frame;
        this.palette = palette;
        this.svg = Svg.overlay(frame.width(), frame.height(), "Frame " + frame.name(), description(frame), palette);
        // A phone shows the picture at a third of its width.
        this.letters = Math.max(14, frame.width() / 34.0);
    }

    /** The SVG text. */
    public static String of(LiveFrame frame, Palette palette) {
        LiveFrameDrawing drawing = new LiveFrameDrawing(frame, palette);
        drawing.draw();
        return drawing.svg.finished();
    }

    /** A description for people who cannot see the picture. */
    public static String description(LiveFrame frame) {
        String stars = frame.stars().size() + " of " + frame.found() + " stars matched. ";
        return stars
                + where("The pole", frame.pole())
                + frame.axis().map(axis -> " " + where("The axis", axis)).orElse("");
    }

    private static String where(String what, LiveFrame.Mark mark) {
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

    private void draw() {
        svg.open("stars");
        for (LiveFrame.Star star :
                frame.stars().subList(0, Math.min(MOST_RINGS, frame.stars().size()))) {
            svg.circle(Look.line(palette.ink(), 1.5), at(star.place()), ring(star));
        }
        svg.close();
        lineToPole();
        frame.axis().ifPresent(axis -> mark("axis", axis));
        mark("pole", frame.pole());
        compass();
        scale();
        names();
    }

    private double ring(LiveFrame.Star star) {
        double brightest = frame.stars().get(0).magnitude();
        return Math.max(FAINTEST_RING, BRIGHTEST_RING - 1.4 * Math.max(0, star.magnitude() - brightest));
    }

    /** The direction in which the screws have to move the axis. */
    private void lineToPole() {
        Optional<LiveFrame.Place> from = frame.axis().flatMap(LiveFrame.Mark::place);
        Optional<LiveFrame.Place> to = frame.pole().place();
        if (from.isPresent() && to.isPresent()) {
            svg.line("way", Look.line(palette.axis(), 2).dashed("2 9"), at(from.get()), at(to.get()));
        }
    }

    private void mark(String name, LiveFrame.Mark mark) {
        boolean isAxis = "axis".equals(name);
        String colour = isAxis ? palette.axis() : palette.text();
        svg.open(name);
        if (!mark.isOnFrame() || mark.place().isEmpty()) {
            arrow(mark, colour);
            svg.close();
            return;
        }
        Vector2D at = at(mark.place().get());
        double arm = letters * 0.7;
        if (isAxis) {
            if (!mark.outline().isEmpty()) {
                svg.polygon(
                        Look.line(colour, 2),
                        mark.outline().stream().map(LiveFrameDrawing::at).toArray(Vector2D[]::new));
            }
            svg.line(Look.line(colour, 3), moved(at, -arm, -arm), moved(at, arm, arm));
            svg.line(Look.line(colour, 3), moved(at, -arm, arm), moved(at, arm, -arm));
        } else {
            svg.line(Look.line(colour, 3), moved(at, -1.5 * arm, 0), moved(at, 1.5 * arm, 0));
            svg.line(Look.line(colour, 3), moved(at, 0, -1.5 * arm), moved(at, 0, 1.5 * arm));
            svg.circle(Look.line(colour, 2), at, 0.8 * arm);
        }
        taken.add(Box.about(at, 3 * arm, 3 * arm));
        placeNextTo(at, 2 * arm, mark.label(), colour);
        svg.close();
    }

    private void arrow(LiveFrame.Mark mark, String colour) {
        Vector2D way = new Vector2D(Math.cos(mark.direction()), Math.sin(mark.direction()));
        Vector2D across = new Vector2D(-way.getY(), way.getX());
        Vector2D tip = inset(at(mark.edge()), 6);
        Vector2D foot = tip.subtract(letters, way);
        svg.polygon(
                Look.filled(colour, palette.background(), 1),
                tip,
                foot.add(0.5 * letters, across),
                foot.subtract(0.5 * letters, across));
        taken.add(Box.about(foot, 2 * letters, 2 * letters));
        String label = mark.label() + ", " + size(mark.away()) + " from the centre";
        // Pole and axis are often in the same direction: the second label is placed farther in.
        for (int row = 1; row <= 8; row++) {
            if (placeNextTo(foot.subtract(0.8 * row * letters, way), 0.4 * letters, label, colour)) {
                return;
            }
        }
    }

    /** Two short arrows in a corner, toward north and east. */
    private void compass() {
        double arm = 2.2 * letters;
        Vector2D foot = new Vector2D(MARGIN + 1.5 * arm, frame.height() - MARGIN - 1.5 * arm);
        svg.open("compass");
        toward(foot, frame.north(), arm, "N");
        toward(foot, frame.east(), arm, "E");
        svg.close();
        taken.add(Box.about(foot, 3.2 * arm, 3.2 * arm));
    }

    private void toward(Vector2D foot, double direction, double arm, String letter) {
        Vector2D way = new Vector2D(Math.cos(direction), Math.sin(direction));
        svg.line(Look.line(palette.text(), 2), foot, foot.add(arm, way));
        Vector2D middle = foot.add(arm + 0.6 * letters, way);
        svg.text(moved(middle, 0, 0.35 * letters), Anchor.MIDDLE, letters, palette.text(), letter);
    }

    private void scale() {
        double right = frame.width() - MARGIN;
        double y = frame.height() - MARGIN;
        Vector2D from = new Vector2D(right - frame.scale().points(), y);
        Vector2D to = new Vector2D(right, y);
        Look look = Look.line(palette.text(), 3);
        svg.open("scale");
        svg.line(look, from, to);
        svg.line(look, moved(from, 0, -6), moved(from, 0, 6));
        svg.line(look, moved(to, 0, -6), moved(to, 0, 6));
        Vector2D middle = new Vector2D(right - frame.scale().points() / 2, y - 10);
        svg.text(
                middle,
                Anchor.MIDDLE,
                letters,
                palette.text(),
                size(frame.scale().sky()));
        svg.close();
        taken.add(Box.about(middle, frame.scale().points() + letters, 3 * letters));
    }

    private void names() {
        svg.open("names");
        int written = 0;
        for (LiveFrame.Star star : frame.stars()) {
            if (star.name().isPresent() && written < MOST_NAMES) {
                double gap = ring(star) + 4;
                written += placeNextTo(at(star.place()), gap, star.name().get(), palette.text()) ? 1 : 0;
            }
        }
        svg.close();
    }

    /**
     * Places a label to the right of a point, or to the left, below or above it, where there is room; otherwise not
     * at all.
     */
    private boolean placeNextTo(Vector2D point, double gap, String words, String colour) {
        double width = LETTERS_PER_EM * letters * words.length();
        Box paper = new Box(4, 4, frame.width() - 4.0, frame.height() - 4.0);
        // Long labels near the edge are moved inward.
        double across = Math.max(paper.left() + width / 2, Math.min(paper.right() - width / 2, point.getX()));
        List<Vector2D> middles = List.of(
                moved(point, gap + width / 2, 0),
                moved(point, -gap - width / 2, 0),
                new Vector2D(across, point.getY() + gap + 0.8 * letters),
                new Vector2D(across, point.getY() - gap - 0.8 * letters));
        for (Vector2D middle : middles) {
            Box box = Box.about(middle, width, 1.2 * letters);
            boolean fits = box.left() >= paper.left()
                    && box.right() <= paper.right()
                    && box.top() >= paper.top()
                    && box.bottom() <= paper.bottom();
            if (fits && taken.stream().noneMatch(box::meets)) {
                svg.text(moved(middle, 0, 0.35 * letters), Anchor.MIDDLE, letters, colour, words);
                taken.add(box);
                return true;
            }
        }
        return false;
    }

    /** The point nearest to this one that keeps this distance from the edge. */
    private Vector2D inset(Vector2D point, double by) {
        return new Vector2D(
                Math.max(by, Math.min(frame.width() - by, point.getX())),
                Math.max(by, Math.min(frame.height() - by, point.getY())));
    }

    private static Vector2D at(LiveFrame.Place place) {
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
