package polewright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.advice.ScrewTurn;
import polewright.mount.AxisPointing;
import polewright.session.event.NightEvent;
import polewright.simulation.FrameWhileTurning;
import polewright.simulation.RehearsedNight;
import polewright.sky.angle.Angle;

/**
 * Screws with either sense with equal probability, turned with guidance from frames: is a wrong turn reported on the
 * first frame after it, and how far does it move the axis?
 */
public final class TurningByFrames {
    private static final int NIGHTS = 200;
    private static final Angle FIRST_OFFSET = Angle.ofDegrees(2);
    private static final double MUCH_FARTHER = 1.3;
    // A smaller move need not be recognised by a frame as being in the wrong direction.
    private static final double CLEAR_ARCMIN = 2;
    private static final double BEYOND_A_SCREW = 20;

    private TurningByFrames() {}

    public static void main(String[] args) {
        TrialOptions options = TrialOptions.of("turning-by-frames", args, NIGHTS);
        TrialNights trials = TrialNights.played(
                options,
                String.format(Locale.ROOT, "first offset %.1f degrees, senses even, by frames", FIRST_OFFSET.degrees()),
                seed -> RandomNight.sensesEvenByFrames(FIRST_OFFSET, seed));
        List<List<RehearsedNight.Moment>> nights = trials.all();
        trials.printStops();
        List<Turn> turns = nights.stream().flatMap(TurningByFrames::turns).toList();
        List<Turn> wrong = turns.stream().filter(Turn::isAwayFromThePole).toList();
        TrialNights.print("turns that took the axis the wrong way", wrong.size(), turns.size());
        TrialNights.print(
                "of those said on the first frame after",
                wrong.stream().filter(Turn::isReportedWrong).count(),
                wrong.size());
        List<Turn> right = turns.stream().filter(Turn::isTowardThePole).toList();
        TrialNights.print(
                "turns the right way that are said to be wrong",
                right.stream().filter(Turn::isReportedWrong).count(),
                right.size());
        TrialNights.print(
                "orders over 20 turns",
                turns.stream().filter(turn -> turn.size() > BEYOND_A_SCREW).count(),
                turns.size());
        trials.print(
                "nights farther off than 1.3 times at first and a test turn",
                night -> farthestArcmin(night)
                        > MUCH_FARTHER * FIRST_OFFSET.arcminutes() + longestFirstTurnArcmin(night));
        System.out.printf(
                Locale.ROOT,
                "largest order %.1f turns; farthest off %.0f arcmin, of %.0f at first%n",
                turns.stream().mapToDouble(Turn::size).max().orElse(0),
                nights.stream()
                        .mapToDouble(TurningByFrames::farthestArcmin)
                        .max()
                        .orElse(0),
                FIRST_OFFSET.arcminutes());
        TrialNights.percentiles(
                "turns in a night",
                nights.stream()
                        .mapToDouble(night -> turns(night).count())
                        .sorted()
                        .toArray());
        TrialNights.percentiles(
                "minutes",
                nights.stream().mapToDouble(Adjustments::minutes).sorted().toArray());
    }

    /**
     * One turn of one screw, and the frame after it.
     *
     * @param before how far that screw had to move the axis, arcminutes on the sky
     * @param after how far it had to afterwards
     */
    private record Turn(double size, double before, double after, boolean isReportedWrong) {
        private boolean isAwayFromThePole() {
            return Math.abs(after) > Math.abs(before) + CLEAR_ARCMIN && after * before > 0;
        }

        private boolean isTowardThePole() {
            return Math.abs(after) < Math.abs(before) - CLEAR_ARCMIN;
        }
    }

    private static Stream<Turn> turns(List<RehearsedNight.Moment> night) {
        List<Turn> turns = new ArrayList<>();
        for (int i = 1; i < night.size(); i++) {
            Optional<FrameWhileTurning> look = night.get(i).look();
            if (look.isPresent()) {
                boolean azimuth = look.get().made().screw() == ScrewTurn.Which.AZIMUTH;
                FollowedScrews screws = look.get().screws();
                turns.add(new Turn(
                        Math.abs(look.get().made().clockwiseTurns()),
                        toGoArcmin(night.get(i - 1), azimuth),
                        toGoArcmin(night.get(i), azimuth),
                        (azimuth ? screws.azimuthWentWrong() : screws.altitudeWentWrong()).isPresent()));
            }
        }
        return turns.stream();
    }

    /** The first turn of each screw is the one that tests it. */
    private static double longestFirstTurnArcmin(List<RehearsedNight.Moment> night) {
        return Math.max(firstTurnArcmin(night, true), firstTurnArcmin(night, false));
    }

    private static double firstTurnArcmin(List<RehearsedNight.Moment> night, boolean azimuth) {
        for (int i = 1; i < night.size(); i++) {
            if (isOf(night.get(i), azimuth)) {
                return Math.abs(toGoArcmin(night.get(i), azimuth) - toGoArcmin(night.get(i - 1), azimuth));
            }
        }
        return 0;
    }

    private static boolean isOf(RehearsedNight.Moment moment, boolean azimuth) {
        return moment.look()
                .filter(look -> azimuth == (look.made().screw() == ScrewTurn.Which.AZIMUTH))
                .isPresent();
    }

    private static double toGoArcmin(RehearsedNight.Moment moment, boolean azimuth) {
        AxisPointing axis = moment.wedge().pointing();
        AxisPointing pole = AxisPointing.atPole(moment.wedge().site());
        return azimuth
                ? axis.azimuth().minus(pole.azimuth()).wrappedSigned().arcminutes()
                        * axis.altitude().cos()
                : axis.altitude().minus(pole.altitude()).arcminutes();
    }

    private static double farthestArcmin(List<RehearsedNight.Moment> night) {
        return night.stream()
                // Moving the mount by hand does not count against the screws.
                .takeWhile(moment -> !(moment.event().event() instanceof NightEvent.Knocked))
                .mapToDouble(moment -> moment.wedge().offset().distance().arcminutes())
                .max()
                .orElse(0);
    }
}
