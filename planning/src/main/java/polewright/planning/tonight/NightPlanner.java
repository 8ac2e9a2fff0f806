package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.time.Interval;

/**
 * Schedules the targets so that the night's score is as high as can be found.
 *
 * <p>The score of a schedule (docs/tonight.md): for each slot the mean of the target's score at its start, middle and
 * end, plus 1 for a requested target; minus 0.1 for each idle hour before the last slot begins, counted from the first
 * moment at which one of the targets is observable; minus 0.1 for each half turn of slewing.
 *
 * <p>A beam search through the night in steps of five minutes: of the partial schedules that end at one time, the best
 * few dozen are kept, each with an upper bound on what the remaining targets could add. The result is deterministic.
 */
final class NightPlanner {
    static final Duration STEP = Duration.ofMinutes(5);

    private static final double IDLE_HOUR = 0.1;
    private static final double HALF_TURN_SLEW = 0.1;
    private static final double WANTED = 1;
    private static final int KEPT = 60;
    /** The set of observed targets is a 64-bit word. */
    private static final int MOST_TARGETS = 60;

    private static final double IDLE_STEP = IDLE_HOUR * STEP.toSeconds() / 3600.0;

    /** The score of a target at one time. */
    interface Worth {
        double at(Observability showing, Instant when);
    }

    private final List<Observability> targets;
    private final Duration turn;
    private final Instant start;
    private final int steps;
    private final int turnSteps;
    /** The value of a slot of each target starting at each step; NaN if it has none. */
    private final double[][] values;
    /** The best of them from each step on; 0 if there is none. */
    private final double[][] bestLater;

    /** The targets at each step, the one with the best value first. */
    private final int[][] promising;

    private final HourAnglePlace[][] places;

    /** A partial schedule. */
    private record Order(
            @Nullable Order before, int target, int begins, int ends, long observed, int count, double score) {
        boolean has(int other) {
            return (observed & (1L << other)) != 0;
        }
    }

    /**
     * Partial schedules that observed the same targets and end at the same one have the same continuations: the better
     * one is kept.
     */
    private record Ended(long observed, int target) {}

    private NightPlanner(List<Observability> targets, Duration turn, Worth worth, Interval night) {
        this.targets = targets;
        this.turn = turn;
        this.start = roundedUp(night.from());
        this.steps = (int) Math.max(0, Duration.between(start, night.to()).toSeconds() / STEP.toSeconds());
        this.turnSteps = (int) Math.ceil(turn.toSeconds() / (double) STEP.toSeconds());
        this.values = new double[targets.size()][];
        this.bestLater = new double[targets.size()][];
        this.places = new HourAnglePlace[targets.size()][];
        for (int target = 0; target < targets.size(); target++) {
            value(target, worth);
        }
        this.promising = new int[steps + 2][];
        for (int step = 0; step < promising.length; step++) {
            int now = step;
            promising[step] = IntStream.range(0, targets.size())
                    .boxed()
                    .sorted(Comparator.comparingDouble(target -> -bestLater[target][now]))
                    .mapToInt(target -> target)
                    .toArray();
        }
    }

    /**
     * The schedule.
     *
     * @param targets the candidates, best first
     * @param most largest number observed
     */
    static NightPlan plan(List<Observability> targets, Duration turn, int most, Worth worth) {
        List<Observability> considered = targets.subList(0, Math.min(MOST_TARGETS, targets.size()));
        Optional<Interval> night = span(considered);
        return night.map(span -> new NightPlanner(considered, turn, worth, span).best(most))
                .orElseGet(() -> new NightPlan(List.of()));
    }

    /** From the time when the first of them becomes observable until the last ceases to be. */
    static Optional<Interval> span(List<Observability> targets) {
        Optional<Instant> from =
                targets.stream().map(showing -> showing.windows().get(0).from()).min(Comparator.naturalOrder());
        Optional<Instant> to = targets.stream()
                .map(showing ->
                        showing.windows().get(showing.windows().size() - 1).to())
                .max(Comparator.naturalOrder());
        return from.flatMap(first -> to.map(last -> new Interval(first, last)));
    }

