package polewright.axis.advice;

import java.util.ArrayList;
import java.util.List;
import polewright.axis.AxisOffset;
import polewright.axis.AxisPointing;
import polewright.axis.OffsetCovariance;
import polewright.axis.allowance.ZoneProbability;
import polewright.axis.fix.AxisState;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.sky.angle.Angle;

/** Which screws to turn how far: to the best aim, in steps that a hand can make, leaving well alone. */
final class TurnPlanner {
    private static final int PARTS_OF_A_TURN = 8;
    // Beyond this most wedges come to the end of their screws (common practice: some degrees of range).
    private static final double MOST_TURNS = 20;
    // A mount moved by hand comes to within a degree or so.
    private static final Angle WORTH_A_HAND = Angle.ofDegrees(2);
    // Under one turn a hand feels half an eighth.
    private static final int PARTS_BELOW_ONE_TURN = 16;
    // A screw whose own direction is off by less than this many sigmas is only turned if it clearly helps.
    private static final double WORTH_A_SCREW_SIGMAS = 1;
    private static final double WORTH_A_SCREW_PROBABILITY = 0.02;

    private TurnPlanner() {}

    static List<ScrewTurn> turns(Situation situation) {
        AxisState state = situation.fix().state();
        AxisState.Turns exact = state.turnsTo(situation.allowance().bestAim(), situation.rig());
        List<ScrewTurn> both = new ArrayList<>();
        addIfAny(both, ScrewTurn.Which.ALTITUDE, exact.altitude());
        addIfAny(both, ScrewTurn.Which.AZIMUTH, exact.azimuth());
        if (both.size() < 2) {
            return List.copyOf(both);
        }
        double withBoth = probabilityAfter(situation, both);
        List<ScrewTurn> worth = new ArrayList<>();
        for (ScrewTurn turn : both) {
            List<ScrewTurn> without =
                    both.stream().filter(t -> t.screw() != turn.screw()).toList();
            if (standsOut(situation, turn.screw())
                    || withBoth - probabilityAfter(situation, without) > WORTH_A_SCREW_PROBABILITY) {
                worth.add(turn);
            }
        }
        return worth.isEmpty() ? List.copyOf(both) : List.copyOf(worth);
    }

    /** Whether a hand had better move the mount: many turns, and farther than a hand errs. */
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

    /** Probability that one try, perfectly aimed, ends in the zone: a turn by hand, then the clamps. */
    static double probabilityOfOneTry(Situation situation) {
        AxisState state = situation.fix().state();
        double clamp = situation.rig().clampSigma().arcminutes();
        double east = handSigma(situation.rig().azimuthScrew(), state).arcminutes()
                * state.site().latitude().cos();
        double up = handSigma(situation.rig().altitudeScrew(), state).arcminutes();
        return ZoneProbability.of(
                situation.allowance(),
                situation.allowance().bestAim(),
                new OffsetCovariance(east * east + clamp * clamp, 0, up * up + clamp * clamp));
    }

    /** How far a hand errs with the coarser screw, 1 sigma, on the sky. */
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

    private static Screw screw(Rig rig, ScrewTurn.Which which) {
        return which == ScrewTurn.Which.AZIMUTH ? rig.azimuthScrew() : rig.altitudeScrew();
    }

    static Advice.MoveByHand byHand(Situation situation, double now) {
        AxisState state = situation.fix().state();
        AxisPointing aim = AxisPointing.of(state.site(), situation.allowance().bestAim());
        return new Advice.MoveByHand(
                now,
                aim.azimuth().minus(state.axis().azimuth()).wrappedSigned(),
                aim.altitude().minus(state.axis().altitude()));
    }

    static AxisState after(AxisState state, Rig rig, List<ScrewTurn> turns) {
        return state.afterTurns(rig, total(turns, ScrewTurn.Which.AZIMUTH), total(turns, ScrewTurn.Which.ALTITUDE));
    }

    private static double probabilityAfter(Situation situation, List<ScrewTurn> turns) {
        return Adviser.probability(situation.allowance(), after(situation.fix().state(), situation.rig(), turns));
    }

    private static boolean standsOut(Situation situation, ScrewTurn.Which screw) {
        AxisState state = situation.fix().state();
        AxisOffset toAim = state.offset().minus(situation.allowance().bestAim());
        OffsetCovariance covariance = state.offsetCovariance();
        return screw == ScrewTurn.Which.AZIMUTH
                ? Math.abs(toAim.east().radians())
                        > WORTH_A_SCREW_SIGMAS * covariance.sigmaEast().radians()
                : Math.abs(toAim.up().radians())
                        > WORTH_A_SCREW_SIGMAS * covariance.sigmaUp().radians();
    }

    private static void addIfAny(List<ScrewTurn> turns, ScrewTurn.Which screw, double exact) {
        double parts = Math.abs(exact) < 1 ? PARTS_BELOW_ONE_TURN : PARTS_OF_A_TURN;
        double rounded = Math.rint(exact * parts) / parts;
        if (rounded != 0) {
            turns.add(new ScrewTurn(screw, rounded));
        }
    }

    private static double total(List<ScrewTurn> turns, ScrewTurn.Which screw) {
        return turns.stream()
                .filter(t -> t.screw() == screw)
                .mapToDouble(ScrewTurn::clockwiseTurns)
                .sum();
    }
}
