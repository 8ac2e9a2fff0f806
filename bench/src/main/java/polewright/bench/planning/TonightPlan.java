package polewright.bench.planning;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import polewright.bench.TrialOptions;
import polewright.bench.frames.Verdict;
import polewright.planning.tonight.NightPlan;
import polewright.planning.tonight.TonightsPlan;

/** The planned order's share of the best order's score, over random evenings with up to eight targets each. */
public final class TonightPlan {
    static final int MOST_TARGETS = 8;

    private static final int EVENINGS = 100;
    private static final double WANTED_SHARE = 0.95;

    private TonightPlan() {}

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("tonight-plan", args, EVENINGS);
        double[] shares = LongStream.range(options.first(), options.first() + options.count())
                .parallel()
                .mapToDouble(seed -> share(seed, MOST_TARGETS))
                .sorted()
                .toArray();
        double mean = Arrays.stream(shares).average().orElseThrow();
        System.out.printf(
                Locale.ROOT,
                "%d evenings: %.2f %% of the best order's score on average, worst %.2f %%, %d of them the best%n",
                shares.length,
                100 * mean,
                100 * shares[0],
                Arrays.stream(shares).filter(share -> share > 0.9999).count());
        Verdict verdict = new Verdict();
        verdict.require(mean >= WANTED_SHARE, "95 % of the best score on average");
        System.exit(verdict.status());
    }

    /** The planned order's share of the best score; 1 when nothing can be observed and nothing is planned. */
    static double share(long seed, int targets) {
        RandomEvening random = RandomEvening.of(seed, targets);
        TonightsPlan planned = TonightsPlan.of(random.evening(), random.observing(), random.targets(), targets);
        DocumentedScore score = new DocumentedScore(random.evening(), random.observing(), random.targets());
        double best = EveryOrder.best(score);
        List<NightPlan.Slot> slots = planned.plan().slots();
        double own = score.of(slots.stream()
                .map(slot -> new DocumentedScore.Turn(
                        slot.showing().target(), slot.when().from()))
                .toList());
        return best == 0 && slots.isEmpty() ? 1 : own / best;
    }
}
