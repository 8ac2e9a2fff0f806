package polewright.bench.independent;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import polewright.bench.frames.Verdict;

/** Nights with each mistake: is it noticed and named, and are correct sightings accused? */
final class MistakesStudy {
    private static final double NOTICED = 0.95;
    private static final double NAMED = 0.85;
    private static final double HONEST_ACCUSED = 0.02;
    private static final double CONFIDENT_FALSE_STOPS = 0.01;

    private MistakesStudy() {}

    static int run(StudyOptions options) {
        System.out.printf(
                Locale.ROOT,
                "of each mistake %s, %s; * misses its target%n%n",
                options.seeds(),
                options.isCorrecting() ? "corrected when it is named" : "never corrected");
        System.out.printf(
                Locale.ROOT,
                "%-46s%6s%9s%9s%9s%9s%9s%9s%n",
                "",
                "made",
                "telling",
                "noticed",
                "named",
                "accused",
                "false",
                "no stop");
        List<MistakenNight> all = new ArrayList<>();
        for (Mistake mistake : options.mistakes()) {
            List<MistakenNight> nights = options.played(seed -> {
                MistakenNight night = MistakenNight.of(mistake, seed, options.isCorrecting());
                if (options.describesOneNight()) {
                    System.out.println(mistake + ", seed " + seed + ": " + outcome(night));
                    NightInWords.print(night.night());
                }
                return night;
            });
            all.addAll(nights);
            row(mistake.words(), nights);
        }
        row("all", all);
        System.out.println();
        Verdict verdict = new Verdict();
        require(verdict, "noticed, at least 95 %", noticed(all), noticed(all) >= NOTICED);
        require(verdict, "of those named rightly, at least 85 %", named(all), named(all) >= NAMED);
        require(
                verdict,
                "honest sighting accused at the end, at most 2 %",
                accused(all),
                accused(all) <= HONEST_ACCUSED);
        require(
                verdict,
                "confident false stops, at most 1 %",
                falseStops(all),
                falseStops(all) <= CONFIDENT_FALSE_STOPS);
        return verdict.status();
    }

    private static String outcome(MistakenNight night) {
        if (!night.isMade()) {
            return "no occasion";
        }
        String found = night.counts()
                ? (night.isNoticed() ? "noticed" : "NOT NOTICED") + (night.isNamed() ? ", named" : ", NOT NAMED")
                : "moves nothing and is not noticed";
        return found
                + (night.isHonestAccused() ? ", HONEST SIGHTING ACCUSED" : "")
                + (night.night().isConfidentFalseStop() ? ", CONFIDENT FALSE STOP" : "")
                + (night.night().isStopped() ? "" : ", no stop");
    }

    private static void require(Verdict verdict, String what, double share, boolean met) {
        verdict.require(met, String.format(Locale.ROOT, "%s: %.1f %%", what, 100 * share));
    }

    private static void row(String words, List<MistakenNight> nights) {
        System.out.printf(
                Locale.ROOT,
                "%-46s%6d%9d%9s%9s%9s%9s%9d%n",
                words,
                count(nights, MistakenNight::isMade),
                count(nights, MistakenNight::counts),
                count(nights, MistakenNight::counts) == 0 ? "-  " : marked(noticed(nights), noticed(nights) >= NOTICED),
                count(nights, night -> night.counts() && night.isNoticed()) == 0
                        ? "-  "
                        : marked(named(nights), named(nights) >= NAMED),
                marked(accused(nights), accused(nights) <= HONEST_ACCUSED),
                marked(falseStops(nights), falseStops(nights) <= CONFIDENT_FALSE_STOPS),
                count(nights, night -> !night.night().isStopped()));
    }

    private static String marked(double share, boolean met) {
        return String.format(Locale.ROOT, "%.0f %%%s", 100 * share, met ? " " : "*");
    }

    private static double noticed(List<MistakenNight> nights) {
        return share(nights, MistakenNight::counts, MistakenNight::isNoticed);
    }

    private static double named(List<MistakenNight> nights) {
        return share(nights, night -> night.counts() && night.isNoticed(), MistakenNight::isNamed);
    }

    private static double accused(List<MistakenNight> nights) {
        return share(nights, MistakenNight::isMade, MistakenNight::isHonestAccused);
    }

    private static double falseStops(List<MistakenNight> nights) {
        return share(nights, MistakenNight::isMade, night -> night.night().isConfidentFalseStop());
    }

    private static double share(
            List<MistakenNight> nights, Predicate<MistakenNight> of, Predicate<MistakenNight> that) {
        long all = count(nights, of);
        return all == 0 ? 0 : (double) count(nights, of.and(that)) / all;
    }

    private static long count(List<MistakenNight> nights, Predicate<MistakenNight> that) {
        return nights.stream().filter(that).count();
    }
}
