package polewright.alignment.advice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import polewright.alignment.allowance.ZoneProbability;
import polewright.alignment.fix.AxisState;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.FinishSense;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewOrder;
import polewright.sky.angle.Angle;

/**
 * Plans the screw turns that bring the axis to the best aim once the clamps are tight: in steps that a hand can make,
 * in the order and with the final direction that the rig requires. A screw whose direction is already good enough is
 * left alone.
 */
final class TurnPlanner {
    private static final int PARTS_OF_A_TURN = 8;
    // Most wedges reach the end of their screws at about this many turns (common practice: some degrees of range).
    static final double MOST_TURNS = 20;
    // Moving a mount by hand is accurate to a degree or so.
    private static final Angle WORTH_A_HAND = Angle.ofDegrees(2);
    // Below one turn, a hand can judge a sixteenth.
    private static final int PARTS_BELOW_ONE_TURN = 16;
    // The return leg exceeds the backlash by this many turns, so that the backlash is surely taken up.
    private static final double BEYOND_THE_PLAY = 0.25;
    // A screw whose own coordinate is off by less than this many sigmas is only turned if that clearly helps.
    private static final double WORTH_A_SCREW_SIGMAS = 1;
    private static final double WORTH_A_SCREW_PROBABILITY = 0.02;

    private TurnPlanner() {}

    static AxisOffset goal(Situation situation) {
        return new Tightening(situation.allowance(), situation.rig()).goal();
    }

    static List<ScrewTurn> turns(Situation situation, Outlook outlook) {
        AxisState.Turns exact = situation.fix().state().turnsTo(goal(situation), situation.rig());
        List<ScrewTurn> both = new ArrayList<>();
        planned(ScrewTurn.Which.ALTITUDE, situation.rig().altitudeScrew(), exact.altitude())
                .ifPresent(both::add);
        planned(ScrewTurn.Which.AZIMUTH, situation.rig().azimuthScrew(), exact.azimuth())
                .ifPresent(both::add);
        if (situation.rig().screwOrder() == ScrewOrder.AZIMUTH_FIRST) {
            Collections.reverse(both);
        }
        if (both.size() < 2) {
            return List.copyOf(both);
        }
        double withBoth = probabilityAfter(situation, outlook, both);
        List<ScrewTurn> worth = new ArrayList<>();
        for (ScrewTurn turn : both) {
            List<ScrewTurn> without =
                    both.stream().filter(t -> t.screw() != turn.screw()).toList();
            if (standsOut(situation, turn.screw())
                    || withBoth - probabilityAfter(situation, outlook, without) > WORTH_A_SCREW_PROBABILITY) {
                worth.add(turn);
            }
        }
        return worth.isEmpty() ? List.copyOf(both) : List.copyOf(worth);
    }

    /**
     * A turn rounded for the hand. One that would end in the wrong direction overshoots by a little more than the
     * backlash.
     */
    static Optional<ScrewTurn> planned(ScrewTurn.Which which, Screw screw, double exact) {
        double parts = Math.abs(exact) < 1 ? PARTS_BELOW_ONE_TURN : PARTS_OF_A_TURN;
        double rounded = Math.rint(exact * parts) / parts;
        if (rounded == 0) {
            return Optional.empty();
        }
        if (screw.finish().isSatisfiedBy(rounded)) {
            return Optional.of(new ScrewTurn(which, rounded));
        }
        double back = Math.ceil((screw.backlashTurns() + BEYOND_THE_PLAY) * PARTS_OF_A_TURN) / PARTS_OF_A_TURN;
        return Optional.of(new ScrewTurn(which, rounded, screw.finish() == FinishSense.CLOCKWISE ? back : -back));
    }

    /** Whether the mount is better moved by hand: many turns, and a move larger than the error of moving it by hand. */
    static boolean isBeyondScrews(Situation situation, List<ScrewTurn> turns) {
        Angle altitude = situation.fix().state().axis().altitude();
        return turns.stream()
                .anyMatch(t -> Math.abs(t.clockwiseTurns()) > MOST_TURNS
                        && screw(situation.rig(), t.screw())
                                        .move(t.clockwiseTurns(), altitude)
                                        .abs()
                                        .compareTo(WORTH_A_HAND)
                                > 0);
    }

    /** Probability that one perfectly aimed attempt, turns by hand and then the clamps, ends in the zone. */
    static double probabilityOfOneTry(Situation situation) {
        AxisState state = situation.fix().state();
        double clamp = situation.rig().clampingSigma().arcminutes();
        double east = handSigma(situation.rig().azimuthScrew(), state).arcminutes()
                * state.site().latitude().cos();
        double up = handSigma(situation.rig().altitudeScrew(), state).arcminutes();
        return ZoneProbability.of(
                situation.allowance(),
                situation.allowance().bestAim(),
                new OffsetCovariance(east * east + clamp * clamp, 0, up * up + clamp * clamp));
    }

    /** Error of a turn by hand with the coarser screw, 1 sigma, on the sky. */
    static Angle handSigma(Situation situation) {
        AxisState state = situation.fix().state();
        Angle east = handSigma(situation.rig().azimuthScrew(), state)
                .times(state.site().latitude().cos());
        Angle up = handSigma(situation.rig().altitudeScrew(), state);
        return east.compareTo(up) > 0 ? east : up;
    }

    private static Angle handSigma(Screw screw, AxisState state) {
        return screw.move(screw.handSigmaTurns(), state.axis().altitude()).abs();
    }

    static Screw screw(Rig rig, ScrewTurn.Which which) {
        return which == ScrewTurn.Which.AZIMUTH ? rig.azimuthScrew() : rig.altitudeScrew();
    }

    static Advice.MoveByHand byHand(Situation situation, double now) {
        AxisState state = situation.fix().state();
        AxisPointing aim = AxisPointing.of(state.site(), goal(situation));
        return new Advice.MoveByHand(
                now,
                aim.azimuth().minus(state.axis().azimuth()).wrappedSigned(),
                aim.altitude().minus(state.axis().altitude()));
    }

    static AxisState after(AxisState state, Rig rig, List<ScrewTurn> turns) {
        return state.afterTurns(rig, made(turns, ScrewTurn.Which.AZIMUTH), made(turns, ScrewTurn.Which.ALTITUDE));
    }

    private static double probabilityAfter(Situation situation, Outlook outlook, List<ScrewTurn> turns) {
        AxisState after = after(situation.fix().state(), situation.rig(), turns);
        return outlook.onceTightened(after.offset(), after.offsetCovariance());
    }

    private static boolean standsOut(Situation situation, ScrewTurn.Which screw) {
        AxisState state = situation.fix().state();
        AxisOffset toGoal = state.offset().minus(goal(situation));
        OffsetCovariance covariance = state.offsetCovariance();
        return screw == ScrewTurn.Which.AZIMUTH
                ? Math.abs(toGoal.east().radians())
                        > WORTH_A_SCREW_SIGMAS * covariance.sigmaEast().radians()
                : Math.abs(toGoal.up().radians())
                        > WORTH_A_SCREW_SIGMAS * covariance.sigmaUp().radians();
    }

    private static HandTurns made(List<ScrewTurn> turns, ScrewTurn.Which screw) {
        return turns.stream()
                .filter(t -> t.screw() == screw)
                .map(ScrewTurn::made)
                .findFirst()
                .orElse(HandTurns.NONE);
    }
}
