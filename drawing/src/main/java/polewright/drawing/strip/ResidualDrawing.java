package polewright.drawing.strip;

import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.ScaleBar;
import polewright.drawing.Sheet;
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
    private static final int HEIGHT = 258;
    private static final Box AREA = new Box(38, 60, 350, 200);
    private static final double SCALE_BASELINE = 244;
    private static final double LONGEST = 30;
    private static final int[] ALTITUDES_DEG = {20, 45, 70};

    private final Sheet sheet;
    private final SkyAround sky;

    private ResidualDrawing(Sheet sheet, Site site) {
        this.sheet = sheet;
        this.sky = SkyAround.on(sheet, AREA, site);
    }

    /** The picture as SVG. */
    public static String svg(PointingModel model, PointingLimits reach, Palette palette) {
        Sheet sheet = new Sheet(
                Sheet.WIDTH,
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
        sheet.write(22, "Lines: residuals. Figures: go-tos (95 %)");
        sheet.write(40, "within this many arcminutes.");
        ResidualDrawing drawing = new ResidualDrawing(sheet, model.site());
        drawing.sky.strip().altitudes(30);
        drawing.sky.compassPoints();
        List<Box> stars = model.residuals().stream()
                .map(residual -> drawing.star(residual, unitsPerRad))
                .toList();
        drawing.expectations(model, reach, stars);
        sheet.scaleBar(
                new Vector2D(AREA.left(), SCALE_BASELINE - 5),
                scale.length().radians() * unitsPerRad,
                scale.words() + " residual at a star");
        return sheet.finished();
    }

    /** None where a star's residual would be under it. */
    private void expectations(PointingModel model, PointingLimits reach, List<Box> stars) {
        for (int altitude : ALTITUDES_DEG) {
            for (int azimuth = 0; azimuth < 360; azimuth += altitude == 70 ? 90 : 45) {
                HourAnglePlace place = ReachableSky.place(model.site(), azimuth, altitude);
                double arcmin = model.goToError(place).radius95().arcminutes();
                String figure = String.format(Locale.ROOT, arcmin < 9.95 ? "%.1f" : "%.0f", arcmin);
                Vector2D at = sky.at(Angle.ofDegrees(azimuth), altitude);
                Box box = Box.about(at, Lettering.width(figure, Sheet.LETTERS), Sheet.LETTERS);
                if (reach.canReach(place) && stars.stream().noneMatch(box::meets)) {
                    sheet.letters(at, Sheet.LETTERS, sheet.palette().text(), figure);
                }
            }
        }
    }

    /** Returns what it covers. */
    private Box star(StarResidual residual, double unitsPerRad) {
        Site site = sky.site();
        Vector3D direction = enu(site, residual.centring().seen());
        Vector2D place = sky.place(direction);
        Vector2D at = sky.strip().plot().at(place.getX(), place.getY());
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
        sheet.line("left", sheet.measured(), at, tip);
        sheet.star(at, 3);
        return new Box(
                        Math.min(at.getX(), tip.getX()),
                        Math.min(at.getY(), tip.getY()),
                        Math.max(at.getX(), tip.getX()),
                        Math.max(at.getY(), tip.getY()))
                .grown(8);
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
}
