package polewright.mount.rig;

import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * One adjustment screw of the wedge or mount head. Turns are counted clockwise positive, as seen from the screw's head.
 *
 * @param geometry movement per turn
 * @param clockwise direction of the axis for a clockwise turn
 * @param relativeGainSigma how well {@code geometry} is known, 1 sigma, as a fraction; refined later from turns
 * @param handSigmaTurns accuracy of turns made by hand, 1 sigma
 * @param backlashTurns backlash when the direction is reversed
 * @param finish required direction of the last turn
 * @param isSenseAssumed whether {@code clockwise} is only an assumption because the owner has not given this screw's
 *     direction
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

    /** A screw whose direction was given by its owner. */
    public Screw(
            ScrewGeometry geometry,
            ScrewSense clockwise,
            double relativeGainSigma,
            double handSigmaTurns,
            double backlashTurns,
            FinishSense finish) {
        this(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, finish, false);
    }

    /** A screw whose last turn may go in either direction. */
    public Screw(
            ScrewGeometry geometry,
            ScrewSense clockwise,
            double relativeGainSigma,
            double handSigmaTurns,
            double backlashTurns) {
        this(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, FinishSense.EITHER);
    }

    /** A screw known only roughly: its gain to 20 %, a hand good to a twentieth of a turn, some backlash. */
    public static Screw rough(ScrewGeometry geometry, ScrewSense clockwise) {
        return new Screw(geometry, clockwise, 0.2, 0.05, 0.2);
    }

    /** The same screw with the opposite direction. */
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

    /** The same screw with its gain known to this fraction. */
    public Screw knownTo(double gainSigma) {
        return new Screw(geometry, clockwise, gainSigma, handSigmaTurns, backlashTurns, finish, isSenseAssumed);
    }

    /** The same screw with its direction only assumed. */
    public Screw withSenseAssumed() {
        return new Screw(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, finish, true);
    }

    /** The same screw with its direction confirmed by its owner. */
    public Screw withSenseConfirmed() {
        return new Screw(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, finish, false);
    }

    /** Change of azimuth or altitude for turns, clockwise positive. */
    public Angle move(double clockwiseTurns, Angle presentAltitude) {
        return geometry.move(clockwise.sign() * clockwiseTurns, presentAltitude);
    }

    /** Turns, clockwise positive, for a change of azimuth or altitude. */
    public double turnsFor(Angle move, Angle presentAltitude) {
        return clockwise.sign() * geometry.turnsFor(move, presentAltitude);
    }

    /** The part of {@code clockwiseTurns} that takes effect: after a reversal half the backlash is lost on average. */
    public double expected(double clockwiseTurns, boolean reversed) {
        double lost = reversed ? Math.min(Math.abs(clockwiseTurns), backlashTurns / 2) : 0;
        return clockwiseTurns - Math.copySign(lost, clockwiseTurns);
    }

    /** The turns needed for {@code effectiveTurns} to take effect; the inverse of {@link #expected}. */
    public double needed(double effectiveTurns, boolean reversed) {
        return effectiveTurns + (reversed ? Math.copySign(backlashTurns / 2, effectiveTurns) : 0);
    }

    /** 1 sigma of the loss after a reversal: uniform between none and all of the backlash. */
    public double backlashSigmaTurns() {
        return backlashTurns / Math.sqrt(12);
    }

    /**
     * The part of the turns that takes effect.
     *
     * @param turns clockwise positive, on average
     * @param sigmaTurns 1 sigma, of the hand and the backlash together
     */
    public record Effect(double turns, double sigmaTurns) {}

    /**
     * The part of the turns that takes effect, with the backlash as a dead zone uniformly distributed between none and
     * all of {@code backlashTurns}: it is lost when the direction is reversed, and a second reversal recovers it. So a
     * screw whose last leg goes in the same direction as before has lost nothing, provided the last leg was longer than
     * the backlash.
     *
     * @param lastSense direction of the last leg before, 0 if not yet turned
     */
    public Effect effect(HandTurns made, double lastSense) {
        if (made.isNone()) {
            return new Effect(0, 0);
        }
        double counted = made.sigma() == 0 ? handSigmaTurns : made.sigma();
        if (!made.isPastAndBack()) {
            boolean reversed = lastSense * made.lastSense() < 0;
            return new Effect(expected(made.net(), reversed), Math.hypot(counted, reversed ? backlashSigmaTurns() : 0));
        }
        // The hand makes two counts.
        double hand = counted * Math.sqrt(2);
        double length = Math.abs(made.back());
        if (lastSense * made.back() > 0) {
            Effect notTakenUp = notTakenUp(Math.abs(made.outward()), length);
            return new Effect(
                    made.net() + made.lastSense() * notTakenUp.turns(), Math.hypot(hand, notTakenUp.sigmaTurns()));
        }
        double lost = Math.min(length, backlashTurns / 2);
        return new Effect(made.net() - made.lastSense() * lost, Math.hypot(hand, backlashSigmaTurns()));
    }

    /**
     * The total turns needed for {@code effectiveTurns} to take effect when the screw is finished as {@code finish}
     * requires, past the goal and back if necessary.
     *
     * @param lastSense direction of the last leg before, 0 if not yet turned
     */
    public double neededFrom(double lastSense, double effectiveTurns) {
        double ending = switch (finish) {
            case EITHER -> Math.signum(effectiveTurns);
            case CLOCKWISE -> 1;
            case COUNTER_CLOCKWISE -> -1;
        };
        // The first leg of a screw not yet turned is assumed to take effect at once; then the leg back is the reversal.
        double before = lastSense == 0 ? Math.signum(effectiveTurns) : lastSense;
        return effectiveTurns == 0 || before * ending >= 0
                ? effectiveTurns
                : effectiveTurns + ending * backlashTurns / 2;
    }

    /**
     * Backlash that remains after a last leg shorter than the backlash: max(0, min(outward, backlash) − back) for a
     * uniform distribution.
     */
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