    /** The mean score over a slot; NaN if the target is not observable throughout. */
    static double value(Observability showing, Interval slot, Worth worth) {
        if (showing.windows().stream().noneMatch(w -> w.contains(slot.from()) && w.contains(slot.to()))) {
            return Double.NaN;
        }
        Instant middle = slot.from().plus(slot.length().dividedBy(2));
        return (worth.at(showing, slot.from()) + worth.at(showing, middle) + worth.at(showing, slot.to())) / 3
                + (showing.target().isWanted() ? WANTED : 0);
    }

    /** Rounded up to five minutes: 18:01:37 is not a time to plan by. */
    static Instant roundedUp(Instant at) {
        long step = STEP.toSeconds();
        return Instant.ofEpochSecond(
                Math.floorDiv(at.getEpochSecond() + step - (at.getNano() > 0 ? 0 : 1), step) * step);
    }

    private Instant at(int step) {
        return start.plus(STEP.multipliedBy(step));
    }

    private Interval slot(int begins) {
        return new Interval(at(begins), at(begins).plus(turn));
    }

    private void value(int target, Worth worth) {
        Observability showing = targets.get(target);
        values[target] = new double[steps + 1];
        bestLater[target] = new double[steps + turnSteps + 2];
        places[target] = new HourAnglePlace[steps + turnSteps + 2];
        for (int step = steps; step >= 0; step--) {
            double value = value(showing, slot(step), worth);
            values[target][step] = value;
            bestLater[target][step] = Math.max(bestLater[target][step + 1], Double.isNaN(value) ? 0 : value);
        }
        Arrays.setAll(places[target], step -> showing.path().at(at(step)));
    }

    private NightPlan best(int most) {
        List<Map<Ended, Order>> ending = new ArrayList<>();
        for (int step = 0; step <= steps + turnSteps; step++) {
            ending.add(new HashMap<>());
        }
        Order nothing = new Order(null, -1, 0, 0, 0, 0, 0);
        Order best = nothing;
        List<Order> waiting = List.of(nothing);
        for (int step = 0; step <= steps; step++) {
            for (Order order : waiting) {
                for (int target = 0; target < targets.size(); target++) {
                    if (order.count() == most || order.has(target) || Double.isNaN(values[target][step])) {
                        continue;
                    }
                    Order longer = with(order, target, step);
                    ending.get(longer.ends()).merge(new Ended(longer.observed(), target), longer, NightPlanner::better);
                    best = better(best, longer);
                }
            }
            waiting = kept(waiting, ending.get(step + 1).values(), step + 1, most);
        }
        return plan(best);
    }

    private static Order better(Order one, Order other) {
        return other.score() > one.score() ? other : one;
    }

    private Order with(Order order, int target, int step) {
        double slew = order.target() < 0
                ? 0
                : NightPlan.slew(places[order.target()][order.ends()], places[target][step])
                                .radians()
                        / Math.PI;
        double score = order.score() + values[target][step] - IDLE_STEP * (step - order.ends()) - HALF_TURN_SLEW * slew;
        return new Order(
                order, target, step, step + turnSteps, order.observed() | 1L << target, order.count() + 1, score);
    }

    private List<Order> kept(List<Order> waiting, Iterable<Order> ended, int step, int most) {
        record Promising(Order order, double upperBound) {}
        List<Promising> all = new ArrayList<>();
        waiting.forEach(order -> all.add(new Promising(order, upperBound(order, step, most))));
        ended.forEach(order -> all.add(new Promising(order, upperBound(order, step, most))));
        return all.stream()
                .sorted(Comparator.comparingDouble(Promising::upperBound)
                        .reversed()
                        .thenComparing(promising -> promising.order().observed())
                        .thenComparing(promising -> promising.order().target()))
                .limit(KEPT)
                .map(Promising::order)
                .toList();
    }

    /** Upper bound on the score: each remaining target at its best, as many as there is time for. */
    private double upperBound(Order order, int step, int most) {
        int room = Math.min(most - order.count(), (steps - step + turnSteps) / turnSteps);
        double sum = order.score() - IDLE_STEP * (step - order.ends());
        for (int target : promising[step]) {
            if (room <= 0) {
                break;
            }
            if (!order.has(target)) {
                sum += bestLater[target][step];
                room--;
            }
        }
        return sum;
    }

    private NightPlan plan(Order order) {
        List<NightPlan.Slot> slots = new ArrayList<>();
        for (Order at = order; at != null && at.target() >= 0; at = at.before()) {
            slots.add(0, new NightPlan.Slot(targets.get(at.target()), slot(at.begins())));
        }
        return new NightPlan(slots);
    }
}
