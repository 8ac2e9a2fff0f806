package polewright.drawing.strip;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.mount.rig.Rig;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;

/**
 * The local horizon as a strip, as seen by turning once around: from the azimuth opposite the elevated pole toward the
 * left, so that the pole is in the middle. East is to the right of north and to the left of south, as at the site.
 */
public final class HorizonDrawing {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 400;
    private static final Box STRIP = new Box(60, 60, 700, 330);
    private static final double TEXT = 24;
    private static final double TOP_DEG = 90;
    private static final String[] POINTS = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};

    private HorizonDrawing() {}

    /** The picture as SVG. */
    public static String svg(Horizon horizon, Site site, Rig rig, Palette palette) {
        Svg svg = new Svg(WIDTH, HEIGHT, "Skyline", description(horizon), palette);
        svg.text(new Vector2D(STRIP.left(), 38), Anchor.START, TEXT, palette.text(), "Skyline all round");
        drawAltitudes(svg, palette);
        drawGround(svg, horizon, site, palette);
        drawLowest(svg, rig, palette);
        drawPole(svg, site, palette);
        drawPoints(svg, site, palette);
        return svg.finished();
    }

    private static String description(Horizon horizon) {
        return horizon.points().isEmpty()
                ? "An open horizon."
                : "A skyline of " + horizon.points().size() + " corners, at most "
                        + Math.round(horizon.points().stream()
                                .mapToDouble(point -> point.altitude().degrees())
                                .max()
                                .orElse(0))
                        + " degrees high.";
    }

    private static void drawAltitudes(Svg svg, Palette palette) {
        for (int altitude : new int[] {0, 30, 60, 90}) {
            double y = y(altitude);
            svg.line(
                    Look.line(palette.guide(), 1).dashed("4 6"),
                    new Vector2D(STRIP.left(), y),
                    new Vector2D(STRIP.right(), y));
            svg.text(new Vector2D(STRIP.left() - 8, y + 8), Anchor.END, TEXT, palette.text(), altitude + "°");
        }
    }

    private static void drawGround(Svg svg, Horizon horizon, Site site, Palette palette) {
        Vector2D[] corners = SkylineOutline.of(horizon, site).stream()
                .map(point -> new Vector2D(STRIP.left() + point.getX() / 360 * STRIP.width(), y(point.getY())))
                .toArray(Vector2D[]::new);
        svg.open("ground");
        svg.polygon(Look.filled(palette.metal(), palette.ink(), 2), corners);
        svg.close();
    }

    private static void drawLowest(Svg svg, Rig rig, Palette palette) {
        double lowest = rig.travel().lowestAltitude().degrees();
        if (lowest <= 0) {
            return;
        }
        svg.line(
                "lowest",
                Look.line(palette.ink(), 2).dashed("10 6"),
                new Vector2D(STRIP.left(), y(lowest)),
                new Vector2D(STRIP.right(), y(lowest)));
        svg.text(
                new Vector2D(STRIP.right() - 4, y(lowest) - 8),
                Anchor.END,
                TEXT,
                palette.text(),
                "lowest, " + Math.round(lowest) + "°");
    }

    private static void drawPole(Svg svg, Site site, Palette palette) {
        Vector2D pole = new Vector2D(
                STRIP.middle().getX(), y(Math.min(TOP_DEG, site.poleAltitude().degrees())));
        svg.line(Look.line(palette.axis(), 3), pole.add(new Vector2D(-9, 0)), pole.add(new Vector2D(9, 0)));
        svg.line(Look.line(palette.axis(), 3), pole.add(new Vector2D(0, -9)), pole.add(new Vector2D(0, 9)));
        svg.text(pole.add(new Vector2D(14, 8)), Anchor.START, TEXT, palette.axis(), "pole");
    }

    private static void drawPoints(Svg svg, Site site, Palette palette) {
        double left = SkylineOutline.leftmostDeg(site);
        for (int i = 0; i <= POINTS.length; i++) {
            double azimuth = left + 45.0 * i;
            double x = STRIP.left() + i / (double) POINTS.length * STRIP.width();
            svg.line(Look.line(palette.ink(), 2), new Vector2D(x, STRIP.bottom()), new Vector2D(x, STRIP.bottom() + 8));
            Anchor anchor = i == POINTS.length ? Anchor.END : Anchor.MIDDLE;
            svg.text(
                    new Vector2D(i == POINTS.length ? x + 12 : x, STRIP.bottom() + 38),
                    anchor,
                    TEXT,
                    palette.text(),
                    POINTS[(int) Math.round(azimuth / 45) % POINTS.length]);
        }
    }

    private static double y(double altitudeDeg) {
        return STRIP.bottom() - altitudeDeg / TOP_DEG * STRIP.height();
    }
}
