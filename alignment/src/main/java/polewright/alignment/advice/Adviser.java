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
 * Decides what to do next, as a pure function of the situation. The first of these cases that applies:
 *
 * <ol>
 *   <li>Too little is known, or sightings are in conflict: take the sighting with the most expected value per minute.
 *       (If no sighting can settle the conflict, a later case turns the axis, and sighting the result settles it.)
 *   <li>Good enough, or at the limit of the screws: finish, that is clamp, confirm with a sighting, stop.
 *   <li>The direction of a turn is unknown, and this dominates the uncertainty: take the sighting that shows it.
 *   <li>Clamped, not confirmed, and possibly good enough: confirm.
 *   <li>Turning will probably suffice or bring the axis much nearer, or the offset is significant and a better fix
 *       would not make the turns better: turn. If the axis is likely to be good already, turn only if that clearly
 *       helps.
 *   <li>Clamps loose, and likely good enough: clamp.
 *   <li>One more round is unlikely to improve it: finish.
 *   <li>Otherwise take a better sighting.
 * </ol>
 */
public final class Adviser {
    /** The axis is good enough if it is within the allowance with at least this probability. */
    public static final double ENOUGH = 0.95;

    /**
     * At this probability the clamps are tightened and the rest is found out afterwards: a sighting after clamping is
     * worth more than one whose result clamping may undo.
     */
    public static final double LIKELY = 0.65;

    // Below this many sigmas, turns mostly follow noise.
    private static final double STANDS_OUT_SIGMAS = 2;
    // Turning is worthwhile even on an uncertain fix if it will probably suffice.
    private static final double PROBABLY_DOES = 0.8;
    private static final double CLEARLY_HELPS = 0.1;
    // Below this probability the axis needs turning, clamped or not, and confirming it is pointless.
    private static final double HOPELESS = 0.2;
    // Fraction of the expected squared distance from the aim.
    private static final double MUCH_NEARER = 0.5;
    // Close enough to the required probability to stop when another round would not improve it.
    private static final double NEARLY_ENOUGH = 0.9;
    // While the fix is less accurate than the turns themselves, a sighting saves a turn.
    private static final double FIX_OVER_TURN_VARIANCE = 2;
    // A smaller gain in probability is not worth loosening the clamps.
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
        if (SenseInDoubt.isSightingWorthwhile(situation, all)) {
            return SenseInDoubt.sighting(situation, now);
        }
        // Moving the mount by hand does not depend on the direction of its screws.
        List<ScrewTurn> turns = TurnPlanner.isBeyondScrews(situation, all) ? all : TestTurns.orderable(situation, all);
        if (now >= HOPELESS && situation.clamped() && situation.sinceClamp() != Confirmation.AGREES) {
            return confirm(situation, now);
        }
        AxisState afterTurns = TurnPlanner.after(state, situation.rig(), turns);
        double ifSensesRight = outlook.onceTightened(afterTurns.offset(), afterTurns.offsetCovariance());
        double after = TestTurns.probabilityAfter(situation, turns, now, ifSensesRight);
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
        double ifSensesRight = outlook.onceTightened(after.offset(), after.offsetCovariance());
        return new TurnScrews(
                now,
                turns,
                TestTurns.tested(situation, turns),
                situation.clamped(),
                after.offset(),
                TestTurns.probabilityAfter(situation, turns, now, ifSensesRight),
                SkyInView.during(situation, turns));
    }

    /**
     * The required probability: {@link #ENOUGH}, unless hand turns and clamps scatter the axis so much that one attempt
     * seldom reaches it. It is then reduced in proportion, so that the night is not spent on repeated attempts. Before
     * clamping, it is limited by the scatter of the clamps.
     */
    private static double enough(Situation situation) {
        double oneTry = TurnPlanner.probabilityOfOneTry(situation);
        if (oneTry < PROBABLY_DOES) {
            return ENOUGH * oneTry / PROBABLY_DOES;
        }
        return situation.clamped() ? ENOUGH : new Tightening(situation.allowance(), situation.rig()).enough();
    }

    /** Whether the fix is more accurate than a turn by hand, and no turn would bring the axis nearer. */
    private static boolean isAtTheLimit(Situation situation, List<ScrewTurn> turns) {
        return turns.isEmpty()
                && situation.fix().state().offsetCovariance().largestSigma().compareTo(TurnPlanner.handSigma(situation))
                        < 0;
    }

    /**
     * Whether one more round is unlikely to improve the axis: it is nearly good enough or one attempt seldom succeeds,
     * and neither turning now nor turning after the best sighting raises the expected probability by more than a
     * little.
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
     * Where one more adjustment would leave the axis: a sighting first unless the fix is good enough, then the turns,
     * the clamps and a confirming sighting. Empty by day and while there is no solved fix.
     */
    public static Optional<Prospect> prospect(Situation situation) {
        return situation.fix() instanceof Fix.Solved && situation.daylight() == Daylight.NONE
                ? Optional.of(AdjustmentRound.of(situation).prospect())
                : Optional.empty();
    }

    /** The sightings that could be taken next, the most valuable first. */
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
        if (now < LIKELY && bringsItMuchNearer(situation, afterTurns)) {
            return true;
        }
        if (now >= PROBABLY_DOES) {
            // Likely to be good already: take a sighting to check, unless the turns clearly help.
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
     * Whether the fix is adequate for this zone and these screws and the turns bring the axis much nearer to the aim. A
     * sighting after the turns is needed anyway, and it also calibrates the screws.
     */
    private static boolean bringsItMuchNearer(Situation situation, AxisState afterTurns) {
        AxisState state = situation.fix().state();
        double depth = situation.allowance().depth().arcminutes();
        double turnVariance = variance(afterTurns) - variance(state);
        return variance(state) <= FIX_OVER_TURN_VARIANCE * (turnVariance + depth * depth)
                && squareArcmin2(afterTurns, situation) < MUCH_NEARER * squareArcmin2(state, situation);
    }

    /** Expected squared distance of the axis from the aim. */
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
