package polewright.bench.nights;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.LongStream;
import polewright.bench.TrialOptions;
import polewright.bench.frames.Spread;
import polewright.bench.frames.Verdict;

/**
 * The benefit of the advice: nights of users by eye, with a guide camera and with a camera on the main tube, in both
 * hemispheres, each from 1° to 8° off and with its own work, played with the advice and by the plain routine. Both
 * are judged by the zone of the work and the true axis, not by what either estimates.
 */
public final class NightsByWork {
    private static final int NIGHTS = 2000;
    private static final double SAVED = 0.4;
    private static final double FALSE_STOPS = 0.05;
    private static final int WORST = 10;

    private NightsByWork() {}

    /** One night, both ways. */
    private record Pair(WorkNight night, PlayedNight advised, PlayedNight plain) {
        static Pair of(long seed) {
            WorkNight night = WorkNight.of(seed);
            return new Pair(night, night.advised(), night.plain());
        }

        /** The advice's time minus the plain routine's, in minutes. */
        double lost() {
            return advised.minutes() - plain.minutes();
        }
    }

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.orOne("nights-by-work", args, NIGHTS);
        if (options.single()) {
            describe(Pair.of(options.first()));
            return;
        }
        AtomicInteger played = new AtomicInteger();
        long began = System.nanoTime();
        List<Pair> pairs = LongStream.range(options.first(), options.first() + options.count())
                .parallel()
                .mapToObj(seed -> {
                    Pair pair = Pair.of(seed);
                    if (played.incrementAndGet() % 200 == 0) {
                        System.err.println(played.get() + " nights played");
                    }
                    return pair;
                })
                .toList();
        System.out.printf(
                Locale.ROOT,
                "%d nights, seeds %d to %d, 1 to 8 degrees off, latitudes 15 to 65; played in %.0f s%n%n",
                options.count(),
                options.first(),
                options.first() + options.count() - 1,
                (System.nanoTime() - began) / 1e9);
        table(pairs);
        worst(pairs);
        System.exit(judge(pairs).status());
    }

    private static void table(List<Pair> pairs) {
        System.out.printf(
                Locale.ROOT,
                "%-22s%17s%12s%14s%9s%8s%19s%n",
                "",
                "minutes to stop",
                "truly good",
                "adjustments",
                "false",
                "never",
                "needless");
        System.out.printf(
                Locale.ROOT,
                "%-22s%9s%8s%12s%8s%6s%9s%8s%11s%8s%n",
                "",
                "median",
                "90 %",
                "median",
                "median",
                "90 %",
                "stops",
                "stop",
                "minutes",
                "turns");
        for (UserKind kind : UserKind.values()) {
            for (boolean northern : new boolean[] {true, false}) {
                rows(
                        kind.words() + (northern ? ", north" : ", south"),
                        only(pairs, p -> p.night().kind() == kind && p.night().northern() == northern));
            }
        }
        rows("all", pairs);
    }

    private static void rows(String who, List<Pair> pairs) {
        System.out.printf(
                Locale.ROOT,
                "%s: %d nights, tolerated about the pole: median %.0f', least %.0f'%n",
                who,
                pairs.size(),
                new Spread(pairs.stream().mapToDouble(p -> p.night().tolerated().arcminutes())).median(),
                pairs.stream()
                        .mapToDouble(p -> p.night().tolerated().arcminutes())
                        .min()
                        .orElse(Double.NaN));
        row("advised", pairs.stream().map(Pair::advised).toList());
        row("plain routine", pairs.stream().map(Pair::plain).toList());
    }

    private static void row(String player, List<PlayedNight> nights) {
        Spread minutes = spread(nights, PlayedNight::minutes);
        Spread adjustments = spread(nights, PlayedNight::adjustments);
        System.out.printf(
                Locale.ROOT,
                "    %-18s%9.1f%8.1f%12.1f%8.0f%6.0f%7.1f %%%8d%11.1f%8.2f%n",
                player,
                minutes.median(),
                minutes.quantile(0.9),
                spread(nights, PlayedNight::minutesUntilGood).median(),
                adjustments.median(),
                adjustments.quantile(0.9),
                100 * falseStops(nights),
                nights.stream().filter(n -> !n.stopped()).count(),
                spread(nights, PlayedNight::needlessMinutes).median(),
                nights.stream()
                        .mapToInt(PlayedNight::needlessAdjustments)
                        .average()
                        .orElse(0));
    }

    /** Where to look for weaknesses of the advice. */
    private static void worst(List<Pair> pairs) {
        System.out.println();
        System.out.println("Nights on which the advice took longest beside the plain routine (--seed N tells one):");
        pairs.stream()
                .sorted((a, b) -> Double.compare(b.lost(), a.lost()))
                .limit(WORST)
                .forEach(p -> System.out.printf(
                        Locale.ROOT,
                        "    seed %5d  %-24s %6.1f min, plain %6.1f%n",
                        p.night().seed(),
                        p.night().kind().words(),
                        p.advised().minutes(),
                        p.plain().minutes()));
        System.out.println("False stops of the advice: "
                + only(pairs, p -> p.advised().isFalseStop()).stream()
                        .map(p -> Long.toString(p.night().seed()))
                        .limit(30)
                        .toList());
        System.out.println();
    }

    private static Verdict judge(List<Pair> pairs) {
        Verdict verdict = new Verdict();
        for (UserKind kind : UserKind.values()) {
            require(verdict, kind.words(), only(pairs, p -> p.night().kind() == kind));
        }
        require(verdict, "all", pairs);
        return verdict;
    }

    private static void require(Verdict verdict, String who, List<Pair> pairs) {
        if (pairs.isEmpty()) {
            return;
        }
        double advised = spread(pairs.stream().map(Pair::advised).toList(), PlayedNight::minutes)
                .median();
        double plain = spread(pairs.stream().map(Pair::plain).toList(), PlayedNight::minutes)
                .median();
        verdict.require(
                advised <= (1 - SAVED) * plain,
                String.format(
                        Locale.ROOT,
                        "%s: at least 40 %% fewer minutes in the median: %.1f for %.1f, %.0f %% fewer",
                        who,
                        advised,
                        plain,
                        100 * (1 - advised / plain)));
        double wrong = falseStops(pairs.stream().map(Pair::advised).toList());
        verdict.require(
                wrong <= FALSE_STOPS,
                String.format(Locale.ROOT, "%s: at most 5 %% of stops are false: %.1f %%", who, 100 * wrong));
    }

    private static double falseStops(List<PlayedNight> nights) {
        long stops = nights.stream().filter(PlayedNight::stopped).count();
        return stops == 0
                ? 0
                : (double) nights.stream().filter(PlayedNight::isFalseStop).count() / stops;
    }

    private static Spread spread(List<PlayedNight> nights, ToDoubleFunction<PlayedNight> figure) {
        return new Spread(nights.stream().mapToDouble(figure));
    }

    private static List<Pair> only(List<Pair> pairs, Predicate<Pair> which) {
        return pairs.stream().filter(which).toList();
    }

    private static void describe(Pair pair) {
        WorkNight night = pair.night();
        System.out.printf(
                Locale.ROOT,
                "seed %d: %s, latitude %.1f, for %s; tolerated: %.1f' about the pole, %.1f' about %.1f' east %.1f' up%n",
                night.seed(),
                night.kind().words(),
                night.setting().wedge().site().latitude().degrees(),
                night.zone().work().items().get(0).name(),
                night.tolerated().arcminutes(),
                night.zone().depth().arcminutes(),
                night.zone().bestAim().east().arcminutes(),
                night.zone().bestAim().up().arcminutes());
        System.out.println(night.setting().wedge());
        System.out.println("Advised:");
        pair.advised().lines().forEach(System.out::println);
        System.out.println("Plain routine:");
        pair.plain().lines().forEach(System.out::println);
    }
}
