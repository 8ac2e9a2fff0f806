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
 * @param mistaken the numbers of sightings that were written down wrongly
 * @param watchedInstead the star that was watched for another
 * @param toleratedArcmin the allowance
 */
record PlayedNight(
        List<Moment> moments,
        List<Refusal> refusals,
        Set<Long> mistaken,
        Optional<String> watchedInstead,
        double toleratedArcmin) {
    private static final double ENOUGH = 0.95;

    /**
     * What the program would not take, or asked about.
     *
     * @param afterEvents events written by then
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

    /** Stopped on a fix that is sure of itself, not because the screws let it be no better. */
    boolean isSureStop() {
        return isStopped()
                && last().night().advice().probabilityNow() >= ENOUGH
                && !Accusations.of(last().night()).isInDoubt();
    }

    boolean isConfidentFalseStop() {
        return isFalseStop() && isSureStop();
    }

    double minutes() {
        return last().minutes();
    }

    /** Events without the beginning. */
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
