package polewright.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import polewright.session.event.NightEvent;
import polewright.simulation.RehearsedNight;
import polewright.sky.angle.Angle;

/**
 * From an initial offset of 5°, by eye: how many adjustments until the axis is truly within 5′, and how long until
 * the advice says stop.
 */
public final class Adjustments {
    private static final int NIGHTS = 1000;
    private static final Angle FIRST_OFFSET = Angle.ofDegrees(5);

    private Adjustments() {}

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("adjustments", args, NIGHTS);
        long firstSeed = options.first();
        int count = options.count();
        List<List<RehearsedNight.Moment>> nights = LongStream.range(firstSeed, firstSeed + count)
                .parallel()
                .mapToObj(seed -> RandomNight.offsetOf(FIRST_OFFSET, seed))
                .toList();
        int[] turns =
                nights.stream().mapToInt(Adjustments::turnsUntilGood).sorted().toArray();
        double[] minutes =
                nights.stream().mapToDouble(Adjustments::minutes).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%d nights, seeds %d to %d, first offset 5 degrees%n",
                count,
                firstSeed,
                firstSeed + count - 1);
        System.out.printf(
                Locale.ROOT,
                "adjustments until truly within 5': median %d, 90th percentile %d; within 3: %.1f %%%n",
                turns[count / 2],
                turns[count * 9 / 10],
                100.0 * Arrays.stream(turns).filter(t -> t <= 3).count() / count);
        System.out.printf(
                Locale.ROOT,
                "minutes until stop: median %.0f, 90th percentile %.0f%n",
                minutes[count / 2],
                minutes[count * 9 / 10]);
    }

    private static int turnsUntilGood(List<RehearsedNight.Moment> night) {
        int turns = 0;
        for (RehearsedNight.Moment moment : night) {
            if (moment.event().event() instanceof NightEvent.ScrewsTurned
                    || moment.event().event() instanceof NightEvent.Knocked) {
                turns++;
                if (moment.night().allowance().contains(moment.wedge().offset())) {
                    return turns;
                }
            }
        }
        return Integer.MAX_VALUE;
    }

    static double minutes(List<RehearsedNight.Moment> night) {
        return java.time.Duration.between(
                                night.get(0).event().at(),
                                night.get(night.size() - 1).event().at())
                        .toMillis()
                / 60000.0;
    }
}
