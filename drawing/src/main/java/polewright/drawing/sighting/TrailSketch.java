package polewright.drawing.sighting;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Palette;
import polewright.drawing.Sheet;
import polewright.drawing.Strokes;
import polewright.drawing.Svg.Look;

/**
 * A star that left the line of the crosshair while the tube was swung in right ascension. The view is drawn with west to
 * the right and north up, whatever its real orientation: only the side of the line counts.
 *
 * @param off how far off the line at the edge, as a fraction of the radius, 0 to 1
 */
public record TrailSketch(String star, double off, boolean isNorth) implements SightingSketch {
    private static final int HEIGHT = 380;
    private static final Vector2D MIDDLE = new Vector2D(180, 190);
    private static final double RADIUS = 134;

    @Override
    public String svg(Palette palette) {
        String fraction = Sheet.figure(off) + " of the radius";
        String side = isNorth ? "north" : "south";
        Sheet sheet = new Sheet(
                HEIGHT,
                "Trail, and path when swung",
                "In the eyepiece, west to the right and north up. With the drive off, the star ran along the line. When"
                        + " the tube is swung in right ascension, " + star
                        + (off == 0
                                ? " stays on the line as far as the western edge."
                                : " reaches the western edge " + fraction + " " + side + " of the line."),
                palette);
        sheet.svg().circle(sheet.edge(), MIDDLE, RADIUS);
        sheet.shun(Strokes.arc(MIDDLE, RADIUS, 0, 2 * Math.PI));
        Vector2D east = MIDDLE.subtract(new Vector2D(RADIUS, 0));
        Vector2D west = MIDDLE.add(new Vector2D(RADIUS, 0));
        sheet.line("line", sheet.edge(), east, west);
        double up = isNorth ? -off : off;
        Vector2D reached = MIDDLE.add(RADIUS, new Vector2D(Math.sqrt(1 - off * off), up));
        sheet.arrow("path", Look.line(palette.axis(), 3), MIDDLE, reached);
        sheet.star(MIDDLE, 6);
        sheet.name(MIDDLE.add(new Vector2D(-8, up < 0 ? 14 : -14)), star);
        sheet.name(MIDDLE.add(new Vector2D(-RADIUS * 0.6, 0)), "line set by the trail,\ndrive off");
        if (off > 0) {
            Vector2D foot = new Vector2D(reached.getX(), MIDDLE.getY());
            sheet.line("off", sheet.measured(), foot, reached);
            sheet.figure(foot.add(0.5, reached.subtract(foot)), fraction);
        }
        sheet.letters(MIDDLE.add(new Vector2D(RADIUS + 24, 0)), Sheet.LETTERS, palette.text(), "west");
        sheet.letters(MIDDLE.add(new Vector2D(0, -RADIUS - 14)), Sheet.LETTERS, palette.text(), "north");
        sheet.letters(MIDDLE.add(new Vector2D(0, RADIUS + 16)), Sheet.LETTERS, palette.text(), "south");
        return sheet.finished();
    }
}
