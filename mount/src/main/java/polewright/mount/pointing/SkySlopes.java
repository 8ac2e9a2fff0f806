package polewright.mount.pointing;

import polewright.sky.place.Site;

/**
 * For a fork with its errors: the residual of a star from the tube's direction, and the derivatives of the direction
 * with respect to each term. One object serves star after star.
 */
final class SkySlopes {
    private static final double AT_THE_POLE = 1e-12;
    private static final int AXES = 3;

    private final ForkDirection tube;
    private ForkGeometry.AxisSlopes axes;
    private final double poleNorth;
    private final double poleUp;
    private final double[] westward = new double[AXES];
    private final double[] northward = new double[AXES];
    private final double[] slopes;
    private final double[] west;
    private final double[] north;
    private double residualWest;
    private double residualNorth;

    SkySlopes(Site site, ForkGeometry fork) {
        int terms = PointingTerm.values().length;
        tube = new ForkDirection(fork);
        axes = fork.axisSlopes();
        poleNorth = site.latitude().cos();
        poleUp = site.latitude().sin();
        slopes = new double[AXES * terms];
        west = new double[terms];
        north = new double[terms];
    }

    /** Switches to another fork. */
    void use(ForkGeometry fork) {
        tube.use(fork);
        axes = fork.axisSlopes();
    }

    /** Sets the circles: hour angle and declination as read, radians. */
    void at(double readHourAngle, double readDeclination) {
        tube.at(readHourAngle, readDeclination);
        double[] middle = tube.direction();
        double x = middle[1] * poleUp - middle[2] * poleNorth;
        double y = -middle[0] * poleUp;
        double z = middle[0] * poleNorth;
        double across = Math.sqrt(x * x + y * y + z * z);
        // At the pole itself every direction is south; that of hour angle 0 is as good as any.
        boolean isAtPole = across < AT_THE_POLE;
        westward[0] = isAtPole ? -1 : x / across;
        westward[1] = isAtPole ? 0 : y / across;
        westward[2] = isAtPole ? 0 : z / across;
        northward[0] = westward[1] * middle[2] - westward[2] * middle[1];
        northward[1] = westward[2] * middle[0] - westward[0] * middle[2];
        northward[2] = westward[0] * middle[1] - westward[1] * middle[0];
        tube.slopes(axes, slopes);
        for (int term = 0; term < west.length; term++) {
            west[term] = along(westward, AXES * term);
            north[term] = along(northward, AXES * term);
        }
    }

    private double along(double[] way, int at) {
        return slopes[at] * way[0] + slopes[at + 1] * way[1] + slopes[at + 2] * way[2];
    }

    /** Derivative of the direction westward with respect to each term; overwritten by the next reading. */
    double[] west() {
        return west;
    }

    /** Derivative of the direction northward with respect to each term; overwritten by the next reading. */
    double[] north() {
        return north;
    }

    /**
     * Measures from the tube's direction along the great circle to a star.
     *
     * @param seen unit vectors east, north, up, one after the other
     * @param star index of the star, from 0
     */
    void measureTo(double[] seen, int star) {
        double[] middle = tube.direction();
        double x = seen[AXES * star] - middle[0];
        double y = seen[AXES * star + 1] - middle[1];
        double z = seen[AXES * star + 2] - middle[2];
        double toWest = x * westward[0] + y * westward[1] + z * westward[2];
        double toNorth = x * northward[0] + y * northward[1] + z * northward[2];
        double sine = Math.sqrt(toWest * toWest + toNorth * toNorth);
        double stretch = sine < 1e-6 ? 1 : tube.angleTo(seen, star) / sine;
        residualWest = toWest * stretch;
        residualNorth = toNorth * stretch;
    }

    /** Radians west, of the last measurement. */
    double residualWest() {
        return residualWest;
    }

    /** Radians north, of the last measurement. */
    double residualNorth() {
        return residualNorth;
    }
}
