package polewright.bench;

import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import polewright.alignment.advice.Advice;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Fix;
import polewright.mount.AxisOffset;
import polewright.simulation.RehearsedNight;

/**
 * Whether the fix is as accurate as it states: over many simulated nights, the squared error normalised by the fix's
 * own covariance (expected 2 for two coordinates), and how often the 95 % region contains the truth.
 */
public final class FixHonesty {
    private static final int NIGHTS = 1000;
    // Chi-squared with 2 degrees of freedom: 95 % lie under -2 ln 0.05.
    private static final double REGION_95 = -2 * Math.log(0.05);

    private FixHonesty() {}

    /** One fix compared with the truth. */
    private record Score(double normalisedSquare) {
        boolean within95() {
            return normalisedSquare <= REGION_95;
        }
    }

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("fix-honesty", args, NIGHTS);
        long firstSeed = options.first();
        int count = options.count();
        System.out.printf(
                Locale.ROOT,
                "%d nights, seeds %d to %d; both hemispheres, latitudes 20 to 65, offsets to 15 degrees%n",
                count,
                firstSeed,
                firstSeed + count - 1);
        List<List<RehearsedNight.Moment>> nights = LongStream.range(firstSeed, firstSeed + count)
                .parallel()
                .mapToObj(RandomNight::anyOffset)
                .toList();
        System.out.println("stage                     fixes   mean square/2   in 95 % region");
        report("when ready to stop", nights.stream().map(FixHonesty::last).toList());
        report(
                "first turn advised",
                nights.stream()
                        .flatMap(n -> n.stream().filter(FixHonesty::advisesTurn).limit(1))
                        .toList());
        report(
                "every fix that advises",
                nights.stream().flatMap(List::stream).filter(FixHonesty::known).toList());
        System.out.printf(
                Locale.ROOT,
                "nights in which a correctly logged turn was blamed: %d of %d%n",
                nights.stream()
                        .filter(n -> n.stream().anyMatch(FixHonesty::accusesATurn))
                        .count(),
                nights.size());
        long stopped = nights.stream()
                .filter(n -> last(n).night().advice() instanceof Advice.Stop)
                .count();
        long good = nights.stream()
                .map(FixHonesty::last)
                .filter(m -> m.night().advice() instanceof Advice.Stop)
                .filter(m -> m.night().allowance().contains(m.wedge().offset()))
                .count();
        System.out.printf(
                Locale.ROOT,
                "stopped: %d of %d; good enough in truth: %.1f %% of those%n",
                stopped,
                nights.size(),
                100.0 * good / stopped);
    }

    /** Every turn of these nights was made as ordered, as well as a hand can, so blaming one is a false alarm. */
    private static boolean accusesATurn(RehearsedNight.Moment moment) {
        return moment.night().fix() instanceof Fix.Dubious dubious
                && dubious.reason().contains("does not fit the turns");
    }

    private static void report(String stage, List<RehearsedNight.Moment> moments) {
        List<Score> scores = moments.stream().map(FixHonesty::score).toList();
        double mean =
                scores.stream().mapToDouble(Score::normalisedSquare).average().orElse(Double.NaN);
        double within = scores.stream().filter(Score::within95).count() / (double) scores.size();
        System.out.printf(
                Locale.ROOT, "%-24s %6d   %13.3f   %12.1f %%%n", stage, scores.size(), mean / 2, 100 * within);
    }

    private static Score score(RehearsedNight.Moment moment) {
        AxisState state = moment.night().fix().state();
        AxisOffset error = state.offset().minus(moment.wedge().offset());
        return new Score(state.offsetCovariance().normalisedSquare(error));
    }

    private static RehearsedNight.Moment last(List<RehearsedNight.Moment> night) {
        return night.get(night.size() - 1);
    }

    private static boolean advisesTurn(RehearsedNight.Moment moment) {
        return moment.night().advice() instanceof Advice.TurnScrews;
    }

    private static boolean known(RehearsedNight.Moment moment) {
        return moment.night().fix().isDetermined();
    }
}
