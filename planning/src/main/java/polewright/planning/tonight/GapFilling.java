package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.sky.time.Interval;

/** No gap of an hour stays in a plan while something good is up that is not planned. */
final class GapFilling {
    static final Duration LONG = Duration.ofHours(1);
    /** From this merit on something is good: a planet 22° up, a bright cluster half-way up, by moonlight too. */
    static final double GOOD = 0.3;

    private GapFilling() {}

    /**
     * The plan with as much more as its gaps call for. The time before its first slot is a gap as well, from the moment on
     * at which the first of its targets could be observed.
     *
     * @param ranked what may be added, the best first
     * @param most how many slots there may be
     */
    static NightPlan of(
            NightPlan plan,
            Instant begins,
            List<Observability> ranked,
            Duration turn,
            int most,
            NightPlanner.Worth worth) {
        List<NightPlan.Slot> slots = new ArrayList<>(plan.slots());
        Set<Observability> planned = new HashSet<>();
        slots.forEach(slot -> planned.add(slot.showing()));
        Instant free = NightPlanner.roundedUp(begins);
        for (int next = 0; next < slots.size() && slots.size() < most; next++) {
            Optional<NightPlan.Slot> added =
                    first(new Interval(free, slots.get(next).when().from()), ranked, planned, turn, worth);
            if (added.isPresent()) {
                slots.add(next, added.get());
                planned.add(added.get().showing());
            }
            free = slots.get(next).when().to();
        }
        return new NightPlan(slots);
    }

    /** The best within an hour of the earliest time at which anything good can be observed. */
    private static Optional<NightPlan.Slot> first(
            Interval gap,
            List<Observability> ranked,
            Set<Observability> planned,
            Duration turn,
            NightPlanner.Worth worth) {
        if (gap.length().compareTo(LONG) < 0) {
            return Optional.empty();
        }
        Duration length = turn.compareTo(gap.length()) < 0 ? turn : gap.length();
        Optional<NightPlan.Slot> best = Optional.empty();
        double bestValue = GOOD;
        Instant last = gap.to().minus(length);
        for (Instant from = gap.from(); !from.isAfter(last); from = from.plus(NightPlanner.STEP)) {
            Interval slot = new Interval(from, from.plus(length));
            for (Observability showing : ranked) {
                double value = planned.contains(showing) ? Double.NaN : NightPlanner.value(showing, slot, worth);
                if (value >= bestValue) {
                    if (best.isEmpty()) {
                        Instant hourLater = from.plus(LONG).minus(NightPlanner.STEP);
                        last = hourLater.isBefore(last) ? hourLater : last;
                    }
                    best = Optional.of(new NightPlan.Slot(showing, slot));
                    bestValue = value;
                }
            }
        }
        return best;
    }
}
