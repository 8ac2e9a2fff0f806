package polewright.mount.pointing;

/**
 * The tube's direction for one fork, and its derivatives with respect to the fork's errors. One object serves reading
 * after reading without allocating: a night of contradictory centrings needs a million evaluations.
 *
 * <p>In the mount's frame (meridian, east, pole) the tube is rotated about the declination axis, tilted with that axis,
 * and rotated about the hour axis; then flexure is applied.
 */
final class ForkDirection {
    private static final int AXES = 3;

    private ForkGeometry fork;
    private final double[] direction = new double[AXES];
    private double cosH;
    private double sinH;
    private double cosTilt;
    private double sinTilt;
    private double cosDec;
    private double sinDec;
    private double tiltedEast;
    private double tiltedPole;
    private double turnedMeridian;
    private double turnedEast;
    // East, north, up before flexure of the tube.
    private double straightX;
    private double straightY;
    private double straightZ;
    private double level;
    private double cosDroop;
    private double sinDroop;

    ForkDirection(ForkGeometry fork) {
        this.fork = fork;
    }

    /** Switches to another fork. */
    void use(ForkGeometry other) {
        fork = other;
    }

    /** Sets the circles: hour angle and declination as read, radians. */
    void at(double readHourAngle, double readDeclination) {
        // The fork sags with its true hour angle, not with the reading of a circle that was never set.
        double hourAngle = readHourAngle + fork.zero;
        cosH = Math.cos(hourAngle);
        sinH = Math.sin(hourAngle);
        double tilt = fork.notSquare + fork.sagSide * sinH;
        cosTilt = Math.cos(tilt);
        sinTilt = Math.sin(tilt);
        double declination = readDeclination + fork.declinationZero + fork.sagFlat * cosH;
        cosDec = Math.cos(declination);
        sinDec = Math.sin(declination);
        double meridian = fork.cosCone * cosDec;
        double pole = fork.cosCone * sinDec;
        tiltedEast = fork.sinCone * cosTilt - pole * sinTilt;
        tiltedPole = fork.sinCone * sinTilt + pole * cosTilt;
        turnedMeridian = meridian * cosH + tiltedEast * sinH;
        turnedEast = -meridian * sinH + tiltedEast * cosH;
        straightX = fork.enu(0, turnedMeridian, turnedEast, tiltedPole);
        straightY = fork.enu(1, turnedMeridian, turnedEast, tiltedPole);
        straightZ = fork.enu(2, turnedMeridian, turnedEast, tiltedPole);
        droop();
    }

    /** Lowers the direction by the tube's flexure, in proportion to the cosine of altitude. */
    private void droop() {
        level = Math.sqrt(straightX * straightX + straightY * straightY);
        double droop = fork.tubeSag * level;
        cosDroop = Math.cos(droop);
        sinDroop = Math.sin(droop);
        double stretch = level == 0 ? 1 : cosDroop + straightZ * sinDroop / level;
        direction[0] = straightX * stretch;
        direction[1] = straightY * stretch;
        direction[2] = straightZ * cosDroop - level * sinDroop;
    }

    /** Unit vector east, north, up; overwritten by the next reading. */
    double[] direction() {
        return direction;
    }

    /**
     * The angle to a direction, radians.
     *
     * @param seen unit vectors east, north, up, one after the other
     * @param star index of the direction, from 0
     */
    double angleTo(double[] seen, int star) {
        double east = seen[AXES * star];
        double north = seen[AXES * star + 1];
        double up = seen[AXES * star + 2];
        double x = direction[1] * up - direction[2] * north;
        double y = direction[2] * east - direction[0] * up;
        double z = direction[0] * north - direction[1] * east;
        double along = direction[0] * east + direction[1] * north + direction[2] * up;
        return Math.atan2(Math.sqrt(x * x + y * y + z * z), along);
    }

