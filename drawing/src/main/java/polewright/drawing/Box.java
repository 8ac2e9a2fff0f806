package polewright.drawing;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/** An axis-aligned rectangle on the paper, y down. */
public record Box(double left, double top, double right, double bottom) {
    public static Box at(Vector2D point) {
        return about(point, 0, 0);
    }

    /** The box of one or more lines of text centred on {@code middle}. */
    public static Box about(Vector2D middle, double width, double height) {
        return new Box(
                middle.getX() - width / 2,
                middle.getY() - height / 2,
                middle.getX() + width / 2,
                middle.getY() + height / 2);
    }

    public double width() {
        return right - left;
    }

    public double height() {
        return bottom - top;
    }

    public Vector2D middle() {
        return new Vector2D((left + right) / 2, (top + bottom) / 2);
    }

    public Box grown(double by) {
        return new Box(left - by, top - by, right + by, bottom + by);
    }

    public boolean contains(Vector2D point) {
        return point.getX() >= left && point.getX() <= right && point.getY() >= top && point.getY() <= bottom;
    }

    public boolean meets(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    /** The smallest distance between the two; 0 if they touch or overlap. */
    public double distanceTo(Box other) {
        double across = Math.max(0, Math.max(left - other.right, other.left - right));
        double along = Math.max(0, Math.max(top - other.bottom, other.top - bottom));
        return Math.hypot(across, along);
    }

    /** The point of the box nearest to {@code point}. */
    public Vector2D nearestTo(Vector2D point) {
        return new Vector2D(
                Math.max(left, Math.min(right, point.getX())), Math.max(top, Math.min(bottom, point.getY())));
    }
}
