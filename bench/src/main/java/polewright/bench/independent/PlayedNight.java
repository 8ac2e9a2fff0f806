package polewright.bench.independent;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.alignment.advice.Advice;
import polewright.session.event.NightEvent;

/**
 * A night that was played with the advice.
 *
 * @param moments after each event
 * @param refusals what was refused as it was written
 * @param mistaken the numbers of sightings that were logged wrongly
 * @param watchedInstead the star that was watched by mistake
 * @param toleratedArcmin the allowance
 */
record PlayedNight(
        List<Moment> moments,
        List<Refusal> refusals,
        Set<Long> mistaken,
        Optional<String> watchedInstead,
        double toleratedArcmin) {
    private static final double GOOD_PROBABILITY = 0.95;

    /**
     * An entry that the program refused, or asked about.
     *
     * @param afterEvents events logged by then
     */
    record Refusal(int afterEvents, String words) {}

    PlayedNight {
        moments = List.copyOf(moments);
        refusals = List.copyOf(refusals);
        mistaken = Set.copyOf(mistaken);
    }

    Moment last() {
        return moments.get(moments.size() - 1);
    }

    boolean isStopped() {
        return last().night().advice() instanceof Advice.Stop;
    }

    boolean isFalseStop() {
        return isStopped() && last().offset().arcmin() > toleratedArcmin;
    }

    /** Stopped on a sufficiently accurate fix, not because the screws allow no better one. */
    boolean isSureStop() {
        return isStopped()
                && last().night().advice().probabilityNow() >= GOOD_PROBABILITY
                && !Accusations.of(last().night()).isInDoubt();
    }

    boolean isConfidentFalseStop() {
        return isFalseStop() && isSureStop();
    }

    double minutes() {
        return last().minutes();
    }

    /** Number of events without the beginning. */
    int events() {
        return moments.size() - 1;
    }

    int adjustments() {
        return (int) moments.stream()
                .filter(moment -> moment.event().event() instanceof NightEvent.ScrewsTurned
                        || moment.event().event() instanceof NightEvent.Knocked)
                .count();
    }
}
