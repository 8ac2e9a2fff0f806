package polewright.alignment.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.advice.Advice.TurnScrews;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.fix.Step;
import polewright.alignment.fix.ToldRig;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Experience;
import polewright.mount.rig.FinishSense;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RightAscensionDrive;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewOrder;
import polewright.mount.rig.ScrewSense;
import polewright.mount.rig.TravelLimits;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The advised turns, made exactly on screws that match the rig description, bring the axis to the aim. */
class AdvisedTurnsTest {
    private static final Set<SightingKind> GROUND_READ = Set.of(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE);
    private static final Angle SHARP = Angle.ofArcminutes(0.2);

    private static Rig rig(ScrewGeometry azimuth, ScrewSense right, ScrewGeometry altitude, ScrewSense raises) {
        return new Rig(
                "any",
                MountKind.FORK_ON_WEDGE,
                Screw.rough(azimuth, right),
                Screw.rough(altitude, raises),
                Angle.ofDegrees(1.5),
                Angle.ofArcminutes(1.5),
                List.of());
    }

    static Stream<Arguments> wedges() {
        List<Arguments> wedges = new ArrayList<>();
        for (double latitude : new double[] {54.60, 20, -20, -43.95}) {
            List<ScrewGeometry> altitudes = List.of(
                    new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(0.5)),
                    new ScrewGeometry.PushScrew(1.25, 180),
                    new ScrewGeometry.Turnbuckle(120, 150, 90, Angle.ofDegrees(Math.abs(latitude)), 1.5));
            List<ScrewGeometry> azimuths = List.of(
                    new ScrewGeometry.PushScrew(1.25, 200),
                    new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(0.4)),
                    new ScrewGeometry.PushScrew(1, 250));
            for (int i = 0; i < 3; i++) {
                for (ScrewSense right : List.of(ScrewSense.RIGHT, ScrewSense.LEFT)) {
                    for (ScrewSense raises : List.of(ScrewSense.RAISES, ScrewSense.LOWERS)) {
                        wedges.add(Arguments.of(
                                Site.ofDegrees(latitude, 0, 0), rig(azimuths.get(i), right, altitudes.get(i), raises)));
                    }
                }
            }
        }
        return wedges.stream();
    }

    private static Fix sharp(Rig rig, KnownAxis known, Angle sigma) {
        return FixSolver.solve(
                known.site(),
                rig,
                KnownAxis.AIR,
                List.of(known.step(2, known.bearing(sigma)), known.step(3, known.scale(sigma))));
    }

    private static TurnScrews advice(Rig rig, Fix fix) {
        return (TurnScrews) Adviser.advise(
                new Situation(rig, fix, DiscAllowance.VISUAL, false, Confirmation.NONE, GROUND_READ, Daylight.NONE));
    }

    private static double turns(TurnScrews advice, ScrewTurn.Which which) {
        return advice.turns().stream()
                .filter(t -> t.screw() == which)
                .mapToDouble(ScrewTurn::clockwiseTurns)
                .sum();
    }

    @ParameterizedTest
    @MethodSource("wedges")
    void turnsMadeExactly_bringTheAxisToTheAim_withinRounding(Site site, Rig rig) {
        Random random = new Random(5);
        for (int i = 0; i < 6; i++) {
            AxisOffset offset = AxisOffset.ofArcminutes(
                    Math.copySign(40 + 80 * random.nextDouble(), i % 2 - 0.5),
                    Math.copySign(40 + 80 * random.nextDouble(), i % 4 - 1.5));
            KnownAxis known = KnownAxis.exactly(site, offset);
            TurnScrews advice = advice(rig, sharp(rig, known, SHARP));
            double azimuthTurns = turns(advice, ScrewTurn.Which.AZIMUTH);
            double altitudeTurns = turns(advice, ScrewTurn.Which.ALTITUDE);
            // A nominal wedge on a level base: turns simply add to azimuth and altitude.
            Angle azimuthMove =
                    rig.azimuthScrew().move(azimuthTurns, known.axis().altitude());
            Angle altitudeMove =
                    rig.altitudeScrew().move(altitudeTurns, known.axis().altitude());
            AxisPointing then = AxisPointing.of(
                    known.axis().azimuth().plus(azimuthMove),
                    known.axis().altitude().plus(altitudeMove));

            // Half an eighth of a turn each, or half a sixteenth below one turn; plus the error of the fix.
            double azimuthStep =
                    step(rig.azimuthScrew(), azimuthTurns, known.axis().altitude());
            double altitudeStep =
                    step(rig.altitudeScrew(), altitudeTurns, known.axis().altitude());
            assertThat(then.azimuthError(site).arcminutes()).isCloseTo(0, within(azimuthStep / 2 + 0.1));
            assertThat(then.altitudeError(site).arcminutes()).isCloseTo(0, within(altitudeStep / 2 + 0.1));
        }
    }

    private static double step(Screw screw, double turns, Angle altitude) {
        double part = Math.abs(turns) < 1 ? 1 / 16.0 : 1 / 8.0;
        return Math.abs(screw.move(part, altitude).arcminutes());
    }

    @ParameterizedTest
    @MethodSource("wedges")
    void turns_areInStepsThatAHandCanMake(Site site, Rig rig) {
        for (double arcmin : new double[] {12, 25, 60, 150}) {
            KnownAxis known = KnownAxis.exactly(site, AxisOffset.ofArcminutes(arcmin, -arcmin));
            for (ScrewTurn turn : advice(rig, sharp(rig, known, SHARP)).turns()) {
                double parts = Math.abs(turn.clockwiseTurns()) < 1 ? 16 : 8;
                assertThat(turn.clockwiseTurns() * parts).isEqualTo(Math.rint(turn.clockwiseTurns() * parts));
                assertThat(turn.clockwiseTurns()).isNotZero();
            }
        }
    }

    /**
     * In the north, an axis too far east and low goes left and up: one screw counter-clockwise, the other clockwise.
     */
    @Test
    void northernAxisTooFarEastAndLow_isTurnedLeftAndRaised() {
        Rig rig = Rig.typicalForkOnWedge();
        KnownAxis known = KnownAxis.exactly(Site.ofDegrees(54.60, 0, 240), AxisOffset.ofArcminutes(60, -50));
        TurnScrews advice = advice(rig, sharp(rig, known, SHARP));
        assertThat(turns(advice, ScrewTurn.Which.AZIMUTH)).isNegative();
        assertThat(turns(advice, ScrewTurn.Which.ALTITUDE)).isPositive();
    }

    /** Facing south, east is on the left, so the axis has to go right. */
    @Test
    void southernAxisTooFarEastAndLow_isTurnedRightAndRaised() {
        Rig rig = Rig.typicalForkOnWedge();
        KnownAxis known = KnownAxis.exactly(Site.ofDegrees(-43.95, 0, 710), AxisOffset.ofArcminutes(60, -50));
        TurnScrews advice = advice(rig, sharp(rig, known, SHARP));
        assertThat(turns(advice, ScrewTurn.Which.AZIMUTH)).isPositive();
        assertThat(turns(advice, ScrewTurn.Which.ALTITUDE)).isPositive();
    }

    @Test
    void screwWithinItsUncertainty_isLeftAlone() {
        Rig rig = ToldRig.typical();
        KnownAxis known = KnownAxis.exactly(Site.ofDegrees(54.60, 0, 240), AxisOffset.ofArcminutes(90, 1));
        Fix fix = sharp(rig, known, Angle.ofArcminutes(2));

        TurnScrews advice = advice(rig, fix);

        assertThat(advice.turns()).extracting(ScrewTurn::screw).containsExactly(ScrewTurn.Which.AZIMUTH);
        AxisOffset after = advice.offsetAfter();
        assertThat(after.east().arcminutes()).isCloseTo(0, within(2.0));
        // An axis swung by 90′ at constant altitude ends slightly lower relative to the pole; the arcminute is left
        // uncorrected.
        assertThat(after.up().minus(fix.state().offset().up()).abs().arcminutes())
                .isLessThan(3);
        assertThat(after).isNotEqualTo(DiscAllowance.VISUAL.bestAim());
    }

    /** After a turn in one direction, a turn back is longer by half the backlash. */
    @Test
    void turnBack_takesUpTheBacklash() {
        ScrewGeometry geometry = new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(0.5));
        Screw withPlay = new Screw(geometry, ScrewSense.RIGHT, 0.05, 0.02, 1);
        Screw raises = new Screw(geometry, ScrewSense.RAISES, 0.05, 0.02, 0);
        Rig rig = new Rig("worn", MountKind.GERMAN, withPlay, raises, Angle.ZERO, Angle.ofArcminutes(1), List.of());
        Site site = Site.ofDegrees(30, 0, 0);
        AxisPointing pole = AxisPointing.atPole(site);
        KnownAxis before =
                KnownAxis.exactly(site, AxisPointing.of(pole.azimuth().minus(Angle.ofDegrees(1)), pole.altitude()));
        KnownAxis tooFar = before.at(AxisPointing.of(pole.azimuth().plus(Angle.ofDegrees(0.75)), pole.altitude()));
        List<Step> steps = List.of(
                before.step(2, before.bearing(SHARP)),
                before.step(3, before.scale(SHARP)),
                new Step.Turned(4, 3.5, 0),
                tooFar.step(5, tooFar.bearing(SHARP)),
                tooFar.step(6, tooFar.scale(SHARP)));

        TurnScrews advice = advice(rig, FixSolver.solve(site, rig, KnownAxis.AIR, steps));

        assertThat(Optional.of(turns(advice, ScrewTurn.Which.AZIMUTH))).contains(-2.0);
    }

    private static Screw finishing(ScrewSense sense, FinishSense finish) {
        return new Screw(new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(0.5)), sense, 0.05, 0.02, 0.3, finish);
    }

    private static Rig disciplined(ScrewOrder order, Optional<Experience> learned) {
        return new Rig(
                "disciplined",
                MountKind.FORK_ON_WEDGE,
                finishing(ScrewSense.RIGHT, FinishSense.COUNTER_CLOCKWISE),
                finishing(ScrewSense.RAISES, FinishSense.CLOCKWISE),
                Angle.ZERO,
                Angle.ofArcminutes(1),
                List.of(new Optic("finder", Angle.ofDegrees(6), View.of(Orientation.INVERTED), Optional.empty())),
                List.of(),
                order,
                RightAscensionDrive.USUAL,
                TravelLimits.USUAL,
                learned);
    }

    /**
     * Down 1° is two turns back on a screw that has to end forward: overshoot by backlash and a quarter turn, then
     * back.
     */
    @Test
    void turnThatWouldEndAgainstTheBacklash_goesPastAndBack() {
        Rig rig = disciplined(ScrewOrder.ALTITUDE_FIRST, Optional.empty());
        KnownAxis tooHigh = KnownAxis.exactly(Site.ofDegrees(54.60, 0, 240), AxisOffset.ofArcminutes(0, 60));

        ScrewTurn turn = advice(rig, sharp(rig, tooHigh, SHARP)).turns().get(0);

        assertThat(turn.screw()).isEqualTo(ScrewTurn.Which.ALTITUDE);
        // 0.3 + 0.25, rounded up to eighths.
        assertThat(turn.backTurns()).isEqualTo(0.625);
        assertThat(turn.made().outward()).isEqualTo(turn.clockwiseTurns() - 0.625);
        // The expected loss at the first reversal, half the backlash, is compensated.
        assertThat(turn.clockwiseTurns()).isCloseTo(-2 + 0.15, within(1 / 16.0 + 0.01));
    }

    @Test
    void turnThatEndsInTheRightDirection_isMadeInOneGo() {
        Rig rig = disciplined(ScrewOrder.ALTITUDE_FIRST, Optional.empty());
        KnownAxis tooLow = KnownAxis.exactly(Site.ofDegrees(54.60, 0, 240), AxisOffset.ofArcminutes(0, -60));
        assertThat(advice(rig, sharp(rig, tooLow, SHARP)).turns())
                .containsExactly(new ScrewTurn(ScrewTurn.Which.ALTITUDE, 2));
    }

    @Test
    void screws_areTurnedInTheRigsOrder() {
        KnownAxis off = KnownAxis.exactly(Site.ofDegrees(-43.95, 0, 710), AxisOffset.ofArcminutes(60, -60));
        for (ScrewOrder order : ScrewOrder.values()) {
            Rig rig = disciplined(order, Optional.empty());
            List<ScrewTurn> turns = advice(rig, sharp(rig, off, SHARP)).turns();
            assertThat(turns)
                    .extracting(ScrewTurn::screw)
                    .first()
                    .isEqualTo(order == ScrewOrder.ALTITUDE_FIRST ? ScrewTurn.Which.ALTITUDE : ScrewTurn.Which.AZIMUTH);
        }
    }

    /** Clamping usually lowers this wedge by 15′: stop 15′ high, half a turn of 30′. */
    @Test
    void usualClampShift_isAllowedFor() {
        Experience lowers =
                new Experience(3, 1, 0.02, 1, 0.02, 5, AxisOffset.ofArcminutes(0, -15), Angle.ofArcminutes(0.5));
        Rig rig = disciplined(ScrewOrder.ALTITUDE_FIRST, Optional.of(lowers));
        KnownAxis tooLow = KnownAxis.exactly(Site.ofDegrees(54.60, 0, 240), AxisOffset.ofArcminutes(0, -60));

        TurnScrews advice = advice(rig, sharp(rig, tooLow, SHARP));

        assertThat(advice.turns()).containsExactly(new ScrewTurn(ScrewTurn.Which.ALTITUDE, 2.5));
        assertThat(advice.probabilityAfter()).isGreaterThan(0.9);
        // The offset shown is where the turns end, before the clamps move it.
        assertThat(advice.offsetAfter().up().arcminutes()).isCloseTo(15, within(0.5));
    }

    /** When the axis is raised by 60′, the star sinks by a sixth of a 6° field: upward in an inverting view. */
    @Test
    void turn_saysWhatTheFinderShows() {
        Rig rig = disciplined(ScrewOrder.ALTITUDE_FIRST, Optional.empty());
        KnownAxis tooLow = KnownAxis.exactly(Site.ofDegrees(54.60, 0, 240), AxisOffset.ofArcminutes(0, -60));

        SkyMeanwhile sky = advice(rig, sharp(rig, tooLow, SHARP)).sky().get(0);

        assertThat(sky.optic()).isEqualTo("finder");
        assertThat(sky.isPoleStar()).isTrue();
        assertThat(sky.fields()).isCloseTo(1 / 6.0, within(0.002));
        assertThat(sky.toward().clockwiseFromTop().wrappedSigned().degrees()).isCloseTo(0, within(1.0));
    }
}
