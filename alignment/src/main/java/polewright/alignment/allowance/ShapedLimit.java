package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * A limit whose motion is expanded in the offset e: A e + b to first order, which gives an ellipse or a strip of
 * offsets, plus the second-order terms.
 *
 * <p>Motions are fractions of the tolerance, offsets are arcminutes; x and y as in {@link ImageMotion}. The
 * second-order part is about tan δ · |e| of the first: 0.3 % of it at 10′ for a star at 45°, 10 % at 60′ for one at
 * 80°.
 *
 * @param exact the limit itself
 * @param x along right ascension
 * @param y along declination
 * @param worm periodic error to allow for in x, in both directions
 */
record ShapedLimit(MotionLimit exact, Series x, Series y, double worm) {
    private static final double NEWTON_STEP = 1e-3;

    /**
     * One component of the motion: its value at the pole and its derivatives with respect to east and up.
     *
     * @param east per arcminute of east
     * @param up per arcminute of up
     * @param eastEast per square arcminute, with {@code eastUp} and {@code upUp}
     */
    record Series(double pole, double east, double up, double eastEast, double eastUp, double upUp) {
        double linear(double atEast, double atUp) {
            return pole + east * atEast + up * atUp;
        }

        double bent(double atEast, double atUp) {
            return linear(atEast, atUp) + atEast * (eastEast * atEast + eastUp * atUp) + upUp * atUp * atUp;
        }

        private static Series of(double scale, double pole, double[] eastWest, double[] aboveBelow, double aboveEast) {
            double h = AxesAboutPole.STEP_ARCMIN;
            return new Series(
                    scale * pole,
                    scale * (eastWest[0] - eastWest[1]) / (2 * h),
                    scale * (aboveBelow[0] - aboveBelow[1]) / (2 * h),
                    scale * (eastWest[0] + eastWest[1] - 2 * pole) / (2 * h * h),
                    scale * (aboveEast - eastWest[0] - aboveBelow[0] + pole) / (h * h),
                    scale * (aboveBelow[0] + aboveBelow[1] - 2 * pole) / (2 * h * h));
        }
    }

    /** By finite differences between the axes around the pole. */
    static ShapedLimit of(MotionLimit limit, AxesAboutPole axes) {
        double scale = 1 / limit.toleranceArcsec();
        ImageMotion motion = limit.motion();
        Vector2D pole = motion.shift(axes.atPole());
        Vector2D east = motion.shift(axes.east());
        Vector2D west = motion.shift(axes.west());
        Vector2D above = motion.shift(axes.above());
        Vector2D below = motion.shift(axes.below());
        Vector2D corner = motion.shift(axes.aboveEast());
        return new ShapedLimit(
                limit,
                Series.of(
                        scale,
                        pole.getX(),
                        new double[] {east.getX(), west.getX()},
                        new double[] {above.getX(), below.getX()},
                        corner.getX()),
                Series.of(
                        scale,
                        pole.getY(),
                        new double[] {east.getY(), west.getY()},
                        new double[] {above.getY(), below.getY()},
                        corner.getY()),
                scale * limit.wormArcsec());
    }

    /** The fraction of the tolerance used at an offset, to first order; the limit is met up to 1. Convex. */
    double share(double east, double up) {
        double along = Math.abs(x.linear(east, up)) + worm;
        double across = y.linear(east, up);
        return Math.sqrt(along * along + across * across);
    }

    /** The same to second order. */
    double secondOrderShare(double east, double up) {
        double along = Math.abs(x.bent(east, up)) + worm;
        double across = y.bent(east, up);
        return Math.sqrt(along * along + across * across);
    }

    /** The number of steps from an interior point to the limit, to first order; may be infinite. */
    double reach(Vector2D inside, double stepEast, double stepUp) {
        double along = x.linear(inside.getX(), inside.getY());
        double across = y.linear(inside.getX(), inside.getY());
        double stepAlong = x.east * stepEast + x.up * stepUp;
        double stepAcross = y.east * stepEast + y.up * stepUp;
        double square = stepAlong * stepAlong + stepAcross * stepAcross;
        double one = root(square, (along + worm) * stepAlong + across * stepAcross, excess(along + worm, across));
        return worm == 0
                ? one
                : Math.min(
                        one,
                        root(square, (along - worm) * stepAlong + across * stepAcross, excess(along - worm, across)));
    }

    /** The same to second order, starting from the first-order value: two Newton steps. */
    double secondOrderReach(Vector2D inside, double stepEast, double stepUp, double reach) {
        double bent = reach;
        for (int i = 0; i < 2; i++) {
            double here = secondOrderShare(inside.getX() + bent * stepEast, inside.getY() + bent * stepUp);
            double nearer = bent * (1 - NEWTON_STEP);
            double slope = (here - secondOrderShare(inside.getX() + nearer * stepEast, inside.getY() + nearer * stepUp))
                    / (bent - nearer);
            if (!(slope > 0)) {
                return bent;
            }
            bent = Math.max(reach / 2, Math.min(reach * 2, bent + (1 - here) / slope));
        }
        return bent;
    }

    private static double excess(double along, double across) {
        return along * along + across * across - 1;
    }

    /** The positive root of a r² + 2 b r + c, with c negative. */
    private static double root(double a, double b, double c) {
        double least = Math.min(0, c);
        double discriminant = Math.sqrt(b * b - a * least);
        if (b > 0) {
            // This form avoids cancellation where b is positive, the other where it is not.
            return -least / (b + discriminant);
        }
        return a > 0 ? (discriminant - b) / a : Double.POSITIVE_INFINITY;
    }
}
