package polewright.alignment.allowance;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * A convex polygon.
 *
 * @param corners anticlockwise
 */
record ConvexPolygon(List<Vector2D> corners) {
    private static final int HALVINGS = 24;
    // In a strip many points are almost as deep as the deepest: aim for the middle of those that reach this fraction of
    // the greatest depth.
    private static final double NEARLY_DEEPEST = 0.99;

    ConvexPolygon {
        corners = List.copyOf(corners);
    }

    double area() {
        double twice = 0;
        for (int i = 0; i < corners.size(); i++) {
            twice += cross(corners.get(i), next(i));
        }
        return twice / 2;
    }

    Vector2D centroid() {
        double x = 0;
        double y = 0;
        double twice = 0;
        Vector2D origin = corners.get(0);
        for (int i = 0; i < corners.size(); i++) {
            Vector2D a = corners.get(i).subtract(origin);
            Vector2D b = next(i).subtract(origin);
            double cross = cross(a, b);
            twice += cross;
            x += cross * (a.getX() + b.getX());
            y += cross * (a.getY() + b.getY());
        }
        return twice == 0 ? origin : origin.add(new Vector2D(x / (3 * twice), y / (3 * twice)));
    }

    /** Distance from an interior point to the nearest side. */
    double depthOf(Vector2D point) {
        return distanceFrom(sideNearest(point), point);
    }

    /** Index of the side nearest to an interior point; side k runs from corner k to the next. */
    int sideNearest(Vector2D point) {
        int nearest = 0;
        for (int i = 1; i < corners.size(); i++) {
            nearest = distanceFrom(i, point) < distanceFrom(nearest, point) ? i : nearest;
        }
        return nearest;
    }

    private double distanceFrom(int side, Vector2D point) {
        Vector2D along = next(side).subtract(corners.get(side));
        return cross(along, point.subtract(corners.get(side))) / along.getNorm();
    }

    /** The part that lies at least a distance to the left of a line through a point, along a unit vector. */
    ConvexPolygon cut(Vector2D on, Vector2D along, double distance) {
        List<Vector2D> left = clipped(corners, on, along, distance);
        return left.size() < 3 ? this : new ConvexPolygon(left);
    }

    /** The point farthest from every side; the middle of them if there are several. */
    Vector2D deepest() {
        double low = 0;
        double high = Math.sqrt(area() / Math.PI);
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (shrunk(middle).isEmpty()) {
                high = middle;
            } else {
                low = middle;
            }
        }
        List<Vector2D> nearly = shrunk(NEARLY_DEEPEST * low);
        return nearly.size() < 3 ? corners.get(0) : new ConvexPolygon(nearly).centroid();
    }

    /** The corners after every side has moved inward by a distance; empty if nothing remains. */
    private List<Vector2D> shrunk(double distance) {
        List<Vector2D> left = corners;
        for (int i = 0; i < corners.size() && !left.isEmpty(); i++) {
            Vector2D along = next(i).subtract(corners.get(i)).normalize();
            left = clipped(left, corners.get(i), along, distance);
        }
        return left;
    }

    /** The part of a polygon at least a distance to the left of a line. */
    private static List<Vector2D> clipped(List<Vector2D> polygon, Vector2D on, Vector2D along, double distance) {
        List<Vector2D> kept = new ArrayList<>(polygon.size() + 1);
        Vector2D before = polygon.get(polygon.size() - 1);
        double leftBefore = leftOf(on, along, before) - distance;
        for (Vector2D corner : polygon) {
            double left = leftOf(on, along, corner) - distance;
            if (left >= 0 != leftBefore >= 0) {
                double part = leftBefore / (leftBefore - left);
                kept.add(before.add(part, corner.subtract(before)));
            }
            if (left >= 0) {
                kept.add(corner);
            }
            before = corner;
            leftBefore = left;
        }
        return kept;
    }

    /** Signed distance of a point to the left of a line through another point, along a unit vector. */
    private static double leftOf(Vector2D on, Vector2D along, Vector2D point) {
        return along.getX() * (point.getY() - on.getY()) - along.getY() * (point.getX() - on.getX());
    }

    private Vector2D next(int corner) {
        return corners.get((corner + 1) % corners.size());
    }

    static double cross(Vector2D a, Vector2D b) {
        return a.getX() * b.getY() - a.getY() * b.getX();
    }
}
