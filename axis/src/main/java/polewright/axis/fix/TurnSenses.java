package polewright.axis.fix;

/**
 * Which way each screw was turned last: a turn the other way first takes up its play.
 *
 * @param azimuth +1 clockwise, −1 counter-clockwise, 0 not turned yet
 * @param altitude the same of the altitude screw
 */
record TurnSenses(double azimuth, double altitude) {
    static final TurnSenses NOT_TURNED = new TurnSenses(0, 0);

    boolean azimuthReversedBy(double turns) {
        return azimuth * turns < 0;
    }

    boolean altitudeReversedBy(double turns) {
        return altitude * turns < 0;
    }

    TurnSenses after(double azimuthTurns, double altitudeTurns) {
        return new TurnSenses(
                azimuthTurns == 0 ? azimuth : Math.signum(azimuthTurns),
                altitudeTurns == 0 ? altitude : Math.signum(altitudeTurns));
    }
}
