package polewright.axis.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.axis.rig.Rig;
import polewright.sky.place.Site;

/**
 * When sightings do not fit, the fault may lie with a turn instead: the wrong way round, the wrong screw, not made at all.
 */
final class TurnSuspects {
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
        record Weighed(Suspicion suspicion, double cost) {}
        return steps.stream()
                .filter(Step.Turned.class::isInstance)
                .map(Step.Turned.class::cast)
                .flatMap(turned -> suspicions(steps, turned))
                .map(s -> new Weighed(
                        s, Contradictions.weigh(site, rig, s.steps()).cost()))
                .min(Comparator.comparingDouble(Weighed::cost))
                .filter(w -> w.cost() < plain.cost() - Contradictions.HUNDRED_TO_ONE)
                .map(w -> "what was seen since does not fit the turns of #"
                        + w.suspicion().told().seq() + ", but would if "
                        + w.suspicion().words() + "; undo #"
                        + w.suspicion().told().seq()
                        + " and enter it as it was, or correct the rig");
    }

    private static Stream<Suspicion> suspicions(List<Step> steps, Step.Turned told) {
        double azimuth = told.azimuthTurns();
        double altitude = told.altitudeTurns();
        List<Suspicion> suspicions = new ArrayList<>();
        if (azimuth != 0) {
            suspicions.add(instead(steps, told, -azimuth, altitude, "the azimuth screw took the axis the other way"));
        }
        if (altitude != 0) {
            suspicions.add(instead(steps, told, azimuth, -altitude, "the altitude screw took the axis the other way"));
        }
        if (azimuth != 0 && altitude != 0) {
            suspicions.add(instead(steps, told, -azimuth, -altitude, "both screws took the axis the other way"));
        }
        suspicions.add(instead(steps, told, altitude, azimuth, "the other screw had been turned"));
        suspicions.add(instead(steps, told, 0, 0, "nothing had moved"));
        return suspicions.stream();
    }

    private static Suspicion instead(
            List<Step> steps, Step.Turned told, double azimuth, double altitude, String words) {
        Step.Turned meant = new Step.Turned(told.seq(), azimuth, altitude);
        return new Suspicion(
                told, words, steps.stream().map(s -> s.equals(told) ? meant : s).toList());
    }
}
