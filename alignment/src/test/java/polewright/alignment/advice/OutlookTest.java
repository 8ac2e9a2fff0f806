package polewright.alignment.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.fix.Step;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The expected covariance after turns, compared with that of the fix once they are made. */
class OutlookTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final Angle SHARP = Angle.ofArcseconds(2);
    private static final double CLAMP = RIG.clampingSigma().arcminutes();
    // Advised turns are rounded to eighths and may have to take up backlash; the fix uses the turns as made.
    private static final double NOT_KNOWN_TURNS =
            Math.hypot(1 / 8.0 / Math.sqrt(12), RIG.azimuthScrew().backlashSigmaTurns());

    private static KnownAxis axis(double latitudeDeg, double eastArcmin, double upArcmin) {
        return KnownAxis.exactly(Site.ofDegrees(latitudeDeg, 0, 200), AxisOffset.ofArcminutes(eastArcmin, upArcmin));
    }

    private static Situation situation(KnownAxis known, List<Step> steps) {
        return new Situation(
                RIG,
                FixSolver.solve(known.site(), RIG, KnownAxis.AIR, steps),
                DiscAllowance.VISUAL,
                false,
                Confirmation.NONE,
                Set.of(),
                Daylight.NONE);
    }

    private static List<Step> seen(KnownAxis known) {
        return List.of(known.step(2, known.driftOnMeridian(15, SHARP)), known.step(3, known.driftInEast(15, SHARP)));
    }

    /** From the state transition, plus the scatter of clamps, rounding and backlash, which it does not include. */
    private static OffsetCovariance fromTheFix(AxisState state) {
        AxisState.Turns turns = state.turnsTo(AxisOffset.NONE, RIG);
        double east = NOT_KNOWN_TURNS
                * RIG.azimuthScrew().move(1, state.axis().altitude()).arcminutes()
                * state.site().latitude().cos();
        double up = NOT_KNOWN_TURNS
                * RIG.altitudeScrew().move(1, state.axis().altitude()).arcminutes();
        return state.afterTurns(RIG, turns.azimuth(), turns.altitude())
                .offsetCovariance()
                .plus(new OffsetCovariance(east * east + CLAMP * CLAMP, 0, up * up + CLAMP * CLAMP));
    }

    private static void assertAlike(OffsetCovariance expected, OffsetCovariance fix) {
        // One degree from the pole, the curvature of the sphere has an effect of this size.
        double few = 0.02;
        assertThat(expected.sigmaEast().arcminutes() / fix.sigmaEast().arcminutes())
                .as("east, over the fix's")
                .isCloseTo(1, within(few));
        assertThat(expected.sigmaUp().arcminutes() / fix.sigmaUp().arcminutes())
                .as("up, over the fix's")
                .isCloseTo(1, within(few));
        double scale = Math.sqrt(fix.eastEastArcmin2() * fix.upUpArcmin2());
        assertThat((expected.eastUpArcmin2() - fix.eastUpArcmin2()) / scale)
                .as("correlation")
                .isCloseTo(0, within(few));
    }

    @ParameterizedTest
    @CsvSource({
        "20, 0, 60", "20, 60, 0", "20, -40, 50",
        "54.6, 0, 60", "54.6, 60, 0", "54.6, -40, 50",
        "-43.95, 0, 60", "-43.95, 60, 0", "-43.95, -40, 50"
    })
    void scatterOfTurns_equalsThatOfTheLaterFix(double latitudeDeg, double eastArcmin, double upArcmin) {
        KnownAxis known = axis(latitudeDeg, eastArcmin, upArcmin);
        Situation situation = situation(known, seen(known));
        AxisState state = situation.fix().state();

        OffsetCovariance expected = new Outlook(situation).covarianceIfTurned(state.offset(), state.offsetCovariance());

        assertAlike(expected, fromTheFix(state));
    }

    /**
     * On a base level to 1.5°, the altitude screw moves the axis sideways by 1.5°/cos φ of its move (formula sheet).
     */
    @Test
    void altitudeTurn_movesSidewaysByLeanOverCosLatitude() {
        KnownAxis known = axis(54.6, 0, 120);
        Situation situation = situation(known, seen(known));
        AxisState state = situation.fix().state();

        OffsetCovariance there = new Outlook(situation).covarianceIfTurned(state.offset(), state.offsetCovariance());

        double lean = Math.hypot(Math.toRadians(1.5), Math.toRadians(0.3));
        double aside = lean / Math.cos(Math.toRadians(54.6)) * 120;
        double rest = Math.hypot(CLAMP, 1.5);
        assertThat(there.sigmaEast().arcminutes()).isBetween(aside, Math.hypot(aside, rest));
    }

    /**
     * Turned, but not yet sighted again: the axis and the screw gains are correlated, and a sighting will constrain
     * both. The covariance predicted for the turns after it equals the one found when it has been taken.
     */
    @ParameterizedTest
    @ValueSource(doubles = {20, 54.6, -43.95})
    void futureSighting_isExpectedToConstrainTheScrewsToo(double latitudeDeg) {
        KnownAxis known = axis(latitudeDeg, 60, -50);
        List<Step> steps = new ArrayList<>(seen(known));
        AxisState before = situation(known, steps).fix().state();
        AxisState.Turns half = before.turnsTo(AxisOffset.ofArcminutes(25, -25), RIG);
        steps.add(new Step.Turned(4, half.azimuth(), half.altitude()));
        Situation unseen = situation(known, steps);
        KnownAxis there = known.at(unseen.fix().state().axis());
        steps.add(there.step(5, there.driftOnMeridian(15, SHARP)));
        steps.add(there.step(6, there.driftInEast(15, SHARP)));
        AxisState sighted = situation(known, steps).fix().state();

        OffsetCovariance expected =
                new Outlook(unseen).covarianceIfTurned(sighted.offset(), sighted.offsetCovariance());

        assertAlike(expected, fromTheFix(sighted));
        OffsetCovariance asIfNothingWereLearned = new Outlook(situation(known, seen(known)))
                .covarianceIfTurned(sighted.offset(), sighted.offsetCovariance());
        assertThat(expected.sigmaUp()).isLessThan(asIfNothingWereLearned.sigmaUp());
    }

    /**
     * With loose clamps, an axis short of the aim by the usual clamp shift is as good as one at the aim without a
     * shift.
     */
    @Test
    void tightening_isExpectedToShiftTheAxisAsUsual() {
        AxisOffset shift = AxisOffset.ofArcminutes(2, -3);
        Rig learned = RIG.withExperience(
                java.util.Optional.of(new Experience(3, 1, 0.05, 1, 0.05, 3, shift, RIG.clampingSigma())));
        KnownAxis known = axis(54.6, 0, 0);
        Situation plain = situation(known, seen(known));
        Situation shifting = new Situation(
                learned, plain.fix(), plain.allowance(), false, Confirmation.NONE, Set.of(), Daylight.NONE);
        OffsetCovariance covariance = plain.fix().state().offsetCovariance();

        double asAimed = new Outlook(shifting).ifLeft(AxisOffset.NONE.minus(shift), covariance);

        assertThat(asAimed).isEqualTo(new Outlook(plain).ifLeft(AxisOffset.NONE, covariance), within(1e-12));
        assertThat(new Outlook(shifting).ifLeft(AxisOffset.NONE, covariance)).isLessThan(asAimed - 0.1);
    }
}
