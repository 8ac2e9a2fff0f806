package polewright.drawing.zone;

import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;
import polewright.drawing.ScaleBar;
import polewright.sky.angle.Angle;

/**
 * A region of sky around the pole mapped to the paper, with equal scales.
 *
 * @param area the area of the paper
 * @param middle the point at the centre of the area, arcminutes to the right and up from the true pole
 * @param unitsPerArcmin user units of the drawing
 */
record MapView(Box area, Vector2D middle, double unitsPerArcmin) {
    // Coincident points still need a scale.
    private static final double LEAST_EXTENT_ARCMIN = 0.01;

    /** The view in which all points fill {@code share} of the area's width or height. */
    static MapView fitting(Box area, List<Vector2D> seen, double share) {
        Box extent = extent(seen);
        double across = Math.max(extent.width(), LEAST_EXTENT_ARCMIN);
        double along = Math.max(extent.height(), LEAST_EXTENT_ARCMIN);
        double scale = share * Math.min(area.width() / across, area.height() / along);
        return new MapView(area, extent.middle(), scale);
    }

    /** The smallest box around the points; here {@code top} is the lowest. */
    static Box extent(List<Vector2D> seen) {
        var right = seen.stream().mapToDouble(Vector2D::getX).summaryStatistics();
        var up = seen.stream().mapToDouble(Vector2D::getY).summaryStatistics();
        return new Box(right.getMin(), up.getMin(), right.getMax(), up.getMax());
    }

    Vector2D onPaper(Vector2D seen) {
        Vector2D centre = area.middle();
        return new Vector2D(
                centre.getX() + unitsPerArcmin * (seen.getX() - middle.getX()),
                centre.getY() - unitsPerArcmin * (seen.getY() - middle.getY()));
    }

    List<Vector2D> onPaper(List<Vector2D> seen) {
        return seen.stream().map(this::onPaper).toList();
    }

    /** A round length between a tenth and a third of the width. */
    ScaleBar scaleBar() {
        return ScaleBar.within(Angle.ofArcminutes(area.width() / 3 / unitsPerArcmin));
    }
}
