package polewright.drawing.zone;

import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;

/** Rulers along the left and bottom of a map, in round steps from the true pole, with direction names. */
final class Rulers {
    private static final double SIZE = 14;
    private static final double BESIDE = 9;
    private static final double TICK = 4;

    private final Svg svg;
    private final Palette palette;
    private final ZoneScene scene;
    private final MapView view;

    Rulers(Svg svg, Palette palette, ZoneScene scene, MapView view) {
        this.svg = svg;
        this.palette = palette;
        this.scene = scene;
        this.view = view;
    }

    /** The areas of the map covered by the direction names. */
    static List<Box> boxes(ZoneScene scene, MapView view) {
        Box area = view.area();
        double down = Lettering.width("down", SIZE) - 2 * BESIDE + 6;
        return List.of(
                new Box(area.left(), area.bottom() - 18, area.left() + down, area.bottom()),
                new Box(area.left(), area.top(), area.left() + 12, area.top() + 18));
    }

    void draw() {
        Box area = view.area();
        double x = area.left() - BESIDE;
        double y = area.bottom() + BESIDE;
        double first = area.left() + Lettering.width(scene.leftWord(), SIZE) + 6;
        double last = area.right() - Lettering.width(scene.rightWord(), SIZE) - 6;
        double top = area.top() + 22;
        double bottom = area.bottom() - 22;
        Look thin = Look.line(palette.guide(), 1.2);
        svg.line("ruler", thin, new Vector2D(x, top), new Vector2D(x, bottom));
        svg.line("ruler", thin, new Vector2D(first, y), new Vector2D(last, y));
        Vector2D pole = view.onPaper(Vector2D.ZERO);
        double step = view.scaleBar().length().arcminutes() * view.unitsPerArcmin();
        for (double at = firstTick(pole.getY(), step, top); at <= bottom; at += step) {
            svg.line(thin, new Vector2D(x - TICK, at), new Vector2D(x, at));
        }
        for (double at = firstTick(pole.getX(), step, first); at <= last; at += step) {
            svg.line(thin, new Vector2D(at, y), new Vector2D(at, y + TICK));
        }
        word(new Vector2D(x - 6, area.top() + 14), Anchor.START, "up");
        word(new Vector2D(x - 6, area.bottom() - 4), Anchor.START, "down");
        word(new Vector2D(area.left(), y + 5), Anchor.START, scene.leftWord());
        word(new Vector2D(area.right(), y + 5), Anchor.END, scene.rightWord());
        scale(y, step, firstTick(pole.getX(), step, area.middle().getX() - step));
    }

    private void scale(double y, double step, double from) {
        Look thick = Look.line(palette.text(), 3.5);
        svg.line("scale", thick, new Vector2D(from, y), new Vector2D(from + step, y));
        word(
                new Vector2D(from + step / 2, y + 20),
                Anchor.MIDDLE,
                view.scaleBar().words());
    }

    private void word(Vector2D at, Anchor anchor, String word) {
        svg.text(at, anchor, SIZE, palette.text(), word);
    }

    /** The first multiple of the step from the pole that is at least {@code low}. */
    private static double firstTick(double pole, double step, double low) {
        return pole + step * Math.ceil((low - pole) / step);
    }
}
