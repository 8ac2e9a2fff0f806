package polewright.bench.independent;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import polewright.alignment.advice.Advice;
import polewright.alignment.fix.Fix;
import polewright.bench.frames.Verdict;
import polewright.bench.independent.truth.ReticleLine;
import polewright.session.event.NightEvent;

/**
 * Nights without mistakes: does the region have its stated probability after every event, and are there false
 * accusations?
 */
final class HonestStudy {
    private static final double LEAST = 0.93;
    private static final double MOST = 0.97;
    private static final double ACCUSED = 0.005;
    private static final int EAST_OF_FAR_DEG = 15;

    private HonestStudy() {}

    /** How often a region contained the truth. */
    private static final class Count {
        private int held;
        private int all;

        void add(boolean holds) {
            held += holds ? 1 : 0;
            all++;
        }

        double share() {
            return all == 0 ? 0 : (double) held / all;
        }
    }

    static int run(StudyOptions options) {
        System.out.printf(Locale.ROOT, "%s: latitudes -65 to 65, to 5 degrees off a side%n%n", options.seeds());
        Map<String, Count> counts = new TreeMap<>();
        Count everything = new Count();
        List<PlayedNight> nights = options.played(seed -> HonestNight.played(seed, 1));
        long seed = options.from();
        for (PlayedNight night : nights) {
            if (options.describesOneNight()) {
                System.out.println("seed " + seed);
                NightInWords.print(night);
            }
            count(night, HonestNight.habits(seed), everything, counts);
            seed++;
        }
        counts.forEach((what, count) -> System.out.printf(
                Locale.ROOT,
                "%-40s %5d events %6.1f %%%s%n",
                what,
                count.all,
                100 * count.share(),
                isRight(count) ? "" : " *"));
        System.out.println();
        Verdict verdict = new Verdict();
        verdict.require(
                isRight(everything),
                String.format(
                        Locale.ROOT,
                        "the 95 %% region holds the axis, 93 to 97 %% of all %d events: %.1f %%",
                        everything.all,
                        100 * everything.share()));
        long accused = nights.stream()
                .filter(night -> Accusations.of(night.last().night()).isAny())
                .count();
        double share = (double) accused / nights.size();
        verdict.require(
                share <= ACCUSED,
                String.format(
                        Locale.ROOT,
                        "nights in which anything is accused at the end, at most 0.5 %%: %.1f %%",
                        100 * share));
        printStops("stops", nights.stream().filter(PlayedNight::isStopped).toList(), nights.size());
        printStops(
                "stops at 95 % or more",
                nights.stream().filter(PlayedNight::isSureStop).toList(), nights.size());
        return verdict.status();
    }

    private static void printStops(String what, List<PlayedNight> stops, int nights) {
        long wrong = stops.stream().filter(PlayedNight::isFalseStop).count();
        System.out.printf(
                Locale.ROOT,
                "%s %.1f %%, of those false %.1f %%; by their own probability %.1f %%%n",
                what,
                100.0 * stops.size() / nights,
                stops.isEmpty() ? 0 : 100.0 * wrong / stops.size(),
                100
                        * stops.stream()
                                .mapToDouble(night ->
                                        1 - night.last().night().advice().probabilityNow())
                                .average()
                                .orElse(0));
    }

    private static boolean isRight(Count count) {
        return count.share() >= LEAST && count.share() <= MOST;
    }

    private static void count(PlayedNight night, Habits habits, Count everything, Map<String, Count> counts) {
        for (Moment moment : night.moments()) {
            Fix fix = moment.night().fix();
            // Before the first information the region is that of the prior.
            if (fix.isDetermined()) {
                boolean holds = StatedRegion.holds(fix, moment.offset());
                everything.add(holds);
                add(counts, "after " + kind(moment.event().event()), holds);
                add(counts, "reticle " + words(habits), holds);
                add(counts, latitude(moment), holds);
                add(counts, distance(night), holds);
                if (moment.night().advice() instanceof Advice.Stop) {
                    add(counts, "at the stop", holds);
                }
                if (fix instanceof Fix.Dubious) {
                    add(counts, "in doubt", holds);
                }
            }
        }
    }

    private static void add(Map<String, Count> counts, String what, boolean holds) {
        counts.computeIfAbsent(what, key -> new Count()).add(holds);
    }

    private static String kind(NightEvent event) {
        return event instanceof NightEvent.SightingTaken taken
                ? taken.sighting().kind()
                : event.getClass().getSimpleName();
    }

    private static String words(Habits habits) {
        return (habits.line() == ReticleLine.BY_TRAIL ? "by the trail" : "by slow motion")
                + (habits.lineStated() ? ", stated" : ", not stated");
    }

    private static String latitude(Moment moment) {
        double latitudeDeg = Math.abs(Math.toDegrees(moment.wedge().place().latitude()));
        return latitudeDeg < EAST_OF_FAR_DEG
                ? "latitude 0 to 15"
                : latitudeDeg < 40 ? "latitude 15 to 40" : "latitude 40 to 65";
    }

    private static String distance(PlayedNight night) {
        double degrees = night.moments().get(0).offset().arcmin() / 60;
        return degrees < 2
                ? "first offset under 2 degrees"
                : degrees < 4 ? "first offset 2 to 4 degrees" : "first offset over 4 degrees";
    }
}
