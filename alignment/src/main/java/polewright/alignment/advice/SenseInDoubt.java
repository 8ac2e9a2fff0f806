package polewright.alignment.advice;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Optic;

/**
 * A screw was turned and it is not known yet which way it took the axis: then the axis may be in two places or more, and the
 * next sighting is the one that soonest tells in which.
 */
final class SenseInDoubt {
    // The fix is then less uncertain in itself than by the doubt.
    private static final double MORE_THAN_THE_FIX = 3;

    private SenseInDoubt() {}

    /**
     * Whether the doubt is most of what is not known of the axis, or nothing can be turned before it is gone, or a screw that
     * was tried would be tried again though nothing was sighted meanwhile.
     *
     * @param turns that would take the axis to the aim
     */
    static boolean isWorthALook(Situation situation, List<ScrewTurn> turns) {
        return situation.daylight() == Daylight.NONE
                && (PossibleAxes.of(situation.fix()).spread() > MORE_THAN_THE_FIX
                        || TestTurns.haveToWait(situation, turns)
                        || (situation.isTurnUnseen() && TestTurns.areTriedAgain(situation, turns)));
    }

    /** The sighting that narrows the spread of all places most per minute. */
    static Advice look(Situation situation, double probabilityNow) {
        OffsetCovariance together = PossibleAxes.of(situation.fix()).together();
        return candidates(situation)
                .max(Comparator.comparingDouble(candidate -> candidate.tells().narrowing(together)
                        / (candidate.minutes() + SightingPlanner.MINUTES_TO_FOLLOW)))
                .map(candidate -> candidate.advised(probabilityNow, reason(situation)))
                .orElseGet(() -> SightingPlanner.best(situation, probabilityNow, reason(situation)));
    }

    private static String reason(Situation situation) {
        ScrewSenses senses = situation.fix().senses();
        boolean azimuth = senses.azimuthTried() && !senses.isAzimuthKnown();
        boolean altitude = senses.altitudeTried() && !senses.isAltitudeKnown();
        if (azimuth == altitude) {
            return "it shows which way the screws move the axis";
        }
        return "it shows which way the " + (azimuth ? "azimuth" : "altitude") + " screw moves the axis";
    }

    /** What can be sighted from every place: the still point is left out unless all of them keep the pole star in the finder. */
    private static Stream<Candidate> candidates(Situation situation) {
        PossibleAxes places = PossibleAxes.of(situation.fix());
        boolean isInReach = situation.rig().widestOptic().map(Optic::field).stream()
                .anyMatch(field -> places.others().stream()
                        .allMatch(other ->
                                SightingPlanner.poleStarIsInReach(situation, other.offset(), places.known(), field)));
        return SightingPlanner.candidates(situation, places.known())
                .filter(candidate -> isInReach || candidate.kind() != SightingKind.STILL_POINT);
    }
}
