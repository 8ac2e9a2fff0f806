package polewright.bench;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import polewright.axis.advice.Advice;
import polewright.night.event.NightEvent;
import polewright.rehearsal.RehearsedNight;
import polewright.sky.angle.Angle;

/** By eye, with screws whose sense is not known: does the advice find it out, and what does that cost? */
public final class ScrewSenses {
    private static final int NIGHTS = 1000;
    private static final Angle FIRST_OFFSET = Angle.ofDegrees(1.6);
    private static final double MUCH_FARTHER = 1.3;

    private ScrewSenses() {}

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("screw-senses", args, NIGHTS);
        List<List<RehearsedNight.Moment>> nights = LongStream.range(options.first(), options.first() + options.count())
                .parallel()
                .mapToObj(seed -> RandomNight.sensesEven(FIRST_OFFSET, seed))
                .toList();
        System.out.printf(
                Locale.ROOT,
                "%d nights, seeds %d to %d, first offset %.1f degrees, senses even%n",
                options.count(),
                options.first(),
                options.first() + options.count() - 1,
                FIRST_OFFSET.degrees());
        List<List<RehearsedNight.Moment>> stopped =
                nights.stream().filter(ScrewSenses::isStopped).toList();
        print("stopped", stopped.size(), nights.size());
        print("of those not good enough in truth", count(stopped, night -> !isGood(last(night))), stopped.size());
        print("sense of a turned screw wrong at the end", count(nights, ScrewSenses::isWrongAtTheEnd), nights.size());
        print(
                "ever farther off than 1.3 times the first offset",
                count(nights, ScrewSenses::isEverFarther),
                nights.size());
        double[] minutes =
                nights.stream().mapToDouble(Adjustments::minutes).sorted().toArray();
        double[] adjustments = nights.stream()
                .mapToDouble(night -> night.stream()
                        .filter(moment -> moment.event().event() instanceof NightEvent.ScrewsTurned)
                        .count())
                .sorted()
                .toArray();
        System.out.printf(
                Locale.ROOT,
                "minutes: median %.0f, 90 %% %.0f; turns: median %.0f, 90 %% %.0f%n",
                minutes[minutes.length / 2],
                minutes[minutes.length * 9 / 10],
                adjustments[adjustments.length / 2],
                adjustments[adjustments.length * 9 / 10]);
    }

    private static void print(String what, long some, int all) {
        System.out.printf(Locale.ROOT, "%-50s %5d  %5.1f %%%n", what, some, 100.0 * some / all);
    }

    private static long count(List<List<RehearsedNight.Moment>> nights, Predicate<List<RehearsedNight.Moment>> that) {
        return nights.stream().filter(that).count();
    }

    private static RehearsedNight.Moment last(List<RehearsedNight.Moment> night) {
        return night.get(night.size() - 1);
    }

    private static boolean isStopped(List<RehearsedNight.Moment> night) {
        return last(night).night().advice() instanceof Advice.Stop;
    }

    private static boolean isGood(RehearsedNight.Moment moment) {
        return moment.night().allowance().contains(moment.wedge().offset());
    }

    private static boolean isEverFarther(List<RehearsedNight.Moment> night) {
        return night.stream()
                .anyMatch(
                        moment -> moment.wedge().offset().distance().radians() > MUCH_FARTHER * FIRST_OFFSET.radians());
    }

    private static boolean isWrongAtTheEnd(List<RehearsedNight.Moment> night) {
        RehearsedNight.Moment last = last(night);
        boolean azimuth = wasTurned(night, true)
                && (last.wedge().azimuthFactor() < 0)
                        == (last.night().fix().rig().azimuthScrew().clockwise()
                                == last.night().begun().rig().azimuthScrew().clockwise());
        boolean altitude = wasTurned(night, false)
                && (last.wedge().altitudeFactor() < 0)
                        == (last.night().fix().rig().altitudeScrew().clockwise()
                                == last.night().begun().rig().altitudeScrew().clockwise());
        return azimuth || altitude;
    }

    private static boolean wasTurned(List<RehearsedNight.Moment> night, boolean azimuth) {
        return night.stream()
                .map(moment -> moment.event().event())
                .filter(NightEvent.ScrewsTurned.class::isInstance)
                .map(NightEvent.ScrewsTurned.class::cast)
                .anyMatch(turned -> azimuth ? turned.azimuthTurns() != 0 : turned.altitudeTurns() != 0);
    }
}
