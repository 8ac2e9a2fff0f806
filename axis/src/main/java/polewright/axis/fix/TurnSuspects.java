package polewright.axis.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.axis.rig.HandTurns;
import polewright.axis.rig.Rig;
import polewright.sky.place.Site;

/**
 * When sightings do not fit, the fault may lie with a turn instead: the wrong way round, the wrong screw, not made at all.
 */
final class TurnSuspects {
    // A turn is told wrongly about as seldom as a sighting: against the word of one sighting alone, which of the two it
    // was is of no more interest once the axis has been seen anew, unless it would teach the screws something wrong.
    private static final double MORE_THAN_ONE_SIGHTING = Chance.onceInAThousand(1) + Contradictions.HUNDRED_TO_ONE;

    private TurnSuspects() {}

    /**
     * What may have been turned instead of what was told.
     *
     * @param told the turn as it was told
     * @param words completes "it would fit if …"
     * @param steps the night with the turn as it may have been
     */
    private record Suspicion(Step.Turned told, String words, List<Step> steps) {}

    /**
     * The turn that explains the night, in words, if one does with odds of a hundred to one over setting sightings aside.
     *
     * @param plain the night with every turn as told
     */
    static Optional<String> explain(Site site, Rig rig, List<Step> steps, Account plain) {
        record Weighed(Suspicion suspicion, Account account) {}
        return steps.stream()
                .filter(Step.Turned.class::isInstance)
                .map(Step.Turned.class::cast)
                .flatMap(turned -> suspicions(steps, turned))
                .map(s -> new Weighed(s, Contradictions.weigh(site, rig, s.steps())))
                .filter(w -> w.account().night().settled())
                .min(Comparator.comparingDouble(w -> w.account().cost()))
                .filter(w -> isToBlame(plain, w.account()))
                .map(w -> "what was seen since does not fit the turns of #"
                        + w.suspicion().told().seq() + ", but would if "
                        + w.suspicion().words() + "; undo #"
                        + w.suspicion().told().seq()
                        + " and enter it as it was, or correct the rig");
    }

    private static boolean isToBlame(Account asTold, Account suspected) {
        double gained = asTold.cost() - suspected.cost();
        boolean isAtStake = asTold.surcharge() > 0 || asTold.differsNowFrom(suspected);
        return gained > MORE_THAN_ONE_SIGHTING || (gained > Contradictions.HUNDRED_TO_ONE && isAtStake);
    }

    private static Stream<Suspicion> suspicions(List<Step> steps, Step.Turned told) {
        HandTurns azimuth = told.azimuth();
        HandTurns altitude = told.altitude();
        List<Suspicion> suspicions = new ArrayList<>();
        if (!azimuth.isNone()) {
            suspicions.add(instead(
                    steps, told, azimuth.reversed(), altitude, "the azimuth screw took the axis the other way"));
        }
        if (!altitude.isNone()) {
            suspicions.add(instead(
                    steps, told, azimuth, altitude.reversed(), "the altitude screw took the axis the other way"));
        }
        if (!azimuth.isNone() && !altitude.isNone()) {
            suspicions.add(instead(
                    steps, told, azimuth.reversed(), altitude.reversed(), "both screws took the axis the other way"));
        }
        suspicions.add(instead(steps, told, altitude, azimuth, "the other screw had been turned"));
        suspicions.add(instead(steps, told, HandTurns.NONE, HandTurns.NONE, "nothing had moved"));
        return suspicions.stream();
    }

    private static Suspicion instead(
            List<Step> steps, Step.Turned told, HandTurns azimuth, HandTurns altitude, String words) {
        Step.Turned meant = new Step.Turned(told.seq(), azimuth.net(), altitude.net(), azimuth.back(), altitude.back());
        return new Suspicion(
                told, words, steps.stream().map(s -> s.equals(told) ? meant : s).toList());
    }
}
