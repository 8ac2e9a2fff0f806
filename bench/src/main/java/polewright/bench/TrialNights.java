package polewright.bench;

import java.util.List;
import java.util.Locale;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import polewright.alignment.advice.Advice;
import polewright.simulation.RehearsedNight;
import polewright.simulation.RehearsedNight.Moment;

/**
 * The rehearsed nights of a bench, and how their counts are printed.
 *
 * @param all one night for each seed, in order; each as its moments
 */
record TrialNights(List<List<Moment>> all) {
    /** One night for each seed, played in parallel; prints what is being played. */
    static TrialNights played(TrialOptions options, String what, LongFunction<List<RehearsedNight.Moment>> night) {
        long end = options.first() + options.count();
        System.out.printf(
                Locale.ROOT, "%d nights, seeds %d to %d, %s%n", options.count(), options.first(), end - 1, what);
        return new TrialNights(LongStream.range(options.first(), end)
                .parallel()
                .mapToObj(night)
                .toList());
    }

    static Moment last(List<Moment> night) {
        return night.get(night.size() - 1);
    }

    /** Prints how many nights stopped, and how many of those left the axis outside the allowance. */
    void printStops() {
        List<List<Moment>> stopped = all.stream()
                .filter(night -> last(night).night().advice() instanceof Advice.Stop)
                .toList();
        print("stopped", stopped.size(), all.size());
        print(
                "of those not good enough in truth",
                stopped.stream().filter(night -> !isGood(last(night))).count(),
                stopped.size());
    }

    /** Prints how many of the nights match. */
    void print(String what, Predicate<List<Moment>> condition) {
        print(what, all.stream().filter(condition).count(), all.size());
    }

    static void print(String what, long some, long of) {
        System.out.printf(Locale.ROOT, "%-58s %5d of %5d  %5.1f %%%n", what, some, of, 100.0 * some / Math.max(1, of));
    }

    static void percentiles(String what, double[] sorted) {
        System.out.printf(
                Locale.ROOT,
                "%s: median %.0f, 90th percentile %.0f, largest %.0f%n",
                what,
                sorted[sorted.length / 2],
                sorted[sorted.length * 9 / 10],
                sorted[sorted.length - 1]);
    }

    private static boolean isGood(Moment moment) {
        return moment.night().allowance().contains(moment.wedge().offset());
    }
}
