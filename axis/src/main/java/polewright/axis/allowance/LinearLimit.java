package polewright.axis.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * A limit with its motion taken as linear in the offset, A e + b.
 *
 * <p>Motions are in shares of the tolerance, offsets in arcminutes; x and y as in {@link ImageMotion}.
 *
 * @param exact the limit itself
 * @param xEast what an arcminute of east adds to x
 * @param xUp what an arcminute of up adds to x
 * @param xPole x with the axis at the true pole: what refraction and the drive's rate make
 * @param yEast what an arcminute of east adds to y
 * @param yUp what an arcminute of up adds to y
 * @param yPole y with the axis at the true pole
 * @param worm what the worm may add to x, either way
 */
record LinearLimit(
        MotionLimit exact,
        double xEast,
        double xUp,
        double xPole,
        double yEast,
        double yUp,
        double yPole,
        double worm) {

    /** By differences between the axes to either side of the pole. */
    static LinearLimit of(MotionLimit limit, AxesAboutPole axes) {
        double scale = 1 / limit.toleranceArcsec();
        double slope = scale / (2 * AxesAboutPole.STEP_ARCMIN);
        ImageMotion motion = limit.motion();
        Vector2D pole = motion.shift(axes.atPole());
        Vector2D east = motion.shift(axes.east()).subtract(motion.shift(axes.west()));
        Vector2D up = motion.shift(axes.above()).subtract(motion.shift(axes.below()));
        return new LinearLimit(
                limit,
                slope * east.getX(),
                slope * up.getX(),
                scale * pole.getX(),
                slope * east.getY(),
                slope * up.getY(),
                scale * pole.getY(),
                scale * limit.wormArcsec());
    }

    /** How much of the tolerance an offset uses: up to 1 all is well. Convex. */
    double share(double east, double up) {
        double x = Math.abs(xPole + xEast * east + xUp * up) + worm;
        double y = yPole + yEast * east + yUp * up;
        return Math.sqrt(x * x + y * y);
    }

    /** How many times a step fits in from a point inside before the tolerance is used up; may be infinite. */
    double reach(Vector2D inside, double stepEast, double stepUp) {
        double x = xPole + xEast * inside.getX() + xUp * inside.getY();
        double y = yPole + yEast * inside.getX() + yUp * inside.getY();
        double stepX = xEast * stepEast + xUp * stepUp;
        double stepY = yEast * stepEast + yUp * stepUp;
        double square = stepX * stepX + stepY * stepY;
        double one = root(square, (x + worm) * stepX + y * stepY, (x + worm) * (x + worm) + y * y - 1);
        return worm == 0
                ? one
                : Math.min(one, root(square, (x - worm) * stepX + y * stepY, (x - worm) * (x - worm) + y * y - 1));
    }

    /** The positive root of a r² + 2 b r + c, with c negative. */
    private static double root(double a, double b, double c) {
        double least = Math.min(0, c);
        double sum = b + Math.sqrt(b * b - a * least);
        // −c over the sum loses no figures where b is positive; where it is negative, the other form does not.
        return b > 0 ? -least / sum : a > 0 ? (Math.sqrt(b * b - a * least) - b) / a : Double.POSITIVE_INFINITY;
    }
}
