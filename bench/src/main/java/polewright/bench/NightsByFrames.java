package polewright.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import polewright.alignment.advice.Advice;
import polewright.alignment.fix.AxisState;
import polewright.alignment.sighting.TurnedFrames;
import polewright.session.event.NightEvent;
import polewright.simulation.DrawnSky;
import polewright.simulation.RehearsedNight;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/**
 * From an initial offset of 5°, with a small camera on the tube whose frames are rendered and their stars found and
 * matched: how many adjustments and how long until the advice says stop, how near the pole that is, and whether the
 * fix is as accurate as it states.
 */
public final class NightsByFrames {
    private static final int NIGHTS = 40;
    private static final Angle FIRST_OFFSET = Angle.ofDegrees(5);

    private NightsByFrames() {}

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("nights-by-frames", args, NIGHTS);
        long firstSeed = options.first();
        int count = options.count();
        DrawnSky sky = DrawnSky.of(StarAtlas.bundled());
        List<List<RehearsedNight.Moment>> nights = LongStream.range(firstSeed, firstSeed + count)
                .mapToObj(seed -> RandomNight.byFrames(FIRST_OFFSET, seed, sky))
                .toList();
        System.out.printf(
                Locale.ROOT,
                "%d nights, seeds %d to %d, first offset 5 degrees, by drawn frames%n",
                count,
                firstSeed,
                firstSeed + count - 1);
        System.out.printf(
                Locale.ROOT,
                "ended in stop: %d; within the allowance then: %d; sightings set aside: %d%n",
                nights.stream().filter(NightsByFrames::isStopped).count(),
                nights.stream()
                        .filter(n -> last(n).night()
                                .allowance()
                                .contains(last(n).wedge().offset()))
                        .count(),
                nights.stream()
                        .flatMap(n -> last(n).night().fix().agreements().stream())
                        .filter(agreement -> agreement.contradictory())
                        .count());
        print("adjustments", nights.stream().mapToDouble(NightsByFrames::adjustments));
        print("events", nights.stream().mapToDouble(List::size));
        print("minutes until stop", nights.stream().mapToDouble(Adjustments::minutes));
        print(
                "final distance from the pole, arcmin",
                nights.stream()
                        .mapToDouble(n -> last(n).wedge().offset().distance().arcminutes()));
        print(
                "final error of the fix, arcsec",
                nights.stream()
                        .mapToDouble(n -> 60
                                * last(n).night()
                                        .fix()
                                        .state()
                                        .offset()
                                        .minus(last(n).wedge().offset())
                                        .distance()
                                        .arcminutes()));
        print("normalised squared error over 2", nights.stream().mapToDouble(n -> normalisedSquare(last(n)) / 2));
    }

    private static void print(String what, java.util.stream.DoubleStream figures) {
        double[] sorted = figures.sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "%s: median %.2f, mean %.2f, 90th percentile %.2f, largest %.2f%n",
                what,
                sorted[sorted.length / 2],
                Arrays.stream(sorted).average().orElse(0),
                sorted[sorted.length * 9 / 10],
                sorted[sorted.length - 1]);
    }

    private static boolean isStopped(List<RehearsedNight.Moment> night) {
        return last(night).night().advice() instanceof Advice.Stop;
    }

    /** Adjustments by screws guided by frames, or by moving the mount by hand. */
    private static double adjustments(List<RehearsedNight.Moment> night) {
        return night.stream()
                .map(m -> m.event().event())
                .filter(event -> event instanceof NightEvent.Knocked || isFrameAfterScrews(event))
                .count();
    }

    private static boolean isFrameAfterScrews(NightEvent event) {
        return event instanceof NightEvent.SightingTaken taken
                && taken.sighting() instanceof TurnedFrames frames
                && frames.afterScrews().isPresent();
    }

    private static double normalisedSquare(RehearsedNight.Moment moment) {
        AxisState state = moment.night().fix().state();
        return state.offsetCovariance()
                .normalisedSquare(state.offset().minus(moment.wedge().offset()));
    }

    private static RehearsedNight.Moment last(List<RehearsedNight.Moment> night) {
        return night.get(night.size() - 1);
    }
}
