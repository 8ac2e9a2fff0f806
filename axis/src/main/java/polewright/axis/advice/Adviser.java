package polewright.axis.advice;

import java.util.ArrayList;
import java.util.List;
import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.axis.advice.Advice.Clamp;
import polewright.axis.advice.Advice.Stop;
import polewright.axis.advice.Advice.TakeSighting;
import polewright.axis.advice.Advice.TurnScrews;
import polewright.axis.allowance.Allowance;
import polewright.axis.allowance.ZoneProbability;
import polewright.axis.fix.AxisState;
import polewright.axis.fix.Fix;
import polewright.axis.rig.Rig;

/**
 * What to do next. A pure function of the situation.
 *
 * <ul>
 *   <li>Good enough (P ≥ 0.95): clamp; after clamping, confirm with a sighting; confirmed, stop.
 *   <li>Nothing or too little known, or sightings in conflict: take the sighting that tells most per minute.
 *   <li>The offset stands out from its uncertainty, or the turns would probably do: turn.
 *   <li>Otherwise take a better sighting first.
 * </ul>
 */
public final class Adviser {
    /** Good enough is being within the allowance with this probability. */
    public static final double ENOUGH = 0.95;

    // Turning on less than this many sigmas mostly turns on noise.
    private static final double STANDS_OUT_SIGMAS = 2;
    // Turning is worth it on a vague fix too, if it will probably do.
    private static final double PROBABLY_DOES = 0.8;

    private Adviser() {}

    public static Advice advise(Situation situation) {
        AxisState state = situation.fix().state();
        double now = probability(situation.allowance(), state);
        if (situation.fix() instanceof Fix.Underdetermined under) {
            return new TakeSighting(now, SightingPlanner.best(situation), under.missing());
        }
        if (situation.fix() instanceof Fix.Dubious dubious) {
            return new TakeSighting(now, SightingPlanner.best(situation), dubious.reason());
        }
        if (now >= ENOUGH) {
            return finish(situation, now);
        }
        List<ScrewTurn> turns = turns(situation);
        double after = probability(situation.allowance(), afterTurns(state, situation.rig(), turns));
        boolean worthIt = !turns.isEmpty() && after > now && (standsOut(situation) || after >= PROBABLY_DOES);
        return worthIt
                ? new TurnScrews(now, turns, situation.clamped(), after)
                : new TakeSighting(
                        now,
                        SightingPlanner.best(situation),
                        "the fix is too vague to turn by, against an allowance of "
                                + situation.allowance().words());
    }

    /** Probability that the axis of {@code state} lies in the zone. */
    public static double probability(Allowance zone, AxisState state) {
        return ZoneProbability.of(zone, state.offset(), state.offsetCovariance());
    }

    private static Advice finish(Situation situation, double now) {
        if (!situation.clamped()) {
            return new Clamp(now);
        }
        if (!situation.sightedSinceClamp()) {
            return new TakeSighting(now, SightingPlanner.best(situation), "confirm that clamping moved nothing");
        }
        return new Stop(now, situation.fix().state().offset());
    }

    private static boolean standsOut(Situation situation) {
        AxisState state = situation.fix().state();
        AxisOffset toAim = state.offset().minus(situation.allowance().bestAim());
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

    private static List<ScrewTurn> turns(Situation situation) {
        AxisState.Turns exact =
                situation.fix().state().turnsTo(situation.allowance().bestAim(), situation.rig());
        List<ScrewTurn> turns = new ArrayList<>();
        addIfAny(turns, ScrewTurn.Which.ALTITUDE, exact.altitude());
        addIfAny(turns, ScrewTurn.Which.AZIMUTH, exact.azimuth());
        return List.copyOf(turns);
    }

    private static void addIfAny(List<ScrewTurn> turns, ScrewTurn.Which screw, double exact) {
        double parts = Math.abs(exact) < 1 ? 16 : 8;
        double rounded = Math.rint(exact * parts) / parts;
        if (rounded != 0) {
            turns.add(new ScrewTurn(screw, rounded));
        }
    }

    private static AxisState afterTurns(AxisState state, Rig rig, List<ScrewTurn> turns) {
        double azimuth = total(turns, ScrewTurn.Which.AZIMUTH);
        double altitude = total(turns, ScrewTurn.Which.ALTITUDE);
        return state.afterTurns(rig, azimuth, altitude);
    }

    private static double total(List<ScrewTurn> turns, ScrewTurn.Which screw) {
        return turns.stream()
                .filter(t -> t.screw() == screw)
                .mapToDouble(ScrewTurn::clockwiseTurns)
                .sum();
    }
}
