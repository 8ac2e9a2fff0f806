package polewright.drawing;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.stream.Collectors;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/** Writes SVG 1.1 text, one element per line. Coordinates as in SVG: x right, y down, user units. */
public final class Svg implements Canvas {
    /** How a shape is drawn: {@code dash} as in stroke-dasharray, empty for a solid line. */
    public record Look(String fill, String stroke, double width, String dash) {
        public static Look line(String stroke, double width) {
            return new Look("none", stroke, width, "");
        }

        public static Look filled(String fill, String stroke, double width) {
            return new Look(fill, stroke, width, "");
        }

        public Look dashed(String pattern) {
            return new Look(fill, stroke, width, pattern);
        }

        private String attributes() {
            return " fill=\"" + fill + "\" stroke=\"" + stroke + "\" stroke-width=\"" + number(width) + "\""
                    + (dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"");
        }
    }

    /** Alignment of a text to its point. */
    public enum Anchor {
        START,
        MIDDLE,
        END
    }

    private final StringBuilder out = new StringBuilder();
    private final Palette palette;
    private final int width;

    /** Begins a drawing that a screen reader announces by {@code title} and {@code description}. */
    public Svg(int width, int height, String title, String description, Palette palette) {
        this(width, palette);
        begin(width, height, title, description);
        out.append(String.format(
                Locale.ROOT, "<rect width=\"%d\" height=\"%d\" fill=\"%s\"/>\n", width, height, palette.background()));
    }

    private Svg(int width, Palette palette) {
        this.width = width;
        this.palette = palette;
    }

    /** Begins a drawing without a background, to overlay a picture. */
    public static Svg overlay(int width, int height, String title, String description, Palette palette) {
        Svg svg = new Svg(width, palette);
        svg.begin(width, height, title, description);
        return svg;
    }

    private void begin(int width, int height, String title, String description) {
        out.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\""
                        + " font-family=\"sans-serif\" stroke-linejoin=\"round\" stroke-linecap=\"round\">\n",
                width,
                height));
        out.append("<title>").append(escaped(title)).append("</title>\n");
        out.append("<desc>").append(escaped(description)).append("</desc>\n");
    }

    /** User units across. */
    public int width() {
        return width;
    }

    @Override
    public void open(String name) {
        out.append("<g class=\"").append(escaped(name)).append("\">\n");
    }

    /** Begins a group that also has data attributes, for a page's script. */
    public void open(String name, SortedMap<String, String> data) {
        out.append("<g class=\"").append(escaped(name)).append('"');
        data.forEach((key, value) -> out.append(" data-")
                .append(key)
                .append("=\"")
                .append(escaped(value))
                .append('"'));
        out.append(">\n");
    }

    @Override
    public void close() {
        out.append("</g>\n");
    }

    @Override
    public void line(String name, Look look, Vector2D from, Vector2D to) {
        out.append("<line")
                .append(name.isEmpty() ? "" : " class=\"" + escaped(name) + "\"")
                .append(String.format(
                        Locale.ROOT,
                        " x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"",
                        number(from.getX()),
                        number(from.getY()),
                        number(to.getX()),
                        number(to.getY())))
                .append(look.attributes())
                .append("/>\n");
    }

    @Override
    public void polygon(Look look, Vector2D... corners) {
        String points = Arrays.stream(corners)
                .map(c -> number(c.getX()) + "," + number(c.getY()))
                .collect(Collectors.joining(" "));
        out.append("<polygon points=\"").append(points).append('"').append(look.attributes());
        out.append("/>\n");
    }

    /** A polyline. */
    public void polyline(Look look, List<Vector2D> points) {
        out.append("<polyline points=\"")
                .append(points.stream()
                        .map(c -> number(c.getX()) + "," + number(c.getY()))
                        .collect(Collectors.joining(" ")))
                .append('"')
                .append(look.attributes())
                .append("/>\n");
    }

    /** Begins a clipped area; coordinates stay those of the paper. */
    public void openWindow(Box box) {
        String place =
                number(box.left()) + " " + number(box.top()) + " " + number(box.width()) + " " + number(box.height());
        out.append(String.format(
                Locale.ROOT,
                "<svg x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" viewBox=\"%s\">\n",
                number(box.left()),
                number(box.top()),
                number(box.width()),
                number(box.height()),
                place));
    }

    public void closeWindow() {
        out.append("</svg>\n");
    }

    @Override
    public void circle(Look look, Vector2D centre, double radius) {
        out.append(String.format(
                        Locale.ROOT,
                        "<circle cx=\"%s\" cy=\"%s\" r=\"%s\"",
                        number(centre.getX()),
                        number(centre.getY()),
                        number(radius)))
                .append(look.attributes())
                .append("/>\n");
    }

    /** An arc of less than half a turn, anticlockwise as seen, angles from the right, radians. */
    public void arc(Look look, Vector2D centre, double radius, double fromRad, double toRad) {
        Vector2D from = around(centre, radius, fromRad);
        Vector2D to = around(centre, radius, toRad);
        out.append(String.format(
                        Locale.ROOT,
                        "<path d=\"M %s %s A %s %s 0 0 0 %s %s\"",
                        number(from.getX()),
                        number(from.getY()),
                        number(radius),
                        number(radius),
                        number(to.getX()),
                        number(to.getY())))
                .append(look.attributes())
                .append("/>\n");
    }

    @Override
    public void text(Vector2D at, Anchor anchor, double size, String colour, String content) {
        out.append(String.format(
                        Locale.ROOT,
                        "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\" fill=\"%s\" stroke=\"%s\""
                                + " stroke-width=\"4\" paint-order=\"stroke\">",
                        number(at.getX()),
                        number(at.getY()),
                        number(size),
                        anchor.name().toLowerCase(Locale.ROOT),
                        colour,
                        palette.background()))
                .append(escaped(content))
                .append("</text>\n");
    }

    /** The head of an arrow along an arc that ends at {@code atRad}. */
    public void arcHead(String colour, Vector2D centre, double radius, double atRad, boolean anticlockwise) {
        double heading = atRad + (anticlockwise ? Math.PI / 2 : -Math.PI / 2);
        Tilted head = new Tilted(Svg.around(centre, radius, atRad), heading);
        polygon(Look.filled(colour, colour, 1), head.at(9, 0), head.at(-3, 7), head.at(-3, -7));
    }

    /** The finished drawing. */
    public String finished() {
        return out + "</svg>\n";
    }

    /** The point at {@code angleRad} from the right, anticlockwise as seen. */
    public static Vector2D around(Vector2D centre, double radius, double angleRad) {
        return new Vector2D(centre.getX() + radius * Math.cos(angleRad), centre.getY() - radius * Math.sin(angleRad));
    }

    private static String number(double value) {
        double rounded = Math.rint(value * 100) / 100;
        // Adding zero turns -0 into 0.
        return rounded == Math.rint(rounded) ? String.valueOf((long) rounded) : String.valueOf(rounded + 0.0);
    }

    public static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