    /**
     * Derivatives of the direction with respect to each term.
     *
     * @param axes derivatives of the fork's own axes with respect to its axis offset
     * @param slopes filled with three values per term in the order of {@link PointingTerm}: east, north, up
     */
    void slopes(ForkGeometry.AxisSlopes axes, double[] slopes) {
        double meridian = fork.cosCone * cosDec;
        double pole = fork.cosCone * sinDec;
        double decEast = -meridian * sinTilt;
        double decM = -pole * cosH + decEast * sinH;
        double decE = pole * sinH + decEast * cosH;
        double decP = meridian * cosTilt;
        double tiltM = -tiltedPole * sinH;
        double tiltE = -tiltedPole * cosH;
        double tiltP = tiltedEast;
        double decByHour = -fork.sagFlat * sinH;
        double tiltByHour = fork.sagSide * cosH;
        put(
                PointingTerm.HOUR_ANGLE_ZERO,
                turnedEast + decByHour * decM + tiltByHour * tiltM,
                -turnedMeridian + decByHour * decE + tiltByHour * tiltE,
                decByHour * decP + tiltByHour * tiltP,
                slopes);
        put(PointingTerm.DECLINATION_ZERO, decM, decE, decP, slopes);
        put(PointingTerm.FORK_SAG_FLAT, decM * cosH, decE * cosH, decP * cosH, slopes);
        put(PointingTerm.AXES_NOT_SQUARE, tiltM, tiltE, tiltP, slopes);
        put(PointingTerm.FORK_SAG_SIDE, tiltM * sinH, tiltE * sinH, tiltP * sinH, slopes);
        double coneMeridian = -fork.sinCone * cosDec;
        double conePole = -fork.sinCone * sinDec;
        double coneEast = fork.cosCone * cosTilt - conePole * sinTilt;
        put(
                PointingTerm.CONE,
                coneMeridian * cosH + coneEast * sinH,
                -coneMeridian * sinH + coneEast * cosH,
                fork.cosCone * sinTilt + conePole * cosTilt,
                slopes);
        putAxis(PointingTerm.AXIS_EAST, axes.east(), slopes);
        putAxis(PointingTerm.AXIS_UP, axes.up(), slopes);
        // For the flexure itself: the tube sinks by the cosine of altitude per radian.
        int sag = AXES * PointingTerm.TUBE_SAG.column();
        double lengthening = -level * sinDroop + straightZ * cosDroop;
        slopes[sag] = straightX * lengthening;
        slopes[sag + 1] = straightY * lengthening;
        slopes[sag + 2] = -level * (straightZ * sinDroop + level * cosDroop);
    }

    private void put(PointingTerm term, double meridian, double east, double pole, double[] slopes) {
        putFlexed(
                term,
                fork.enu(0, meridian, east, pole),
                fork.enu(1, meridian, east, pole),
                fork.enu(2, meridian, east, pole),
                slopes);
    }

    private void putAxis(PointingTerm term, ForkGeometry.Frame change, double[] slopes) {
        putFlexed(
                term,
                change.enu(0, turnedMeridian, turnedEast, tiltedPole),
                change.enu(1, turnedMeridian, turnedEast, tiltedPole),
                change.enu(2, turnedMeridian, turnedEast, tiltedPole),
                slopes);
    }

    /** Transforms a change of the straight tube's direction by the flexure. */
    private void putFlexed(PointingTerm term, double x, double y, double z, double[] slopes) {
        int at = AXES * term.column();
        if (level == 0) {
            slopes[at] = x;
            slopes[at + 1] = y;
            slopes[at + 2] = z;
            return;
        }
        double levelChange = (straightX * x + straightY * y) / level;
        double droopChange = fork.tubeSag * levelChange;
        double stretch = cosDroop + straightZ * sinDroop / level;
        double stretchChange = -sinDroop * droopChange
                + (z * sinDroop + straightZ * cosDroop * droopChange - straightZ * sinDroop * levelChange / level)
                        / level;
        slopes[at] = x * stretch + straightX * stretchChange;
        slopes[at + 1] = y * stretch + straightY * stretchChange;
        slopes[at + 2] = z * cosDroop
                - straightZ * sinDroop * droopChange
                - levelChange * sinDroop
                - level * cosDroop * droopChange;
    }
}
