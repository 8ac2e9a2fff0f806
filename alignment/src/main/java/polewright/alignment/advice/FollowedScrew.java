package polewright.alignment.advice;

import polewright.mount.rig.HandTurns;

/**
 * The state of one screw during live adjustment from camera frames: its assumed direction, the last order, and the
 * turns made since the last log entry. All turns are clockwise positive. <i>Nominal</i> turns are those that would have
 * moved the axis as observed if the screw's direction is as the rig says.
 *
 * @param senseLogOdds natural log odds that its direction is as the rig says; below zero, orders are reversed
 * @param leg the last order from rest, and the move that followed
 * @param netTurns turns since the last log entry
 * @param sigmaTurns uncertainty of those, 1 sigma
 * @param wentWrong nominal turns of the last move seen if it was away from the aim, else 0
 * @param isHandDoubted whether a slip of the hand explains that better than a reversed screw
 */
record FollowedScrew(
        double senseLogOdds, Leg leg, double netTurns, double sigmaTurns, double wentWrong, boolean isHandDoubted) {
    /** The smallest turn that can be made by hand. */
    static final double LEAST_ORDER_TURNS = 1 / 16.0;

    // One order in 30 is carried out in the wrong direction.
    private static final double ONE_ORDER = Math.log(30);
    private static final double SENSE_IS_SURE = 3;
    // Without a usable order, turns are inferred from their effect, through a gain known to this relative sigma.
    private static final double SIGMA_OF_WHAT_IS_SEEN = 0.3;
    // An order carried out in one go before the next frame is assumed to be carried out in full.
    private static final double SIGMA_OF_WHAT_IS_ORDERED = 0.15;
    private static final double LEAST_SHARE_OF_AN_ORDER = 0.6;
    private static final double MOST_SHARE_OF_AN_ORDER = 1.7;
    private static final double SIGMA_OF_THE_UNKNOWN = 2;
    private static final double LEAST_SIGMA_TURNS = 0.05;

    /**
     * One leg: from one rest of the axis to the next.
     *
     * @param ordered turns ordered, clockwise positive; less than a sixteenth counts as no order
     * @param hasSize whether the size of the order was shown, or only its direction
     * @param clockwisePerEffect sign of the actual turns relative to the nominal ones, +1 or −1; 0 until a frame has
     *     shown it
     * @param relativeSigma relative uncertainty of the turns inferred from their effect
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

    /** +1 if its direction is taken to be as the rig says, −1 if reversed. */
    double sense() {
        return senseLogOdds >= 0 ? 1 : -1;
    }

    /** Whether it was last seen to move the axis away from the aim. */
    boolean isToTurnBack() {
        return wentWrong != 0;
    }

    HandTurns made() {
        return new HandTurns(netTurns, 0, sigmaTurns);
    }

    FollowedScrew asked(Leg order) {
        return new FollowedScrew(senseLogOdds, order, netTurns, sigmaTurns, wentWrong, isHandDoubted);
    }

    /** After a frame that showed no move: what is known of its last move still holds. */
    FollowedScrew rested() {
        return asked(Leg.NONE);
    }

    /**
     * After the turns have been logged.
     *
     * @param isReversed whether the rig now gives the opposite direction
     * @param learnedLogOdds log odds from the whole night that its direction is as the rig now says
     */
    FollowedScrew logged(boolean isReversed, double learnedLogOdds) {
        double sign = isReversed ? -1 : 1;
        double seen = sign * senseLogOdds;
        return new FollowedScrew(
                // The fix doubts a described rig only after two turns; here one turn seen to go wrong is enough.
                seen > 0 ? Math.max(seen, learnedLogOdds) : seen,
                leg.seen(sign * leg.clockwisePerEffect(), leg.relativeSigma()),
                0,
                0,
                sign * wentWrong,
                isHandDoubted);
    }

    /** After the rig or the log has been corrected: its direction applies from now on. */
    FollowedScrew relearned(boolean isReversed, double learnedLogOdds) {
        double sign = isReversed ? -1 : 1;
        return new FollowedScrew(learnedLogOdds, Leg.NONE, netTurns, sigmaTurns, sign * wentWrong, isHandDoubted);
    }

    /**
     * After a frame that showed a move.
     *
     * @param effect nominal turns since the previous frame
     * @param isAwayFromAim whether that moved the axis away from the aim
     * @param inOneGo whether the leg began at the previous frame and is complete
     */
    FollowedScrew moved(double effect, boolean isAwayFromAim, boolean inOneGo) {
        double wrong = isAwayFromAim ? effect : 0;
        if (leg.isSeen()) {
            return adding(leg, senseLogOdds, leg.clockwisePerEffect() * effect, wrong);
        }
        if (!leg.isOrdered()) {
            return adding(leg.seen(sense(), SIGMA_OF_THE_UNKNOWN), senseLogOdds, sense() * effect, wrong);
        }
        boolean isAsRigSays = leg.ordered() * effect > 0;
        double logOdds = senseLogOdds + (isAsRigSays ? ONE_ORDER : -ONE_ORDER);
        double believed = logOdds >= 0 ? 1 : -1;
        boolean isOrderMade = believed > 0 == isAsRigSays;
        // With a well-described rig a slip of the hand is more likely, and the direction of the turn is then unknown.
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
