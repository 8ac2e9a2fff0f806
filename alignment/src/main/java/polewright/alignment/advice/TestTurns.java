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
 * The first turn of a screw of which it is not known which way it goes: far enough that the next sighting shows it beyond
 * doubt, half of the way if that is farther, so that the turn teaches how far the screw goes too; never past the aim, and no
 * farther than is easily turned back.
 */
final class TestTurns {
    // Right and wrong sense then lie five sigmas apart.
    private static final double BEYOND_DOUBT_SIGMAS = 2.5;
    private static final double SHARE_OF_THE_WAY = 0.5;
    private static final double EASILY_TURNED_BACK = 4;
    // A star in the middle of the finder stays in it, whichever way it goes.
    private static final double MOST_OF_WIDEST_FIELD = 0.4;
    private static final double SOON_MINUTES = 6;
    // Less than that, with the best of sightings that are not too long, and the test would be for nothing.
    private static final double SHOWN_SIGMAS = 2;
    private static final double LATE_MINUTES = 14;
    // As sure as that, a screw that was tried is turned on, half of the way.
    private static final double SURE_ENOUGH = 0.97;
    private static final double TOLD_APART = 0.25;

    private TestTurns() {}

    /** The same turns, those of screws whose sense is not known made shorter. */
    static List<ScrewTurn> of(Situation situation, List<ScrewTurn> turns) {
        return turns.stream()
                .flatMap(turn -> (isTest(situation, turn) ? shorter(situation, turn) : Optional.of(turn)).stream())
                .toList();
    }

    /**
     * Those of the turns that can be ordered: not of a screw that was tried and may still show which way it went, nor so
     * small a test that no sighting would show it.
     */
    static List<ScrewTurn> orderable(Situation situation, List<ScrewTurn> turns) {
        return turns.stream()
                .filter(turn -> !isTest(situation, turn)
                        || (isTried(situation, turn) ? !mayStillShow(situation, turn) : willShow(situation, turn)))
                .toList();
    }

    /** Whether no turn can be ordered, and a sighting may still show which way one of the screws went. */
    static boolean haveToWait(Situation situation, List<ScrewTurn> turns) {
        return orderable(situation, turns).isEmpty()
                && turns.stream().anyMatch(turn -> isTried(situation, turn) && mayStillShow(situation, turn));
    }

    /** Whether one of the turns would be another test of a screw that was tried. */
    static boolean areTriedAgain(Situation situation, List<ScrewTurn> turns) {
        return turns.stream().anyMatch(turn -> isTest(situation, turn) && isTried(situation, turn));
    }

    /** Once the other places are so near the fix that no sighting tells them apart, only another turn does. */
    private static boolean mayStillShow(Situation situation, ScrewTurn turn) {
        return sense(situation.fix().senses(), turn.screw()) < SURE_ENOUGH
                && PossibleAxes.of(situation.fix()).spread() > TOLD_APART;
    }

    private static boolean willShow(Situation situation, ScrewTurn turn) {
        double shown = SHOWN_SIGMAS * seenArcmin(situation, turn.screw(), LATE_MINUTES);
        return shorter(situation, turn).stream().anyMatch(made -> wayArcmin(situation, made) > shown);
    }

    private static boolean isTried(Situation situation, ScrewTurn turn) {
        ScrewSenses senses = situation.fix().senses();
        return turn.screw() == ScrewTurn.Which.AZIMUTH ? senses.azimuthTried() : senses.altitudeTried();
    }

    /** The screws that these turns would test. */
    static Set<ScrewTurn.Which> tested(Situation situation, List<ScrewTurn> turns) {
        return turns.stream()
                .filter(turn -> isTest(situation, turn))
                .map(ScrewTurn::screw)
                .collect(Collectors.toSet());
    }

    /** Probability of being within the allowance after turns that are as likely to make it worse. */
    static double probabilityAfter(Situation situation, List<ScrewTurn> turns, double now, double ifAsTold) {
        ScrewSenses senses = situation.fix().senses();
        double right = 1;
        for (ScrewTurn turn : turns) {
            right *= isTest(situation, turn) ? sense(senses, turn.screw()) : 1;
        }
        return now + right * (ifAsTold - now);
    }

    private static boolean isTest(Situation situation, ScrewTurn turn) {
        return sense(situation.fix().senses(), turn.screw()) < ScrewSenses.KNOWN;
    }

    private static double sense(ScrewSenses senses, ScrewTurn.Which screw) {
        return screw == ScrewTurn.Which.AZIMUTH ? senses.azimuth() : senses.altitude();
    }

    private static Optional<ScrewTurn> shorter(Situation situation, ScrewTurn whole) {
        Screw screw = TurnPlanner.screw(situation.rig(), whole.screw());
        double way = wayArcmin(situation, whole);
        double beyondDoubt = BEYOND_DOUBT_SIGMAS * seenArcmin(situation, whole.screw(), SOON_MINUTES);
        double share = Math.max(SHARE_OF_THE_WAY, beyondDoubt / way);
        double inTheField = situation
                .rig()
                .widestOptic()
                .map(Optic::field)
                .map(Angle::arcminutes)
                .map(field -> MOST_OF_WIDEST_FIELD * field / way)
                .orElse(1.0);
        double most = Math.min(inTheField, EASILY_TURNED_BACK / Math.abs(whole.clockwiseTurns()));
        return TurnPlanner.planned(whole.screw(), screw, whole.clockwiseTurns() * Math.min(1, Math.min(share, most)));
    }

    private static double wayArcmin(Situation situation, ScrewTurn turn) {
        AxisState state = situation.fix().state();
        double way = TurnPlanner.screw(situation.rig(), turn.screw())
                .move(turn.clockwiseTurns(), state.axis().altitude())
                .abs()
                .arcminutes();
        return turn.screw() == ScrewTurn.Which.AZIMUTH
                ? way * state.site().latitude().cos()
                : way;
    }

    /**
     * How exactly the best of the sightings of so many minutes would show a move on the sky, 1 sigma. Stars are taken to be
     * where they are wanted: an order must not change with the minutes in which it is carried out.
     */
    private static double seenArcmin(Situation situation, ScrewTurn.Which screw, double minutes) {
        boolean azimuth = screw == ScrewTurn.Which.AZIMUTH;
        OffsetCovariance now = situation.fix().state().offsetCovariance();
        double known = azimuth ? now.eastEastArcmin2() : now.upUpArcmin2();
        double seen = SightingPlanner.candidates(situation.withIdealStars(), now)
                .filter(candidate -> candidate.minutes() <= minutes)
                .map(candidate ->
                        azimuth ? candidate.tells().ee() : candidate.tells().uu())
                .max(Comparator.naturalOrder())
                .orElse(0.0);
        return seen > 0 ? Math.sqrt(known + 1 / seen) : 0;
    }
}
