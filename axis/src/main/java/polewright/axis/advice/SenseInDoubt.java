package polewright.axis.advice;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import polewright.axis.OffsetCovariance;
import polewright.axis.advice.Advice.TakeSighting;
import polewright.axis.rig.Optic;

/**
 * A screw was turned and it is not known yet which way it took the axis: then the axis may be in two places or more, and the
 * next sighting is the one that soonest tells in which.
 */
final class SenseInDoubt {
    // The fix is then less uncertain in itself than by the doubt.
    private static final double MORE_THAN_THE_FIX = 3;
    private static final String REASON = "it shows which way the last turn took the axis";

    private SenseInDoubt() {}

    /**
     * Whether the doubt is most of what is not known of the axis, or nothing can be turned before it is gone.
     *
     * @param turns that would take the axis to the aim
     */
    static boolean isWorthALook(Situation situation, List<ScrewTurn> turns) {
        return situation.daylight() == Daylight.NONE
                && (Places.of(situation.fix()).spread() > MORE_THAN_THE_FIX || TestTurns.haveToWait(situation, turns));
    }

    /** The sighting that narrows the spread of all places most per minute. */
    static Advice look(Situation situation, double probabilityNow) {
        OffsetCovariance together = Places.of(situation.fix()).together();
        return candidates(situation)
                .max(Comparator.comparingDouble(candidate -> candidate.tells().narrowing(together)
                        / (candidate.minutes() + SightingPlanner.MINUTES_TO_FOLLOW)))
                .<Advice>map(c ->
                        new TakeSighting(probabilityNow, c.kind(), c.star(), Duration.ofMinutes(c.watched()), REASON))
                .orElseGet(() -> SightingPlanner.best(situation, probabilityNow, REASON));
    }

    /** What can be sighted from every place: the still point is left out unless all of them keep the pole star in the finder. */
    private static Stream<Candidate> candidates(Situation situation) {
        Places places = Places.of(situation.fix());
        boolean isInReach = situation.rig().widestOptic().map(Optic::field).stream()
                .anyMatch(field -> places.others().stream()
                        .allMatch(other -> SightingPlanner.poleStarIsInReach(situation, other.offset(), field)));
        return SightingPlanner.candidates(situation, places.known())
                .filter(candidate -> isInReach || candidate.kind() != SightingKind.STILL_POINT);
    }
}
