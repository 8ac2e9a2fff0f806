package polewright.axis.rig;

import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * One adjusting screw of the wedge or mount head. Turns are counted clockwise positive, as seen from the screw's head.
 *
 * @param geometry how far a turn goes
 * @param clockwise where a clockwise turn takes the axis
 * @param relativeGainSigma how well {@code geometry} is known, 1 sigma, as a fraction; learned from turns later
 * @param handSigmaTurns how exactly a hand makes the turns it was asked for, 1 sigma
 * @param backlashTurns play when the sense of turning is reversed
 * @param finish which way it is to be turned last
 */
public record Screw(
        ScrewGeometry geometry,
        ScrewSense clockwise,
        double relativeGainSigma,
        double handSigmaTurns,
        double backlashTurns,
        FinishSense finish) {
    public Screw {
        requireRange("uncertainty of the screw's effect", relativeGainSigma, 0.001, 2);
        requireRange("uncertainty of a turn by hand", handSigmaTurns, 0.001, 5);
        requireRange("backlash", backlashTurns, 0, 20);
    }

    /** A screw that may be turned either way last. */
    public Screw(
            ScrewGeometry geometry,
            ScrewSense clockwise,
            double relativeGainSigma,
            double handSigmaTurns,
            double backlashTurns) {
        this(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, FinishSense.EITHER);
    }

    /** A screw of which only the rough effect is known: 15 %, a hand good to a twentieth of a turn, some play. */
    public static Screw rough(ScrewGeometry geometry, ScrewSense clockwise) {
        return new Screw(geometry, clockwise, 0.15, 0.05, 0.1);
    }

    /** Change of azimuth or altitude for signed clockwise turns. */
    public Angle move(double clockwiseTurns, Angle presentAltitude) {
        return geometry.move(clockwise.sign() * clockwiseTurns, presentAltitude);
    }

    /** Signed clockwise turns for a change of azimuth or altitude. */
    public double turnsFor(Angle move, Angle presentAltitude) {
        return clockwise.sign() * geometry.turnsFor(move, presentAltitude);
    }

    /**
     * The turns that take effect of {@code clockwiseTurns} made: against the last sense they lose half the play on
     * average.
     */
    public double expected(double clockwiseTurns, boolean reversed) {
        double lost = reversed ? Math.min(Math.abs(clockwiseTurns), backlashTurns / 2) : 0;
        return clockwiseTurns - Math.copySign(lost, clockwiseTurns);
    }

    /** The turns to make for {@code effectiveTurns} to take effect; undoes {@link #expected}. */
    public double needed(double effectiveTurns, boolean reversed) {
        return effectiveTurns + (reversed ? Math.copySign(backlashTurns / 2, effectiveTurns) : 0);
    }

    /** 1 sigma of what a reversal loses: anything from none to all of the play, evenly. */
    public double playSigmaTurns() {
        return backlashTurns / Math.sqrt(12);
    }

    private static void requireRange(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new InputRefused(
                    what + " of " + value + " is outside " + low + " to " + high, "correct the rig file");
        }
    }
}
