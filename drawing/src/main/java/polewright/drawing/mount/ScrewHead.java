package polewright.drawing.mount;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Palette;
import polewright.drawing.Strokes;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Look;

/** A hexagonal screw head as seen by the person turning it, with an arrow for the direction. */
final class ScrewHead {
    private static final double HEAD = 11;
    private static final double ARROW = 20;
    private static final double FROM_DEGREES = 215;
    private static final double SWEEP_DEGREES = 230;

    private final Svg svg;
    private final Palette palette;

    ScrewHead(Svg svg, Palette palette) {
        this.svg = svg;
        this.palette = palette;
    }

    void turned(Vector2D centre, boolean clockwise) {
        Vector2D[] corners = new Vector2D[6];
        for (int i = 0; i < 6; i++) {
            corners[i] = Svg.around(centre, HEAD, i * Math.PI / 3);
        }
        svg.polygon(Look.filled(palette.metal(), palette.ink(), 1.6), corners);
        // Clockwise it runs over the top from left to right.
        double begin = Math.toRadians(clockwise ? FROM_DEGREES : 180 - FROM_DEGREES);
        double sweep = Math.toRadians(clockwise ? -SWEEP_DEGREES : SWEEP_DEGREES);
        svg.open(clockwise ? "clockwise" : "counter-clockwise");
        svg.polyline(Look.line(palette.axis(), 3), Strokes.arc(centre, ARROW, begin, sweep));
        svg.arcHead(palette.axis(), centre, ARROW, begin + sweep, sweep > 0);
        svg.close();
    }
}
