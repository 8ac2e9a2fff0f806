package polewright.drawing.zone;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.OffsetCovariance;

/** The ellipse of a two-dimensional Gaussian at a number of standard deviations. */
final class SigmaRegion {
    private static final int POINTS = 96;

    private SigmaRegion() {}

    /** Points on the ellipse, arcminutes. */
    static List<Vector2D> outline(Vector2D middle, OffsetCovariance covariance, boolean eastOnRight, double sigmas) {
        List<Vector2D> points = new ArrayList<>(POINTS);
        for (int i = 0; i < POINTS; i++) {
            double angle = 2 * Math.PI * i / POINTS;
            points.add(middle.add(sigmas, fromCircle(covariance, eastOnRight, Math.cos(angle), Math.sin(angle))));
        }
        return points;
    }

    /** Parallel chords for shading, each as its two ends, arcminutes. */
    static List<List<Vector2D>> hatching(
            Vector2D middle, OffsetCovariance covariance, boolean eastOnRight, double sigmas, int chords) {
        List<List<Vector2D>> hatching = new ArrayList<>(chords);
        for (int i = 0; i < chords; i++) {
            double across = (2.0 * i + 1) / chords - 1;
            double half = Math.sqrt(1 - across * across);
            hatching.add(List.of(
                    middle.add(sigmas, slanted(covariance, eastOnRight, across, -half)),
                    middle.add(sigmas, slanted(covariance, eastOnRight, across, half))));
        }
        return hatching;
    }

    private static Vector2D slanted(OffsetCovariance covariance, boolean eastOnRight, double across, double along) {
        double half = Math.sqrt(0.5);
        return fromCircle(covariance, eastOnRight, half * (across + along), half * (along - across));
    }

    /** Maps a point of the unit circle with the lower triangular factor of the covariance: L Lᵀ = C (Cholesky). */
    private static Vector2D fromCircle(OffsetCovariance covariance, boolean eastOnRight, double x, double y) {
        double east = Math.sqrt(Math.max(0, covariance.eastEastArcmin2()));
        double shared = east == 0 ? 0 : covariance.eastUpArcmin2() / east;
        double up = Math.sqrt(Math.max(0, covariance.upUpArcmin2() - shared * shared));
        return new Vector2D((eastOnRight ? 1 : -1) * east * x, shared * x + up * y);
    }
}
