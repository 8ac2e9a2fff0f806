package polewright.alignment.advice;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;

/**
 * The first turn of a screw whose direction is unknown: far enough for the next sighting to show the direction clearly,
 * or half of the move if that is farther, so that the turn also calibrates the screw's gain; never past the aim, and no
 * farther than is easily turned back.
 */
final class TestTurns {
    // The two directions are then five sigmas apart.
    private static final double BEYOND_DOUBT_SIGMAS = 2.5;
    private static final double SHARE_OF_THE_MOVE = 0.5;
    private static final double EASILY_TURNED_BACK = 4;
    // A star at the centre of the finder stays in the field, whichever way it moves.
    private static final double MOST_OF_WIDEST_FIELD = 0.4;
    private static final double SOON_MINUTES = 6;
    // If the best sighting of moderate length cannot show the move to this many sigmas, the test is pointless.
    private static final double SHOWN_SIGMAS = 2;
    private static final double LATE_MINUTES = 14;
    // At this probability, a screw that was tested is turned again, by half of the move.
    private static final double SURE_ENOUGH = 0.97;
    private static final double SEPARABLE_SPREAD = 0.25;

    private TestTurns() {}

    /** The same turns, shortened for screws whose direction is unknown. */
    static List<ScrewTurn> of(Situation situation, List<ScrewTurn> turns) {
        return turns.stream()
                .flatMap(turn -> (isTest(situation, turn) ? shorter(situation, turn) : Optional.of(turn)).stream())
                .toList();
    }

    /**
     * The turns that can be ordered: not of a screw that was tested and whose direction a sighting may still show, nor
     * a test too small for any sighting to show.
     */
    static List<ScrewTurn> orderable(Situation situation, List<ScrewTurn> turns) {
        return turns.stream()
                .filter(turn -> !isTest(situation, turn)
                        || (isTested(situation, turn) ? !mayStillShow(situation, turn) : willShow(situation, turn)))
                .toList();
    }

    /** Whether no turn can be ordered but a sighting may still show the direction of one of the screws. */
    static boolean mustWaitForSighting(Situation situation, List<ScrewTurn> turns) {
        return orderable(situation, turns).isEmpty()
                && turns.stream().anyMatch(turn -> isTested(situation, turn) && mayStillShow(situation, turn));
    }

    /** Whether one of the turns would be a second test of a screw that was already tested. */
    static boolean includesRetest(Situation situation, List<ScrewTurn> turns) {
        return turns.stream().anyMatch(turn -> isTest(situation, turn) && isTested(situation, turn));
    }

    /**
     * Whether a sighting may still show the direction: once the other places are too close to the fix, only a turn can.
     */
    private static boolean mayStillShow(Situation situation, ScrewTurn turn) {
        return sense(situation.fix().senses(), turn.screw()) < SURE_ENOUGH
                && PossibleAxes.of(situation.fix()).spread() > SEPARABLE_SPREAD;
    }

    private static boolean willShow(Situation situation, ScrewTurn turn) {
        double shown = SHOWN_SIGMAS * detectionSigmaArcmin(situation, turn.screw(), LATE_MINUTES);
        return shorter(situation, turn).stream().anyMatch(made -> moveArcmin(situation, made) > shown);
    }

    private static boolean isTested(Situation situation, ScrewTurn turn) {
        ScrewSenses senses = situation.fix().senses();
        return turn.screw() == ScrewTurn.Which.AZIMUTH ? senses.azimuthTried() : senses.altitudeTried();
    }

    /** The screws that these turns test. */
    static Set<ScrewTurn.Which> tested(Situation situation, List<ScrewTurn> turns) {
        return turns.stream()
                .filter(turn -> isTest(situation, turn))
                .map(ScrewTurn::screw)
                .collect(Collectors.toSet());
    }

    /**
     * Probability of being within the allowance after turns that may go the wrong way.
     *
     * @param ifSensesRight the probability if every screw goes as assumed
     */
    static double probabilityAfter(Situation situation, List<ScrewTurn> turns, double now, double ifSensesRight) {
        ScrewSenses senses = situation.fix().senses();
        double right = 1;
        for (ScrewTurn turn : turns) {
            right *= isTest(situation, turn) ? sense(senses, turn.screw()) : 1;
        }
        return now + right * (ifSensesRight - now);
    }

    private static boolean isTest(Situation situation, ScrewTurn turn) {
        return sense(situation.fix().senses(), turn.screw()) < ScrewSenses.KNOWN;
    }

    private static double sense(ScrewSenses senses, ScrewTurn.Which screw) {
        return screw == ScrewTurn.Which.AZIMUTH ? senses.azimuth() : senses.altitude();
    }

    private static Optional<ScrewTurn> shorter(Situation situation, ScrewTurn whole) {
        Screw screw = TurnPlanner.screw(situation.rig(), whole.screw());
        double move = moveArcmin(situation, whole);
        double beyondDoubt = BEYOND_DOUBT_SIGMAS * detectionSigmaArcmin(situation, whole.screw(), SOON_MINUTES);
        double share = Math.max(SHARE_OF_THE_MOVE, beyondDoubt / move);
        double inTheField = situation
                .rig()
                .widestOptic()
                .map(Optic::field)
                .map(Angle::arcminutes)
                .map(field -> MOST_OF_WIDEST_FIELD * field / move)
                .orElse(1.0);
        double most = Math.min(inTheField, EASILY_TURNED_BACK / Math.abs(whole.clockwiseTurns()));
        return TurnPlanner.planned(whole.screw(), screw, whole.clockwiseTurns() * Math.min(1, Math.min(share, most)));
    }

    private static double moveArcmin(Situation situation, ScrewTurn turn) {
        AxisState state = situation.fix().state();
        double move = TurnPlanner.screw(situation.rig(), turn.screw())
                .move(turn.clockwiseTurns(), state.axis().altitude())
                .abs()
                .arcminutes();
        return turn.screw() == ScrewTurn.Which.AZIMUTH
                ? move * state.site().latitude().cos()
                : move;
    }

    /**
     * Accuracy with which the best sighting of at most this length would show a move on the sky, 1 sigma. Stars are
     * assumed to be ideally placed, because an order must not change while it is being carried out.
     */
    private static double detectionSigmaArcmin(Situation situation, ScrewTurn.Which screw, double minutes) {
        boolean azimuth = screw == ScrewTurn.Which.AZIMUTH;
        OffsetCovariance now = situation.fix().state().offsetCovariance();
        double known = azimuth ? now.eastEastArcmin2() : now.upUpArcmin2();
        double seen = SightingPlanner.candidates(situation.withIdealStars(), now)
                .filter(candidate -> candidate.minutes() <= minutes)
                .map(candidate -> azimuth
                        ? candidate.information().ee()
                        : candidate.information().uu())
                .max(Comparator.naturalOrder())
                .orElse(0.0);
        return seen > 0 ? Math.sqrt(known + 1 / seen) : 0;
    }
}
