package polewright.drawing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * Points that a label should avoid covering, each with a cost. They are indexed by squares of the paper: hundreds of
 * positions are tried for a label, and only points close to one of them matter.
 */
final class ShunnedPoints {
    private static final double SIDE = 16;

    private final Map<Square, List<Shunned>> bySquare = new HashMap<>();

    private record Square(int column, int row) {}

    private record Shunned(Vector2D point, double cost) {}

    void add(Vector2D point, double cost) {
        bySquare.computeIfAbsent(new Square(index(point.getX()), index(point.getY())), first -> new ArrayList<>())
                .add(new Shunned(point, cost));
    }

    /** The cost of the points in a box; summing stops once it reaches {@code tooMuch}. */
    double within(Box box, double tooMuch) {
        double cost = 0;
        for (int column = index(box.left()); column <= index(box.right()); column++) {
            for (int row = index(box.top()); row <= index(box.bottom()) && cost < tooMuch; row++) {
                for (Shunned one : in(column, row)) {
                    cost += box.contains(one.point()) ? one.cost() : 0;
                }
            }
        }
        return cost;
    }

    /** The cost of the points nearer to {@code middle} than {@code distance}. */
    double around(Vector2D middle, double distance) {
        Box near = Box.about(middle, 2 * distance, 2 * distance);
        double cost = 0;
        for (int column = index(near.left()); column <= index(near.right()); column++) {
            for (int row = index(near.top()); row <= index(near.bottom()); row++) {
                for (Shunned one : in(column, row)) {
                    cost += one.point().distanceSq(middle) < distance * distance ? one.cost() : 0;
                }
            }
        }
        return cost;
    }

    private List<Shunned> in(int column, int row) {
        return bySquare.getOrDefault(new Square(column, row), List.of());
    }

    private static int index(double coordinate) {
        return (int) Math.floor(coordinate / SIDE);
    }
}
