package polewright.bench.independent;

import java.util.List;
import polewright.axis.advice.Advice;
import polewright.night.event.NightEvent;

/**
 * A night that was played with the advice.
 *
 * @param moments after each event
 * @param refusals what was refused as it was written
 * @param toleratedArcmin the allowance
 */
record PlayedNight(List<Moment> moments, List<String> refusals, double toleratedArcmin) {
    PlayedNight {
        moments = List.copyOf(moments);
        refusals = List.copyOf(refusals);
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
