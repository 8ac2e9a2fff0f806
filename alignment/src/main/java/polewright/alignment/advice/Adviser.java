package polewright.alignment.advice;

import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.Advice.Clamp;
import polewright.alignment.advice.Advice.Stop;
import polewright.alignment.advice.Advice.TurnScrews;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Fix;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * What to do next. A pure function of the situation. The first of these that holds:
 *
 * <ol>
 *   <li>Nothing or too little known, or sightings in conflict: take the sighting of which to expect most per minute. (If none
 *       can settle the conflict, what follows turns the axis, and seeing where that took it does.)
 *   <li>Good enough, or at the limit of the screws: finish. That is to clamp, then to confirm with a sighting, then to stop.
 *   <li>Not known which way a turn took the axis, and that is most of what is not known: take the sighting that shows it.
 *   <li>Clamped, not confirmed, and perhaps good enough: confirm.
 *   <li>Turning will probably do, or will take the axis much nearer, or the offset stands out from its uncertainty and a better fix would not make better
 *       turns: turn. Where the axis is likely good already, only if it clearly helps.
 *   <li>Loose, and likely good enough: clamp.
 *   <li>One more round is likely to leave it no better: finish.
 *   <li>Otherwise take a better sighting.
 * </ol>
 */
public final class Adviser {
    /** Good enough is being within the allowance with this probability. */
    public static final double ENOUGH = 0.95;

    /**
     * With this probability the clamps are tightened, to find out the rest: what is seen after clamping counts for more than
     * what clamping may undo again.
     */
    public static final double LIKELY = 0.65;

    // Turning on less than this many sigmas mostly turns on noise.
    private static final double STANDS_OUT_SIGMAS = 2;
    // Turning is worth it on a vague fix too, if it will probably do.
    private static final double PROBABLY_DOES = 0.8;
    private static final double CLEARLY_HELPS = 0.1;
    // Confirming is for an axis that may be good; one that is surely not wants turning, clamped or not.
    private static final double HOPELESS = 0.2;
    // Of the square of how far the axis may be expected to be from the aim.
    private static final double MUCH_NEARER = 0.5;
    // Near enough to the probability asked for to end a night that another round would leave no better.
    private static final double NEARLY_ENOUGH = 0.9;
    // While the fix is worse than the turns themselves, a sighting saves a turn.
    private static final double FIX_OVER_TURN_VARIANCE = 2;
    // Less than this is not worth loosening the clamps for.
    private static final double WORTH_A_ROUND = 0.02;

    private Adviser() {}

    public static Advice advise(Situation situation) {
        AxisState state = situation.fix().state();
        Outlook outlook = new Outlook(situation);
        double now =
                PossibleAxes.of(situation.fix()).expected(place -> outlook.ifLeft(place, state.offsetCovariance()));
        if (situation.fix() instanceof Fix.Underdetermined under) {
            return SightingPlanner.best(situation, now, under.missing());
        }
        if (situation.fix() instanceof Fix.Dubious dubious
                && dubious.dispute() == Fix.Dispute.THE_AXIS
                && !SightingPlanner.isBeyondSightings(situation)) {
            return SightingPlanner.best(situation, now, dubious.reason());
        }
        List<ScrewTurn> all = TurnPlanner.turns(situation, outlook);
        if (now >= enough(situation) || isAtTheLimit(situation, all)) {
            return finish(situation, now);
        }
        if (SenseInDoubt.isWorthALook(situation, all)) {
            return SenseInDoubt.look(situation, now);
        }
        // A mount is moved by hand whichever way its screws go.
        List<ScrewTurn> turns = TurnPlanner.isBeyondScrews(situation, all) ? all : TestTurns.orderable(situation, all);
        if (now >= HOPELESS && situation.clamped() && situation.sinceClamp() != Confirmation.AGREES) {
            return confirm(situation, now);
        }
        AxisState afterTurns = TurnPlanner.after(state, situation.rig(), turns);
        double ifAsTold = outlook.onceTightened(afterTurns.offset(), afterTurns.offsetCovariance());
        double after = TestTurns.probabilityAfter(situation, turns, now, ifAsTold);
        if (isTimeToTurn(situation, turns, afterTurns, now, after)) {
            return TurnPlanner.isBeyondScrews(situation, turns)
                    ? TurnPlanner.byHand(situation, now)
                    : turn(situation, outlook, now, TestTurns.of(situation, turns));
        }
        if (!situation.clamped() && now >= LIKELY) {
            return new Clamp(now);
        }
        List<RankedSighting> ranking = SightingPlanner.ranking(situation);
        if (isNotWorthARound(situation, ranking, now, after)) {
            return finish(situation, now);
        }
        return SightingPlanner.best(
                ranking,
                now,
                "the fix is not yet accurate enough to say whether the axis is "
                        + situation.allowance().words());
    }

    private static TurnScrews turn(Situation situation, Outlook outlook, double now, List<ScrewTurn> turns) {
        AxisState after = TurnPlanner.after(situation.fix().state(), situation.rig(), turns);
        double ifAsTold = outlook.onceTightened(after.offset(), after.offsetCovariance());
        return new TurnScrews(
                now,
                turns,
                TestTurns.tested(situation, turns),
                situation.clamped(),
                after.offset(),
                TestTurns.probabilityAfter(situation, turns, now, ifAsTold),
                SkyInView.during(situation, turns));
    }

    /**
     * What probability to ask for: {@link #ENOUGH}, unless hand and clamps scatter the axis so far that one try reaches it
     * seldom; then so much less, so that the night does not go into rolling dice. Before clamping no more can be asked for
     * than the clamps leave.
     */
    private static double enough(Situation situation) {
        double oneTry = TurnPlanner.probabilityOfOneTry(situation);
        if (oneTry < PROBABLY_DOES) {
            return ENOUGH * oneTry / PROBABLY_DOES;
        }
        return situation.clamped() ? ENOUGH : new Tightening(situation.allowance(), situation.rig()).enough();
    }

