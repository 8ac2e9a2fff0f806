package polewright.drawing.strip;

import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Palette;
import polewright.drawing.ScaleBar;
import polewright.drawing.Svg;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.mount.pointing.PointingModel;
import polewright.mount.pointing.StarResidual;
import polewright.mount.reach.PointingLimits;
import polewright.mount.reach.ReachableSky;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/**
 * The residual of each star, as a line from the model's direction to the observed one, on a strip of the whole horizon
 * as in {@link HorizonDrawing}; and between them, as numbers, the expected go-to errors.
 */
public final class ResidualDrawing {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 430;
    private static final Box STRIP = new Box(60, 66, 700, 346);
    private static final double TEXT = 22;
    private static final double LONGEST = 60;
    private static final String[] POINTS = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};

    private ResidualDrawing() {}

    /** The picture as SVG. */
    public static String svg(PointingModel model, PointingLimits reach, Palette palette) {
        Svg svg = new Svg(
                WIDTH,
                HEIGHT,
                "Residual at each star",
                model.centrings().size() + " centred stars, and how far go-tos land from the centre.",
                palette);
        double largest = model.residuals().stream()
                .mapToDouble(residual -> residual.offset().distance().radians())
                .max()
                .orElse(0);
        ScaleBar scale = ScaleBar.within(
                new Angle(Math.max(largest, Angle.ofArcseconds(1).radians())));
        double unitsPerRad = LONGEST / Math.max(largest, scale.length().radians());
        frame(svg, model.site(), palette);
        expectations(svg, model, reach, palette);
        model.residuals().forEach(residual -> star(svg, model.site(), residual, unitsPerRad, palette));
        double y = HEIGHT - 12;
        svg.line(
                Look.line(palette.axis(), 4),
                new Vector2D(STRIP.left(), y),
                new Vector2D(STRIP.left() + scale.length().radians() * unitsPerRad, y));
        svg.text(
                new Vector2D(STRIP.left() + scale.length().radians() * unitsPerRad + 10, y + 7),
                Anchor.START,
                TEXT,
                palette.text(),
                scale.words() + " residual at a star");
        return svg.finished();
    }

    private static void frame(Svg svg, Site site, Palette palette) {
        svg.text(
                new Vector2D(STRIP.left(), 30),
                Anchor.START,
                TEXT,
                palette.text(),
                "Lines: residuals. Figures: go-tos (95 %)");
        svg.text(new Vector2D(STRIP.left(), 54), Anchor.START, TEXT, palette.text(), "within this many arcminutes.");
        for (int altitude : new int[] {0, 30, 60, 90}) {
            svg.line(
                    Look.line(palette.guide(), 1).dashed("3 6"),
                    new Vector2D(STRIP.left(), y(altitude)),
                    new Vector2D(STRIP.right(), y(altitude)));
            svg.text(new Vector2D(STRIP.left() - 6, y(altitude) + 7), Anchor.END, TEXT, palette.text(), altitude + "°");
        }
        for (int i = 0; i < POINTS.length; i++) {
            double azimuth = 45.0 * i;
            svg.text(
                    new Vector2D(x(site, azimuth), STRIP.bottom() + 30),
                    Anchor.MIDDLE,
                    TEXT,
                    palette.text(),
                    POINTS[i]);
        }
    }

    private static void expectations(Svg svg, PointingModel model, PointingLimits reach, Palette palette) {
        for (int altitude : new int[] {20, 45, 70}) {
            for (int azimuth = 0; azimuth < 360; azimuth += altitude == 70 ? 90 : 45) {
                HourAnglePlace place = ReachableSky.place(model.site(), azimuth, altitude);
                if (reach.canReach(place)) {
                    double arcmin = model.goToError(place).radius95().arcminutes();
                    svg.text(
                            new Vector2D(x(model.site(), azimuth), y(altitude) + 7),
                            Anchor.MIDDLE,
                            TEXT - 3,
                            palette.guide(),
                            String.format(Locale.ROOT, arcmin < 9.95 ? "%.1f" : "%.0f", arcmin));
                }
            }
        }
    }

    private static void star(Svg svg, Site site, StarResidual residual, double unitsPerRad, Palette palette) {
        Vector3D direction = enu(site, residual.centring().seen());
        double azimuth = Math.toDegrees(Math.atan2(direction.getX(), direction.getY()));
        double altitude = Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, direction.getZ()))));
        Vector2D at = new Vector2D(x(site, azimuth), y(altitude));
        // North and west on the sky as right and up for an observer facing that way.
        Vector3D pole = new Vector3D(0, site.latitude().cos(), site.latitude().sin());
        Vector3D west = direction.crossProduct(pole).normalize();
        Vector3D north = west.crossProduct(direction);
        Vector3D miss = new Vector3D(
                residual.offset().west().radians(),
                west,
                residual.offset().north().radians(),
                north);
        Vector3D right = direction.crossProduct(Vector3D.PLUS_K).normalize();
        Vector3D up = right.crossProduct(direction);
        Vector2D tip = new Vector2D(
                at.getX() + unitsPerRad * miss.dotProduct(right), at.getY() - unitsPerRad * miss.dotProduct(up));
        svg.line("left", Look.line(palette.axis(), 4), at, tip);
        svg.circle(Look.filled(palette.ink(), palette.background(), 1), at, 5);
    }

    private static Vector3D enu(Site site, HourAnglePlace place) {
        double cosDec = place.declination().cos();
        double x = cosDec * place.hourAngle().cos();
        double z = place.declination().sin();
        return new Vector3D(
                -cosDec * place.hourAngle().sin(),
                -site.latitude().sin() * x + site.latitude().cos() * z,
                site.latitude().cos() * x + site.latitude().sin() * z);
    }

    /** The elevated pole is in the middle. */
    private static double x(Site site, double azimuthDeg) {
        double leftmost = site.isNorthern() ? 180 : 0;
        double across = ((azimuthDeg - leftmost) % 360 + 360) % 360;
        return STRIP.left() + across / 360 * STRIP.width();
    }

    private static double y(double altitudeDeg) {
        return STRIP.bottom() - altitudeDeg / 90 * STRIP.height();
    }
}
