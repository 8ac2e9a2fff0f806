package polewright.axis.drawing;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.axis.OffsetCovariance;

/** The ellipse in which a Gaussian lies within some standard deviations of its middle. */
final class SigmaRegion {
    private static final int POINTS = 96;

    private SigmaRegion() {}

    /** Points around it, arcminutes, from the lower triangle of the covariance: L Lᵀ = C (Cholesky). */
    static List<Vector2D> outline(Vector2D middle, OffsetCovariance covariance, boolean eastOnRight, double sigmas) {
        double side = eastOnRight ? 1 : -1;
        double east = Math.sqrt(Math.max(0, covariance.eastEastArcmin2()));
        double across = east == 0 ? 0 : covariance.eastUpArcmin2() / east;
        double up = Math.sqrt(Math.max(0, covariance.upUpArcmin2() - across * across));
        List<Vector2D> points = new ArrayList<>(POINTS);
        for (int i = 0; i < POINTS; i++) {
            double angle = 2 * Math.PI * i / POINTS;
            double x = sigmas * east * Math.cos(angle);
            double y = sigmas * (across * Math.cos(angle) + up * Math.sin(angle));
            points.add(middle.add(new Vector2D(side * x, y)));
        }
        return points;
    }
}
