package polewright.drawing.strip;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.Sheet;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;

/** The skyline all round: small to look at, or long to edit, with the paths of stars and the Sun. */
public final class HorizonDrawing {
    private static final int HEIGHT = 212;
    private static final Box AREA = new Box(38, 44, 350, 180);

    private static final int LONG_WIDTH = 1160;
    private static final int LONG_HEIGHT = 340;
    private static final double LONG_LEFT = 44;
    private static final double LONG_LEVEL = 300;
    private static final double UNITS_PER_DEG = 3;
    private static final Box LONG_AREA =
            new Box(LONG_LEFT, LONG_LEVEL - 90 * UNITS_PER_DEG, LONG_LEFT + 360 * UNITS_PER_DEG, LONG_LEVEL);
    private static final double[] STARS_DEG = {-60, -30, 0, 30, 60};

    private HorizonDrawing() {}

    /** The picture as SVG. */
    public static String svg(Horizon horizon, Site site, Rig rig, Palette palette) {
        Sheet sheet = new Sheet(Sheet.WIDTH, HEIGHT, "Skyline", description(horizon), palette);
        sheet.heading("Skyline all round");
        SkyAround sky = SkyAround.on(sheet, AREA, site);
        sky.strip().altitudes(30);
        sky.ground(horizon);
        double lowest = rig.travel().lowestAltitude().degrees();
        if (lowest > 0) {
            Vector2D left = sky.strip().plot().at(0, lowest);
            Vector2D right = sky.strip().plot().at(360, lowest);
            sheet.line("lowest", sheet.edge().dashed("10 6"), left, right);
            sheet.write(right.subtract(new Vector2D(4, 6)), Anchor.END, "lowest, " + Math.round(lowest) + "°");
        }
        sky.pole();
        sky.compassPoints();
        return sheet.finished();
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

    /**
     * The long strip as SVG. Its scale is in data attributes of the group {@code strip}, so that a page's script can
     * add handles to the corners.
     *
     * @param sunDeclination apparent, on the day
     */
    public static String toEdit(Horizon horizon, Site site, Angle sunDeclination, Palette palette) {
        Sheet sheet = new Sheet(
                LONG_WIDTH,
                LONG_HEIGHT,
                "Skyline to edit",
                "The skyline all round, " + (site.isNorthern() ? "north" : "south") + " in the middle, with "
                        + horizon.points().size() + " corners; the pole, star tracks, and today's path of the Sun.",
                palette);
        SkyAround sky = SkyAround.on(sheet, LONG_AREA, site);
        Svg svg = sheet.svg();
        svg.open(
                "strip",
                new TreeMap<>(Map.of(
                        "left", plain(LONG_LEFT),
                        "leftmost-azimuth", plain(sky.leftmostDeg()),
                        "level", plain(LONG_LEVEL),
                        "units-per-degree", plain(UNITS_PER_DEG))));
        sky.strip().altitudes(15);
        for (int across = 0; across <= 360; across += 45) {
            svg.line(
                    sheet.grid(),
                    sky.strip().plot().at(across, 0),
                    sky.strip().plot().at(across, 90));
        }
        svg.open("stars");
        for (double declination : STARS_DEG) {
            sky.strip().track(Look.line(palette.guide(), 1), diurnal(sky, Angle.ofDegrees(declination)));
        }
        svg.close();
        svg.open("sun");
        List<Vector2D> sun =
                sky.strip().track(Look.line(palette.guide(), 2).dashed("2 6"), diurnal(sky, sunDeclination));
        svg.close();
        sky.ground(horizon);
        sky.compassPoints();
        sun.stream()
                .min(Comparator.comparingDouble(Vector2D::getY))
                .ifPresent(highest -> sheet.name(highest, "Sun today"));
        sky.pole();
        svg.open("corners");
        for (Horizon.Point corner : horizon.points()) {
            svg.circle(
                    Look.filled(palette.background(), palette.axis(), 3),
                    sky.at(corner.azimuth(), Math.max(0, corner.altitude().degrees())),
                    7);
        }
        svg.close();
        svg.close();
        return sheet.finished();
    }

    /** The diurnal path of a star with a declination, from the triangle pole–zenith–star. */
    private static List<Vector2D> diurnal(SkyAround sky, Angle declination) {
        Angle latitude = sky.site().latitude();
        return IntStream.rangeClosed(-90, 90)
                .mapToObj(i -> Angle.ofDegrees(2 * i))
                .map(hourAngle -> sky.place(new Vector3D(
                        -declination.cos() * hourAngle.sin(),
                        latitude.cos() * declination.sin() - latitude.sin() * declination.cos() * hourAngle.cos(),
                        latitude.sin() * declination.sin() + latitude.cos() * declination.cos() * hourAngle.cos())))
                .toList();
    }

    private static String plain(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
