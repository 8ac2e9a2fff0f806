package polewright.alignment.advice;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Optic;

/**
 * Advice while the direction of a screw that was turned is unknown: the axis may be in two or more places, and the next
 * sighting is the one that shows soonest in which.
 */
final class SenseInDoubt {
    // Above this, the doubt about the direction dominates the uncertainty of the fix.
    private static final double MORE_THAN_THE_FIX = 3;

    private SenseInDoubt() {}

    /**
     * Whether a sighting should come first: the doubt dominates the uncertainty of the axis, or no turn can be ordered
     * before it is resolved, or a screw would be tested again without a sighting since its last test.
     *
     * @param turns those that would bring the axis to the aim
     */
    static boolean isSightingWorthwhile(Situation situation, List<ScrewTurn> turns) {
        return situation.daylight() == Daylight.NONE
                && (PossibleAxes.of(situation.fix()).spread() > MORE_THAN_THE_FIX
                        || TestTurns.mustWaitForSighting(situation, turns)
                        || (situation.isTurnUnseen() && TestTurns.includesRetest(situation, turns)));
    }

    /** The sighting that reduces the spread of all places most per minute. */
    static Advice sighting(Situation situation, double probabilityNow) {
        OffsetCovariance combined = PossibleAxes.of(situation.fix()).combinedCovariance();
        return candidates(situation)
                .max(Comparator.comparingDouble(
                        candidate -> candidate.information().narrowing(combined)
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

    /** Sightings possible from every place: the still point only if the pole star is in the finder from all of them. */
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
