package polewright.drawing;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/** Polylines, as points. */
public final class Strokes {
    private Strokes() {}

    /** Points along the polyline, no farther apart than {@code step}, including its corners. */
    public static List<Vector2D> sampled(List<Vector2D> corners, double step) {
        List<Vector2D> points = new ArrayList<>();
        for (int i = 1; i < corners.size(); i++) {
            Vector2D from = corners.get(i - 1);
            Vector2D along = corners.get(i).subtract(from);
            int pieces = (int) Math.max(1, Math.ceil(along.getNorm() / step));
            for (int k = 0; k < pieces; k++) {
                points.add(from.add((double) k / pieces, along));
            }
        }
        if (!corners.isEmpty()) {
            points.add(corners.get(corners.size() - 1));
        }
        return points;
    }

    /** The polyline closed into a ring. */
    public static List<Vector2D> closed(List<Vector2D> corners) {
        List<Vector2D> ring = new ArrayList<>(corners);
        if (!corners.isEmpty()) {
            ring.add(corners.get(0));
        }
        return ring;
    }

    /** Whether a point is inside the outline: a ray from there to the right crosses it an odd number of times. */
    public static boolean encloses(List<Vector2D> corners, Vector2D point) {
        boolean isInside = false;
        for (int i = 0; i < corners.size(); i++) {
            Vector2D from = corners.get(i);
            Vector2D to = corners.get((i + 1) % corners.size());
            if (from.getY() > point.getY() != to.getY() > point.getY()) {
                double share = (point.getY() - from.getY()) / (to.getY() - from.getY());
                isInside ^= point.getX() < from.getX() + share * (to.getX() - from.getX());
            }
        }
        return isInside;
    }

    /** The point at a fraction of the polyline's length. */
    public static Vector2D at(List<Vector2D> corners, double share) {
        List<Vector2D> fine = sampled(corners, Math.max(1e-9, length(corners) / 64));
        double wanted = share * length(corners);
        double gone = 0;
        for (int i = 1; i < fine.size(); i++) {
            gone += fine.get(i).distance(fine.get(i - 1));
            if (gone >= wanted) {
                return fine.get(i);
            }
        }
        return fine.get(fine.size() - 1);
    }

    public static double length(List<Vector2D> corners) {
        double sum = 0;
        for (int i = 1; i < corners.size(); i++) {
            sum += corners.get(i).distance(corners.get(i - 1));
        }
        return sum;
    }

    /** Points of an arc, angles from the right, anticlockwise as seen. */
    public static List<Vector2D> arc(Vector2D centre, double radius, double fromRad, double sweepRad) {
        List<Vector2D> points = new ArrayList<>();
        int pieces = 24;
        for (int i = 0; i <= pieces; i++) {
            points.add(Svg.around(centre, radius, fromRad + sweepRad * i / pieces));
        }
        return points;
    }
}
