package polewright.drawing.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;

/**
 * The local horizon as a long strip for editing, with the elevated pole in the middle and the paths of stars and the
 * Sun. Azimuth increases evenly to the right and altitude upward; the scale is in data attributes of the group
 * {@code strip}, so that a page's script can add handles to the corners.
 */
public final class HorizonStripDrawing {
    private static final int WIDTH = 1160;
    private static final int HEIGHT = 340;
    private static final double LEFT = 44;
    private static final double LEVEL = 300;
    private static final double UNITS_PER_DEG = 3;
    private static final double TOP_DEG = 90;
    private static final double TEXT = 16;
    private static final double[] STARS_DEG = {-60, -30, 0, 30, 60};
    private static final String[] POINTS = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};

    private final Svg svg;
    private final Palette palette;
    private final Horizon horizon;
    private final Site site;

    private HorizonStripDrawing(Horizon horizon, Site site, Palette palette) {
        this.horizon = horizon;
        this.site = site;
        this.palette = palette;
        this.svg = new Svg(
                WIDTH,
                HEIGHT,
                "Skyline to edit",
                "The skyline all round, " + (site.isNorthern() ? "north" : "south") + " in the middle, with "
                        + horizon.points().size() + " corners; the pole, star tracks, and today's path of the Sun.",
                palette);
    }

    /**
     * The picture as SVG.
     *
     * @param sunDeclination apparent, on the day
     */
    public static String svg(Horizon horizon, Site site, Angle sunDeclination, Palette palette) {
        HorizonStripDrawing drawing = new HorizonStripDrawing(horizon, site, palette);
        drawing.strip(sunDeclination);
        return drawing.svg.finished();
    }

    private void strip(Angle sunDeclination) {
        svg.open(
                "strip",
                new TreeMap<>(Map.of(
                        "left", plain(LEFT),
                        "leftmost-azimuth", plain(SkylineOutline.leftmostDeg(site)),
                        "level", plain(LEVEL),
                        "units-per-degree", plain(UNITS_PER_DEG))));
        grid();
        svg.open("stars");
        for (double declination : STARS_DEG) {
            track(Look.line(palette.guide(), 0.7), Angle.ofDegrees(declination));
        }
        svg.close();
        svg.open("sun");
        List<Vector2D> sun = track(Look.line(palette.guide(), 2).dashed("2 6"), sunDeclination);
        svg.close();
        svg.open("ground");
        svg.polygon(
                Look.filled(palette.metal(), palette.ink(), 2),
                SkylineOutline.of(horizon, site).stream()
                        .map(point -> at(point.getX(), point.getY()))
                        .toArray(Vector2D[]::new));
        svg.close();
        letters();
        if (!sun.isEmpty()) {
            Vector2D highest =
                    sun.stream().reduce((a, b) -> a.getY() < b.getY() ? a : b).orElseThrow();
            double x = Math.max(LEFT + 60, Math.min(WIDTH - 80, highest.getX()));
            svg.text(new Vector2D(x, highest.getY() - 8), Anchor.MIDDLE, TEXT, palette.text(), "Sun today");
        }
        pole();
        svg.open("corners");
        for (Horizon.Point corner : horizon.points()) {
            svg.circle(
                    Look.filled(palette.background(), palette.axis(), 3),
                    at(
                            SkylineOutline.acrossDeg(site, corner.azimuth()),
                            Math.max(0, corner.altitude().degrees())),
                    7);
        }
        svg.close();
        svg.close();
    }

    private void grid() {
        Look faint = Look.line(palette.guide(), 1).dashed("3 5");
        for (int altitude = 0; altitude <= TOP_DEG; altitude += 15) {
            svg.line(faint, at(0, altitude), at(360, altitude));
        }
        for (int i = 0; i <= POINTS.length; i++) {
            svg.line(faint, at(45 * i, 0), at(45 * i, TOP_DEG));
        }
    }

    private void letters() {
        for (int altitude = 0; altitude <= TOP_DEG; altitude += 15) {
            svg.text(at(0, altitude).add(new Vector2D(-6, 5)), Anchor.END, TEXT, palette.text(), altitude + "°");
        }
        for (int i = 0; i <= POINTS.length; i++) {
            String name = POINTS[((int) SkylineOutline.leftmostDeg(site) / 45 + i) % POINTS.length];
            svg.text(at(45 * i, 0).add(new Vector2D(0, 24)), Anchor.MIDDLE, TEXT, palette.text(), name);
        }
    }

    /**
     * The diurnal path above the horizontal of a star with a declination, from the triangle pole–zenith–star.
     *
     * @return all points drawn
     */
    private List<Vector2D> track(Look look, Angle declination) {
        List<Vector2D> drawn = new ArrayList<>();
        List<Vector2D> stretch = new ArrayList<>();
        for (int hourAngleDeg = -180; hourAngleDeg <= 180; hourAngleDeg += 2) {
            double hourAngle = Math.toRadians(hourAngleDeg);
            double sine = site.latitude().sin() * declination.sin()
                    + site.latitude().cos() * declination.cos() * Math.cos(hourAngle);
            double north = site.latitude().cos() * declination.sin()
                    - site.latitude().sin() * declination.cos() * Math.cos(hourAngle);
            double east = -declination.cos() * Math.sin(hourAngle);
            Vector2D point = at(
                    SkylineOutline.acrossDeg(site, new Angle(Math.atan2(east, north))),
                    Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, sine)))));
            boolean jumps = !stretch.isEmpty()
                    && Math.abs(point.getX() - stretch.get(stretch.size() - 1).getX()) > 180 * UNITS_PER_DEG;
            if (point.getY() > LEVEL || jumps) {
                draw(look, stretch);
                stretch.clear();
            }
            if (point.getY() <= LEVEL) {
                stretch.add(point);
                drawn.add(point);
            }
        }
        draw(look, stretch);
        return drawn;
    }

    private void draw(Look look, List<Vector2D> stretch) {
        if (stretch.size() > 1) {
            svg.polyline(look, stretch);
        }
    }

    private void pole() {
        Vector2D pole = at(180, site.poleAltitude().degrees());
        svg.line("pole", Look.line(palette.axis(), 3), pole.add(new Vector2D(-8, 0)), pole.add(new Vector2D(8, 0)));
        svg.line(Look.line(palette.axis(), 3), pole.add(new Vector2D(0, -8)), pole.add(new Vector2D(0, 8)));
        svg.text(pole.add(new Vector2D(13, -6)), Anchor.START, TEXT, palette.axis(), "pole");
    }

    private static Vector2D at(double acrossDeg, double altitudeDeg) {
        return new Vector2D(LEFT + UNITS_PER_DEG * acrossDeg, LEVEL - UNITS_PER_DEG * altitudeDeg);
    }

    private static String plain(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
