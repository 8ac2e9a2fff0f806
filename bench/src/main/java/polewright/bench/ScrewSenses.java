package polewright.bench;

import java.util.List;
import java.util.Locale;
import polewright.session.event.NightEvent;
import polewright.simulation.RehearsedNight;
import polewright.sky.angle.Angle;

/** By eye, with screws of unknown sense: does the advice find it out, and at what cost? */
public final class ScrewSenses {
    private static final int NIGHTS = 1000;
    private static final Angle FIRST_OFFSET = Angle.ofDegrees(1.6);
    private static final double MUCH_FARTHER = 1.3;

    private ScrewSenses() {}

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("screw-senses", args, NIGHTS);
        TrialNights trials = TrialNights.played(
                options,
                String.format(Locale.ROOT, "first offset %.1f degrees, senses even", FIRST_OFFSET.degrees()),
                seed -> RandomNight.sensesEven(FIRST_OFFSET, seed));
        trials.printStops();
        trials.print("sense of a turned screw wrong at the end", ScrewSenses::isWrongAtTheEnd);
        trials.print("ever farther off than 1.3 times the first offset", ScrewSenses::isEverFarther);
        List<List<RehearsedNight.Moment>> nights = trials.all();
        double[] minutes =
                nights.stream().mapToDouble(Adjustments::minutes).sorted().toArray();
        double[] adjustments = nights.stream()
                .mapToDouble(night -> night.stream()
                        .filter(moment -> moment.event().event() instanceof NightEvent.ScrewsTurned)
                        .count())
                .sorted()
                .toArray();
        TrialNights.percentiles("minutes", minutes);
        TrialNights.percentiles("turns", adjustments);
    }

    private static boolean isEverFarther(List<RehearsedNight.Moment> night) {
        return night.stream()
                .anyMatch(
                        moment -> moment.wedge().offset().distance().radians() > MUCH_FARTHER * FIRST_OFFSET.radians());
    }

    private static boolean isWrongAtTheEnd(List<RehearsedNight.Moment> night) {
        RehearsedNight.Moment last = TrialNights.last(night);
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
