package polewright.axis.advice;

import java.time.Duration;
import java.util.Comparator;
import polewright.axis.AxisOffset;
import polewright.axis.OffsetCovariance;
import polewright.axis.advice.Advice.TakeSighting;
import polewright.axis.fix.ScrewSenses;

/**
 * A screw was turned and it is not known yet which way it took the axis: then the axis may be in two places or more, and the
 * next sighting is the one that soonest tells in which.
 */
final class SenseInDoubt {
    // Positions closer than this call for the same turns.
    private static final double APART_SIGMAS = 1;
    // Sigma Octantis in these years.
    private static final double FARTHEST_POLE_STAR_ARCMIN = 70;
    private static final String REASON = "it shows which way the last turn took the axis";

    private SenseInDoubt() {}

    /** Whether there is another place, far enough from the fix to matter. */
    static boolean isWorthALook(Situation situation) {
        AxisOffset here = situation.fix().state().offset();
        OffsetCovariance known = situation.fix().state().offsetCovariance();
        return situation.daylight() == Daylight.NONE
                && situation.fix().senses().otherwise().stream()
                        .anyMatch(other ->
                                known.normalisedSquare(other.offset().minus(here)) > APART_SIGMAS * APART_SIGMAS);
    }

    /** The sighting that settles most of the doubt per minute. */
    static Advice look(Situation situation, double probabilityNow) {
        OffsetCovariance known = situation.fix().state().offsetCovariance();
        return SightingPlanner.candidates(situation, known)
                .filter(candidate -> isToBeSeenWhicheverWay(situation, candidate))
                .max(Comparator.comparingDouble(candidate ->
                        settled(situation, candidate) / (candidate.minutes() + SightingPlanner.MINUTES_TO_FOLLOW)))
                .<Advice>map(c ->
                        new TakeSighting(probabilityNow, c.kind(), c.star(), Duration.ofMinutes(c.watched()), REASON))
                .orElseGet(() -> SightingPlanner.best(situation, probabilityNow, REASON));
    }

    /** A pole star that is in the finder only if the screw goes as assumed is looked for in vain half of the time. */
    private static boolean isToBeSeenWhicheverWay(Situation situation, Candidate candidate) {
        if (candidate.kind() != SightingKind.STILL_POINT) {
            return true;
        }
        double inReachArcmin = situation
                        .rig()
                        .widestOptic()
                        .map(optic -> optic.field().arcminutes() / 2)
                        .orElse(0.0)
                - situation.fix().state().offsetCovariance().largestSigma().arcminutes()
                - candidate
                        .star()
                        .map(star -> 90 * 60 - star.place().declination().abs().arcminutes())
                        .orElse(FARTHEST_POLE_STAR_ARCMIN);
        return situation.fix().senses().otherwise().stream()
                .allMatch(other -> other.offset().distance().arcminutes() < inReachArcmin);
    }

    /** How much of the doubt a sighting would take away, 0 to 1: exp(−d²/8) of it is left for places d sigmas apart. */
    private static double settled(Situation situation, Candidate candidate) {
        AxisOffset here = situation.fix().state().offset();
        OffsetCovariance known = situation.fix().state().offsetCovariance();
        double settled = 0;
        for (ScrewSenses.Otherwise other : situation.fix().senses().otherwise()) {
            AxisOffset apart = other.offset().minus(here);
            settled += other.probability() * (1 - Math.exp(-candidate.tells().separation(apart, known) / 8));
        }
        return settled;
    }
}
