package polewright.alignment.allowance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * The offset at which the largest fraction of any tolerance used is smallest: inside the zone if there is one.
 *
 * <p>The problem is convex, so it is solved by two nested golden-section searches over a few limits at a time. The
 * limit that is worst at the solution joins them, until none is worse.
 *
 * @param point offset, arcminutes
 * @param share fraction of its tolerance used by the worst limit there; below 1 there is a zone
 * @param binding the limits that matter, worst first
 */
record LeastUsedTolerance(Vector2D point, double share, List<ShapedLimit> binding) {
    private static final int ROUNDS = 40;
    private static final double GOOD_ENOUGH = 1e-6;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final int NARROWINGS = 44;

    /** The limits must include one that keeps the offset within the mount's bound. */
    static LeastUsedTolerance of(List<ShapedLimit> limits) {
        List<ShapedLimit> few = new ArrayList<>();
        Vector2D point = Vector2D.ZERO;
        double share = 0;
        for (int round = 0; round < ROUNDS; round++) {
            ShapedLimit worst = worstAt(limits, point);
            if (round > 0 && worst.share(point.getX(), point.getY()) <= share + GOOD_ENOUGH) {
                break;
            }
            few.add(worst);
            point = least(few);
            share = most(few, point.getX(), point.getY());
        }
        Vector2D found = point;
        few.sort(Comparator.comparingDouble((ShapedLimit l) -> l.share(found.getX(), found.getY()))
                .reversed());
        return new LeastUsedTolerance(point, most(limits, point.getX(), point.getY()), List.copyOf(few));
    }

    private static Vector2D least(List<ShapedLimit> few) {
        double bound = ZoneFinder.MOUNT_BOUND.arcminutes();
        double east = minimum(e -> most(few, e, minimum(u -> most(few, e, u), bound)), bound);
        return new Vector2D(east, minimum(u -> most(few, east, u), bound));
    }

    /** The minimum of a convex function by golden-section search. */
    private static double minimum(DoubleUnaryOperator convex, double bound) {
        double low = -bound;
        double high = bound;
        double a = high - GOLDEN * (high - low);
        double b = low + GOLDEN * (high - low);
        double atA = convex.applyAsDouble(a);
        double atB = convex.applyAsDouble(b);
        for (int i = 0; i < NARROWINGS; i++) {
            if (atA <= atB) {
                high = b;
                b = a;
                atB = atA;
                a = high - GOLDEN * (high - low);
                atA = convex.applyAsDouble(a);
            } else {
                low = a;
                a = b;
                atA = atB;
                b = low + GOLDEN * (high - low);
                atB = convex.applyAsDouble(b);
            }
        }
        return (low + high) / 2;
    }

    private static double most(List<ShapedLimit> limits, double east, double up) {
        double most = 0;
        for (ShapedLimit limit : limits) {
            most = Math.max(most, limit.share(east, up));
        }
        return most;
    }

    private static ShapedLimit worstAt(List<ShapedLimit> limits, Vector2D point) {
        ShapedLimit worst = limits.get(0);
        double most = -1;
        for (ShapedLimit limit : limits) {
            double share = limit.share(point.getX(), point.getY());
            if (share > most) {
                most = share;
                worst = limit;
            }
        }
        return worst;
    }
}
