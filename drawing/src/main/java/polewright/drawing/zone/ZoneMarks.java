package polewright.drawing.zone;

import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Look;
import polewright.drawing.Tilted;

/**
 * The marks for single points of a zone's picture: each with its own shape, so that they are distinguishable without
 * colour.
 */
final class ZoneMarks {
    private static final double POLE = 6;
    private static final double STAKE = 20;
    private static final double PENNANT = 12;
    private static final double DIAMOND = 7;
    private static final double DOT = 3.5;
    private static final double SHORTEST_ARROW = 12;

    private final Svg svg;
    private final Palette palette;

    ZoneMarks(Svg svg, Palette palette) {
        this.svg = svg;
        this.palette = palette;
    }

    /** Three strokes through the point, like a handwritten asterisk. */
    void pole(Vector2D at) {
        svg.open("pole");
        for (int i = 0; i < 3; i++) {
            double angle = Math.PI / 2 + i * Math.PI / 3;
            svg.line(Look.line(palette.text(), 2), Svg.around(at, POLE, angle), Svg.around(at, POLE, angle + Math.PI));
        }
        svg.close();
    }

    static Box poleBox(Vector2D at) {
        return Box.about(at, 2 * POLE, 2 * POLE);
    }

    /** A pennant on a stake whose foot is at the point. */
    void aim(Vector2D foot) {
        Vector2D head = foot.add(new Vector2D(0, -STAKE));
        svg.open("aim");
        svg.line("stake", Look.line(palette.text(), 2), foot, head);
        svg.polygon(
                Look.filled(palette.text(), palette.text(), 1),
                head,
                head.add(new Vector2D(PENNANT, 4.5)),
                head.add(new Vector2D(0, 9)));
        svg.close();
    }

    static Box aimBox(Vector2D foot) {
        return new Box(foot.getX(), foot.getY() - STAKE, foot.getX() + PENNANT, foot.getY());
    }

    /** A filled diamond. */
    void now(Vector2D at) {
        diamond("now", Look.filled(palette.axis(), palette.background(), 1.5), at);
    }

    /** An open diamond. */
    void possible(Vector2D at) {
        diamond("possible", Look.filled(palette.background(), palette.axis(), 2), at);
    }

    private void diamond(String name, Look look, Vector2D at) {
        svg.open(name);
        svg.polygon(
                look,
                at.add(new Vector2D(-DIAMOND, 0)),
                at.add(new Vector2D(0, -DIAMOND)),
                at.add(new Vector2D(DIAMOND, 0)),
                at.add(new Vector2D(0, DIAMOND)));
        svg.close();
    }

    static Box nowBox(Vector2D at) {
        return Box.about(at, 2 * DIAMOND, 2 * DIAMOND);
    }

    /** An earlier position of the axis. */
    void before(Vector2D at) {
        svg.open("before");
        svg.circle(Look.filled(palette.axis(), palette.background(), 1), at, DOT);
        svg.close();
    }

    static Box beforeBox(Vector2D at) {
        return Box.about(at, 2 * DOT, 2 * DOT);
    }

    /** An arrow from one point to another, drawn only if it is longer than its head. */
    void arrow(String name, String colour, Vector2D from, Vector2D to) {
        if (!isArrow(from, to)) {
            return;
        }
        List<Vector2D> head = head(from, to);
        Vector2D end = Tilted.along(from, to).at(-9, 0);
        svg.line(name, Look.line(colour, 2.2).dashed("1 5"), from, end);
        svg.open(name + "-head");
        svg.polygon(Look.filled(colour, colour, 1), head.toArray(Vector2D[]::new));
        svg.close();
    }

    static boolean isArrow(Vector2D from, Vector2D to) {
        return from.distance(to) >= SHORTEST_ARROW;
    }

    static Box headBox(Vector2D from, Vector2D to) {
        return MapView.extent(head(from, to));
    }

    private static List<Vector2D> head(Vector2D from, Vector2D to) {
        Tilted head = Tilted.along(from, to);
        return List.of(head.at(0, 0), head.at(-11, 5), head.at(-11, -5));
    }

    /** The mark of that kind as it appears in a key. */
    void draw(MapMark.Kind kind, Vector2D at) {
        switch (kind) {
            case NOW -> now(at);
            case POSSIBLE -> possible(at);
            case AIM -> aim(at.add(new Vector2D(-PENNANT / 2, STAKE / 2)));
            case POLE -> pole(at);
            case FIRST_FIX, EARLIER -> before(at);
            case GOAL -> arrow("turn", palette.axis(), at.add(new Vector2D(-13, 0)), at.add(new Vector2D(13, 0)));
        }
    }
}
