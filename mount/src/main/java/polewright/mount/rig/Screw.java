package polewright.mount.rig;

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
 * @param isSenseAssumed whether {@code clockwise} is only an assumption: the owner has not said which way this screw goes
 */
public record Screw(
        ScrewGeometry geometry,
        ScrewSense clockwise,
        double relativeGainSigma,
        double handSigmaTurns,
        double backlashTurns,
        FinishSense finish,
        boolean isSenseAssumed) {
    public Screw {
        requireRange("uncertainty of the screw's effect", relativeGainSigma, 0.001, 2);
        requireRange("uncertainty of a turn by hand", handSigmaTurns, 0.001, 5);
        requireRange("backlash", backlashTurns, 0, 20);
    }

    /** A screw whose direction its owner gave. */
    public Screw(
            ScrewGeometry geometry,
            ScrewSense clockwise,
            double relativeGainSigma,
            double handSigmaTurns,
            double backlashTurns,
            FinishSense finish) {
        this(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, finish, false);
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

    /** A screw known only roughly: its gain to 20 %, a hand good to a twentieth of a turn, some play. */
    public static Screw rough(ScrewGeometry geometry, ScrewSense clockwise) {
        return new Screw(geometry, clockwise, 0.2, 0.05, 0.2);
    }

    /** The same screw going the other way. */
    public Screw reversed() {
        return new Screw(
                geometry,
                clockwise.reversed(),
                relativeGainSigma,
                handSigmaTurns,
                backlashTurns,
                finish,
                isSenseAssumed);
    }

    /** The same screw, known to this fraction of its effect. */
    public Screw knownTo(double gainSigma) {
        return new Screw(geometry, clockwise, gainSigma, handSigmaTurns, backlashTurns, finish, isSenseAssumed);
    }

    /** The same screw with its direction only assumed. */
    public Screw withSenseAssumed() {
        return new Screw(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, finish, true);
    }

    /** The same screw with its direction confirmed by its owner. */
    public Screw withSenseTold() {
        return new Screw(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, finish, false);
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

    /**
     * What takes effect of turns made.
     *
     * @param turns clockwise positive, on average
     * @param sigmaTurns 1 sigma, of the hand and of the play together
     */
    public record Effect(double turns, double sigmaTurns) {}

    /**
     * What takes effect of turns, the play being a dead zone of anything from none to all of {@code backlashTurns}: it is
     * lost when the sense is reversed, and a second reversal gives it back. So a screw that is left in the sense in which it
     * was left before has lost nothing, as long as the last leg was longer than the play.
     *
     * @param lastSense the way in which the screw was left before, 0 when it was not turned yet
     */
    public Effect effect(HandTurns made, double lastSense) {
        if (made.isNone()) {
            return new Effect(0, 0);
        }
        double counted = made.sigma() == 0 ? handSigmaTurns : made.sigma();
        if (!made.isPastAndBack()) {
            boolean reversed = lastSense * made.lastSense() < 0;
            return new Effect(expected(made.net(), reversed), Math.hypot(counted, reversed ? playSigmaTurns() : 0));
        }
        // The hand counts two legs.
        double hand = counted * Math.sqrt(2);
        double length = Math.abs(made.back());
        if (lastSense * made.back() > 0) {
            Effect notTakenUp = notTakenUp(Math.abs(made.outward()), length);
            return new Effect(
                    made.net() + made.lastSense() * notTakenUp.turns(), Math.hypot(hand, notTakenUp.sigmaTurns()));
        }
        double lost = Math.min(length, backlashTurns / 2);
        return new Effect(made.net() - made.lastSense() * lost, Math.hypot(hand, playSigmaTurns()));
    }

    /**
     * The turns to make in all for {@code effectiveTurns} to take effect, when the screw is finished as {@code finish} wants
     * it, past the goal and back if need be.
     *
     * @param lastSense the way in which the screw was left before, 0 when it was not turned yet
     */
    public double neededFrom(double lastSense, double effectiveTurns) {
        double ending = switch (finish) {
            case EITHER -> Math.signum(effectiveTurns);
            case CLOCKWISE -> 1;
            case COUNTER_CLOCKWISE -> -1;
        };
        // The first leg of a screw not turned yet is taken to push at once: then it is the leg back that reverses.
        double before = lastSense == 0 ? Math.signum(effectiveTurns) : lastSense;
        return effectiveTurns == 0 || before * ending >= 0
                ? effectiveTurns
                : effectiveTurns + ending * backlashTurns / 2;
    }

    /** What a last leg shorter than the play leaves of it: max(0, min(outward, play) − back) for evenly spread play. */
    private Effect notTakenUp(double outward, double back) {
        double most = Math.min(outward, backlashTurns);
        if (back >= most) {
            return new Effect(0, 0);
        }
        double reaching = most - back;
        double beyond = backlashTurns - most;
        double mean = (reaching * reaching / 2 + reaching * beyond) / backlashTurns;
        double square = (reaching * reaching * reaching / 3 + reaching * reaching * beyond) / backlashTurns;
        return new Effect(mean, Math.sqrt(Math.max(0, square - mean * mean)));
    }

    private static void requireRange(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new InputRefused(
                    what + " of " + value + " is outside " + low + " to " + high, "correct the rig file");
        }
    }
}
