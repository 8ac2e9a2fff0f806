package polewright.bench.independent;

import java.util.List;
import java.util.Locale;
import polewright.bench.frames.Verdict;

/** Correct nights whose errors are twice as large as documented: does the fix find out in time? */
final class ScatterStudy {
    private static final double TIMES_AS_DOCUMENTED = 2;
    private static final double FALSE_STOPS = 0.08;

    private ScatterStudy() {}

    static int run(StudyOptions options) {
        System.out.printf(Locale.ROOT, "%s: errors twice as large as documented%n%n", options.seeds());
        List<PlayedNight> nights = options.played(seed -> HonestNight.played(seed, TIMES_AS_DOCUMENTED));
        List<PlayedNight> sure = nights.stream().filter(PlayedNight::isSureStop).toList();
        double share = sure.isEmpty()
                ? 0
                : (double) sure.stream().filter(PlayedNight::isFalseStop).count() / sure.size();
        Verdict verdict = new Verdict();
        verdict.require(
                share <= FALSE_STOPS,
                String.format(Locale.ROOT, "of stops at 95 %%, false, at most 8 %%: %.1f %%", 100 * share));
        System.out.printf(
                Locale.ROOT,
                "%nstops %d, of those at 95 %%: %d; anything accused at the end: %d%n",
                nights.stream().filter(PlayedNight::isStopped).count(),
                sure.size(),
                nights.stream()
                        .filter(night -> Accusations.of(night.last().night()).isAny())
                        .count());
        return verdict.status();
    }
}
