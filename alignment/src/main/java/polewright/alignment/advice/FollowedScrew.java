package polewright.alignment.advice;

import polewright.mount.rig.HandTurns;

/**
 * One screw while frames are followed: which way it is held to go, what was ordered, and what the hand has made of it since
 * the log last had it. All turns are clockwise positive; those <i>by the rig</i> are what would move the axis so if the
 * screw goes as the rig says.
 *
 * @param senseLogOdds that it goes as the rig says, natural logarithm; below zero the orders are the other way
 * @param leg what it was last asked to do from rest, and what came of it
 * @param netTurns since the log last had it
 * @param sigmaTurns of those, 1 sigma
 * @param wentWrong turns by the rig, where it was last seen to move and that was away from the aim; else 0
 * @param isHandDoubted whether that was likelier a slip of the hand than of the rig
 */
record FollowedScrew(
        double senseLogOdds, Leg leg, double netTurns, double sigmaTurns, double wentWrong, boolean isHandDoubted) {
    /** A hand makes no less. */
    static final double LEAST_ORDER_TURNS = 1 / 16.0;

    // A person makes one order in thirty the wrong way round.
    private static final double ONE_ORDER = Math.log(30);
    private static final double SENSE_IS_SURE = 3;
    // Seen on frames alone, a turn is known by what it did, and what the screw does is known to so much.
    private static final double SIGMA_OF_WHAT_IS_SEEN = 0.3;
    // Someone who makes an order in one go, and then takes a frame, makes all of it.
    private static final double SIGMA_OF_WHAT_IS_ORDERED = 0.15;
    private static final double LEAST_SHARE_OF_AN_ORDER = 0.6;
    private static final double MOST_SHARE_OF_AN_ORDER = 1.7;
    private static final double SIGMA_OF_THE_UNKNOWN = 2;
    private static final double LEAST_SIGMA_TURNS = 0.05;

    /**
     * What a hand was asked for, from one rest of the axis to the next.
     *
     * @param ordered clockwise positive; less than a sixteenth is no order
     * @param hasSize whether its size was shown, or only its way
     * @param clockwisePerEffect what was turned over what it came to by the rig, +1 or −1, once a frame has seen it; 0 before
     * @param relativeSigma how well what was turned is known by what it came to
     */
    record Leg(double ordered, boolean hasSize, double clockwisePerEffect, double relativeSigma) {
        static final Leg NONE = new Leg(0, false, 0, 0);

        static Leg ordered(double clockwiseTurns, boolean hasSize) {
            return new Leg(clockwiseTurns, hasSize, 0, 0);
        }

        private boolean isOrdered() {
            return Math.abs(ordered) >= LEAST_ORDER_TURNS;
        }

        private boolean isSeen() {
            return clockwisePerEffect != 0;
        }

        private Leg seen(double clockwise, double sigma) {
            return new Leg(ordered, hasSize, clockwise, sigma);
        }

        private boolean isMadeInFullBy(double effect) {
            double share = Math.abs(effect / ordered);
            return hasSize && share > LEAST_SHARE_OF_AN_ORDER && share < MOST_SHARE_OF_AN_ORDER;
        }
    }

    static FollowedScrew held(double senseLogOdds) {
        return new FollowedScrew(senseLogOdds, Leg.NONE, 0, 0, 0, false);
    }

    boolean isSenseSure() {
        return Math.abs(senseLogOdds) >= SENSE_IS_SURE;
    }

    /** +1 where it is held to go as the rig says, −1 the other way. */
    double sense() {
        return senseLogOdds >= 0 ? 1 : -1;
    }

    /** Whether it was last seen to go away from the aim. */
    boolean isToTurnBack() {
        return wentWrong != 0;
    }

    HandTurns made() {
        return new HandTurns(netTurns, 0, sigmaTurns);
    }

    FollowedScrew asked(Leg order) {
        return new FollowedScrew(senseLogOdds, order, netTurns, sigmaTurns, wentWrong, isHandDoubted);
    }

    /** One frame that saw it where it was: what was said of its last move still holds. */
    FollowedScrew rested() {
        return asked(Leg.NONE);
    }

    /**
     * The log has what was made.
     *
     * @param turnedRound whether the rig says from now on that it goes the other way
     * @param learnedLogOdds that it goes as the rig then says, by the whole night
     */
    FollowedScrew logged(boolean turnedRound, double learnedLogOdds) {
        double sign = turnedRound ? -1 : 1;
        double seen = sign * senseLogOdds;
        return new FollowedScrew(
                // The log doubts a described rig only after two turns; an observer who watched one go wrong already
                // does.
                seen > 0 ? Math.max(seen, learnedLogOdds) : seen,
                leg.seen(sign * leg.clockwisePerEffect(), leg.relativeSigma()),
                0,
                0,
                sign * wentWrong,
                isHandDoubted);
    }

    /** The rig was corrected, or what was logged: its word counts from now on. */
    FollowedScrew relearned(boolean turnedRound, double learnedLogOdds) {
        double sign = turnedRound ? -1 : 1;
        return new FollowedScrew(learnedLogOdds, Leg.NONE, netTurns, sigmaTurns, sign * wentWrong, isHandDoubted);
    }

    /**
     * One frame that saw it move.
     *
     * @param effect what it came to since the frame before, turns by the rig
     * @param isAwayFromAim whether that took the axis away from the aim
     * @param inOneGo whether the leg began at the frame before and is over
     */
    FollowedScrew moved(double effect, boolean isAwayFromAim, boolean inOneGo) {
        double wrong = isAwayFromAim ? effect : 0;
        if (leg.isSeen()) {
            return adding(leg, senseLogOdds, leg.clockwisePerEffect() * effect, wrong);
        }
        if (!leg.isOrdered()) {
            return adding(leg.seen(sense(), SIGMA_OF_THE_UNKNOWN), senseLogOdds, sense() * effect, wrong);
        }
        boolean asTheRigSays = leg.ordered() * effect > 0;
        double logOdds = senseLogOdds + (asTheRigSays ? ONE_ORDER : -ONE_ORDER);
        double believed = logOdds >= 0 ? 1 : -1;
        boolean isOrderMade = believed > 0 == asTheRigSays;
        // Of a rig that was described well it is likelier that the hand slipped: which way it turned is not known then.
        Leg seen = leg.seen(believed, isOrderMade ? SIGMA_OF_WHAT_IS_SEEN : SIGMA_OF_THE_UNKNOWN);
        return isOrderMade && inOneGo && leg.isMadeInFullBy(effect)
                ? adding(leg.seen(believed, SIGMA_OF_WHAT_IS_ORDERED), logOdds, leg.ordered(), wrong)
                : adding(seen, logOdds, believed * effect, wrong);
    }

    private FollowedScrew adding(Leg now, double logOdds, double turns, double wrong) {
        double sigma = Math.max(LEAST_SIGMA_TURNS, now.relativeSigma() * Math.abs(turns));
        boolean isDoubted = wrong != 0 && now.relativeSigma() == SIGMA_OF_THE_UNKNOWN;
        return new FollowedScrew(logOdds, now, netTurns + turns, sigmaTurns + sigma, wrong, isDoubted);
    }
}
