package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.sky.time.Interval;

/** Fills gaps of an hour in a plan while something good is up that is not yet planned. */
final class GapFilling {
    static final Duration LONG = Duration.ofHours(1);
    /**
     * The score from which something is good: a planet at 22° altitude, a bright cluster halfway up, also in moonlight.
     */
    static final double GOOD = 0.3;

    private GapFilling() {}

    /**
     * The plan with as many more targets as its gaps require. The time before its first slot is a gap too, from the
     * moment the first of its targets is observable.
     *
     * @param ranked candidates, best first
     * @param most largest number of slots
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

    /** The best within an hour of the earliest time at which anything good is observable. */
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
