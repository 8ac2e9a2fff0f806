package polewright.drawing;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * A rotated coordinate system on the paper: points on a tilted body are given along it and across it.
 *
 * @param origin on the paper, y down
 * @param angleRad from the right, anticlockwise as seen
 */
public record Tilted(Vector2D origin, double angleRad) {
    /** The system with its origin at {@code to}, in the direction from {@code from} to {@code to}. */
    public static Tilted along(Vector2D from, Vector2D to) {
        return new Tilted(to, Math.atan2(from.getY() - to.getY(), to.getX() - from.getX()));
    }

    /** The point at {@code along} and {@code across}, across positive to the left. */
    public Vector2D at(double along, double across) {
        double cos = Math.cos(angleRad);
        double sin = Math.sin(angleRad);
        return new Vector2D(origin.getX() + along * cos - across * sin, origin.getY() - along * sin - across * cos);
    }

    /** The four corners of a rectangle aligned with this system. */
    public Vector2D[] box(double alongFrom, double alongTo, double acrossFrom, double acrossTo) {
        return new Vector2D[] {
            at(alongFrom, acrossFrom), at(alongTo, acrossFrom), at(alongTo, acrossTo), at(alongFrom, acrossTo)
        };
    }

    public Tilted movedTo(double along, double across) {
        return new Tilted(at(along, across), angleRad);
    }

    public Tilted turned(double byRad) {
        return new Tilted(origin, angleRad + byRad);
    }
}
