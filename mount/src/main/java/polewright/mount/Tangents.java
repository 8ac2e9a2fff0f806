package polewright.mount;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * Two perpendicular tangent directions at a point on the sphere.
 *
 * @param first unit vector, perpendicular to the point
 * @param second unit vector, perpendicular to both
 */
public record Tangents(Vector3D first, Vector3D second) {
    private static final double AT_THE_END = 1e-9;

    /** At an ENU direction: to the right (increasing azimuth) and up. */
    public static Tangents rightAndUp(Vector3D enu) {
        double horizontal = Math.hypot(enu.getX(), enu.getY());
        Vector3D right = horizontal < AT_THE_END
                ? Vector3D.PLUS_I
                : new Vector3D(enu.getY() / horizontal, -enu.getX() / horizontal, 0);
        return new Tangents(right, right.crossProduct(enu));
    }

    /** At a direction in camera axes: toward the frame centre, and across, by the right-hand rule. */
    public static Tangents towardBoresightAndAcross(Vector3D inCamera) {
        double across = Math.hypot(inCamera.getX(), inCamera.getY());
        Vector3D toward = across < AT_THE_END
                ? Vector3D.PLUS_I
                : Vector3D.PLUS_K
                        .subtract(inCamera.scalarMultiply(inCamera.getZ()))
                        .normalize();
        return new Tangents(toward, inCamera.crossProduct(toward));
    }

    /** The components of a vector along the two. */
    public Vector2D components(Vector3D v) {
        return new Vector2D(v.dotProduct(first), v.dotProduct(second));
    }

    /** {@code point}, where these are tangent, moved by small amounts along them, radians. */
    public Vector3D moved(Vector3D point, double alongFirst, double alongSecond) {
        return new Vector3D(1, point, alongFirst, first, alongSecond, second).normalize();
    }
}
