package polewright.drawing;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;

/** What lines and letters are drawn on: SVG text, or pixels. Coordinates: x right, y down. */
public interface Canvas {
    /** Begins a group with a CSS class. */
    void open(String name);

    void close();

    default void line(Look look, Vector2D from, Vector2D to) {
        line("", look, from, to);
    }

    /** A line with a CSS class. */
    void line(String name, Look look, Vector2D from, Vector2D to);

    void polygon(Look look, Vector2D... corners);

    void circle(Look look, Vector2D centre, double radius);

    /** One line of text; an outline in the paper's colour keeps it legible over lines. */
    void text(Vector2D at, Anchor anchor, double size, String colour, String content);
}