    /** The fix is finer than a hand's least turn, and no turn would bring the axis nearer. */
    private static boolean isAtTheLimit(Situation situation, List<ScrewTurn> turns) {
        return turns.isEmpty()
                && situation.fix().state().offsetCovariance().largestSigma().compareTo(TurnPlanner.handSigma(situation))
                        < 0;
    }

    /**
     * Whether one more round is likely to leave the axis no better than it is: it is nearly good enough, or one try would
     * seldom do, and neither turning now nor turning on the best of sightings raises the expected probability by more than a little.
     */
    private static boolean isNotWorthARound(
            Situation situation, List<RankedSighting> ranking, double now, double afterTurns) {
        double oneTry = TurnPlanner.probabilityOfOneTry(situation);
        if (now < (oneTry < PROBABLY_DOES ? oneTry * PROBABLY_DOES : NEARLY_ENOUGH)
                || situation.daylight() != Daylight.NONE) {
            return false;
        }
        double best = ranking.stream()
                .mapToDouble(RankedSighting::probabilityAfter)
                .max()
                .orElse(1);
        return Math.max(best, afterTurns) < Math.min(ENOUGH, now + WORTH_A_ROUND);
    }

    /**
     * Where one more adjustment would leave the axis: a sighting first, unless the fix is good enough to turn by, the turns,
     * the clamps, a sighting to confirm. Empty while too little is known to say, and by day.
     */
    public static Optional<Prospect> prospect(Situation situation) {
        return situation.fix() instanceof Fix.Solved && situation.daylight() == Daylight.NONE
                ? Optional.of(AdjustmentRound.of(situation).prospect())
                : Optional.empty();
    }

    /** The sightings that could be taken next, the most worth while first. */
    public static List<RankedSighting> ranking(Situation situation) {
        return SightingPlanner.ranking(situation);
    }

    private static Advice finish(Situation situation, double now) {
        if (!situation.clamped()) {
            return new Clamp(now);
        }
        if (situation.sinceClamp() != Confirmation.AGREES) {
            return confirm(situation, now);
        }
        return new Stop(now, situation.fix().state().offset());
    }

    private static Advice confirm(Situation situation, double now) {
        String reason = situation.sinceClamp() == Confirmation.CONTRADICTS
                ? "the last one contradicts those from before the clamps were tightened; if this one agrees with it,"
                        + " the"
                        + " mount has moved: log a knock"
                : "confirm that clamping did not move the axis";
        return SightingPlanner.confirming(situation, now, reason);
    }

    private static boolean isTimeToTurn(
            Situation situation, List<ScrewTurn> turns, AxisState afterTurns, double now, double after) {
        if (turns.isEmpty() || after <= now) {
            return false;
        }
        if (now < LIKELY && takesItMuchNearer(situation, afterTurns)) {
            return true;
        }
        if (now >= PROBABLY_DOES) {
            // Likely good already: a sighting settles it, unless the turns clearly help.
            return after >= ENOUGH && after - now >= CLEARLY_HELPS;
        }
        if (after >= PROBABLY_DOES) {
            return true;
        }
        double fixVariance = variance(situation.fix().state());
        double turnVariance = variance(afterTurns) - fixVariance;
        boolean fixIsGoodEnoughForTheScrews = fixVariance <= FIX_OVER_TURN_VARIANCE * turnVariance;
        return standsOut(situation)
                && (fixIsGoodEnoughForTheScrews
                        || (areSensesKnown(situation)
                                && SightingPlanner.turningBringsPoleStarIntoReach(situation, afterTurns)));
    }

    /**
     * Whether turns on a fix that is not bad for this zone and these screws leave the axis much nearer to the aim: what is
     * seen after them has to be seen anyway, and teaches the screws too.
     */
    private static boolean takesItMuchNearer(Situation situation, AxisState afterTurns) {
        AxisState state = situation.fix().state();
        double depth = situation.allowance().depth().arcminutes();
        double turnVariance = variance(afterTurns) - variance(state);
        return variance(state) <= FIX_OVER_TURN_VARIANCE * (turnVariance + depth * depth)
                && squareArcmin2(afterTurns, situation) < MUCH_NEARER * squareArcmin2(state, situation);
    }

    /** How far from the aim the axis may be expected to be, squared. */
    private static double squareArcmin2(AxisState state, Situation situation) {
        double away =
                state.offset().minus(TurnPlanner.goal(situation)).distance().arcminutes();
        return away * away + variance(state);
    }

    private static boolean areSensesKnown(Situation situation) {
        return situation.fix().senses().isAzimuthKnown()
                && situation.fix().senses().isAltitudeKnown();
    }

    private static double variance(AxisState state) {
        OffsetCovariance covariance = state.offsetCovariance();
        return covariance.eastEastArcmin2() + covariance.upUpArcmin2();
    }

    private static boolean standsOut(Situation situation) {
        AxisState state = situation.fix().state();
        AxisOffset toAim = state.offset().minus(TurnPlanner.goal(situation));
        OffsetCovariance covariance = state.offsetCovariance();
        double distance = toAim.distance().arcminutes();
        if (distance == 0) {
            return false;
        }
        double east = toAim.east().arcminutes() / distance;
        double up = toAim.up().arcminutes() / distance;
        double variance = east * east * covariance.eastEastArcmin2()
                + 2 * east * up * covariance.eastUpArcmin2()
                + up * up * covariance.upUpArcmin2();
        return distance > STANDS_OUT_SIGMAS * Math.sqrt(variance);
    }
}
