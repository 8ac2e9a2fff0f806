package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Experience;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The effect of turns, clamping and knocks on the fix, and what sightings after turns show about the screws. */
class MovesTest {
    private static final Site NORTH = Site.ofDegrees(54.60, 0, 240);
    private static final Site SOUTH = Site.ofDegrees(-43.95, 0, 710);
    private static final Angle PRECISE = Angle.ofArcminutes(0.2);

    /** 20′ a turn on both screws. */
    private static Rig rig(double gainSigma, double backlashTurns) {
        ScrewGeometry geometry = new ScrewGeometry.DegreesPerTurn(Angle.ofArcminutes(20));
        return new Rig(
                "plain",
                MountKind.FORK_ON_WEDGE,
                new Screw(geometry, ScrewSense.RIGHT, gainSigma, 0.002, backlashTurns),
                new Screw(geometry, ScrewSense.RAISES, gainSigma, 0.002, backlashTurns),
                Angle.ofDegrees(1.5),
                Angle.ofArcminutes(1.5),
                List.of());
    }

    /** A night logged step by step, with an axis that the test moves. */
    private static final class Night {
        private final Rig rig;
        private final List<Step> steps = new ArrayList<>();
        private KnownAxis known;
        private long seq = 1;

        Night(Rig rig, Site site, AxisOffset offset) {
            this.rig = rig;
            this.known = KnownAxis.exactly(site, offset);
        }

        Night sighted() {
            steps.add(known.step(++seq, known.bearing(PRECISE)));
            steps.add(known.step(++seq, known.scale(PRECISE)));
            return this;
        }

        Night turned(double azimuthTurns, double altitudeTurns, AxisPointing then) {
            steps.add(new Step.Turned(++seq, azimuthTurns, altitudeTurns));
            known = known.at(then);
            return this;
        }

        Night turned(double azimuthTurns, double altitudeTurns) {
            return turned(azimuthTurns, altitudeTurns, known.axis());
        }

        Night shifted(Angle sigma) {
            steps.add(new Step.Shifted(++seq, sigma));
            return this;
        }

        AxisPointing axis() {
            return known.axis();
        }

        AxisState state() {
            Fix fix = FixSolver.solve(known.site(), rig, KnownAxis.AIR, steps);
            assertThat(fix.agreements()).noneMatch(Agreement::contradictory);
            return fix.state();
        }
    }

    private static AxisPointing moved(AxisPointing from, double azimuthArcmin, double altitudeArcmin) {
        return AxisPointing.of(
                from.azimuth().plus(Angle.ofArcminutes(azimuthArcmin)),
                from.altitude().plus(Angle.ofArcminutes(altitudeArcmin)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void turn_movesTheAxisAsTheRigSays_andAddsUncertainty(double latitudeDeg) {
        Rig rig = rig(0.1, 0);
        Night night = new Night(rig, Site.ofDegrees(latitudeDeg, 0, 0), AxisOffset.ofArcminutes(100, -60)).sighted();
        AxisState before = night.state();

        AxisState after = night.turned(2, -1).state();

        assertThat(after.axis()
                        .azimuth()
                        .minus(before.axis().azimuth())
                        .wrappedSigned()
                        .arcminutes())
                .isCloseTo(40, within(1e-6));
        assertThat(after.axis().altitude().minus(before.axis().altitude()).arcminutes())
                .isCloseTo(-20, within(1e-6));
        // 10 % of 40′ and of 20′, and the cross-gain of a base 1.5° out of level; plus the fix and the hand.
        double hand = 0.002 * 20;
        double lean = Math.toRadians(1.5);
        double azimuthGain = Math.hypot(0.1, lean * Math.tan(Math.toRadians(Math.abs(latitudeDeg))));
        // Raised on a leaning base: β / cos² of azimuth per unit of altitude; a hinge square to 0.3° does the same.
        double sideways = Math.hypot(lean, Math.toRadians(0.3)) / square(Math.cos(Math.toRadians(latitudeDeg)));
        double azimuth = Math.sqrt(square(azimuthGain * 40) + square(sideways * 20) + square(hand) + square(0.2));
        double altitude = Math.sqrt(square(0.1 * 20) + square(lean * 40) + square(hand) + square(0.2));
        assertThat(after.offsetCovariance().sigmaUp().arcminutes()).isCloseTo(altitude, within(0.02 * altitude));
        assertThat(after.offsetCovariance().sigmaEast().arcminutes())
                .isCloseTo(azimuth * Math.cos(Math.toRadians(latitudeDeg)), within(0.03 * azimuth));
    }

    @Test
    void turnsOfTheState_equalThoseOfTheNight() {
        Rig rig = rig(0.1, 0.2);
        Night night = new Night(rig, SOUTH, AxisOffset.ofArcminutes(30, 90)).sighted();
        night.turned(-1, 0.5, moved(night.axis(), -22, 9)).sighted();
        AxisState asked = night.state().afterTurns(rig, 0.75, -1.5);

        AxisState made = night.turned(0.75, -1.5).state();

        assertThat(made.axis().separation(asked.axis()).arcseconds()).isLessThan(0.01);
        assertThat(made.offsetCovariance().eastEastArcmin2())
                .isCloseTo(asked.offsetCovariance().eastEastArcmin2(), within(1e-4));
    }

    /** Both screws do 30 % more, or less, than the rig says, which is twice its 15 %. */
    @ParameterizedTest
    @CsvSource({"1.3, 0.7, 54.6", "0.7, 1.3, 54.6", "1.3, 1.3, -43.95", "0.7, 0.7, -43.95"})
    void screwsThirtyPercentOff_areKnownToFivePercent_afterTwoAdjustments(
            double azimuthFactor, double altitudeFactor, double latitudeDeg) {
        Rig rig = rig(0.15, 0.1);
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Night night = new Night(rig, site, AxisOffset.ofArcminutes(150, -120)).sighted();
        // Turned further in the same direction, so that no backlash is lost.
        night.turned(-3, 2, moved(night.axis(), -60 * azimuthFactor, 40 * altitudeFactor))
                .sighted();
        night.turned(-1, 1, moved(night.axis(), -20 * azimuthFactor, 20 * altitudeFactor))
                .sighted();
        AxisState learned = night.state();

        assertThat(learned.gains().azimuthFactor()).isCloseTo(azimuthFactor, within(0.03));
        assertThat(learned.gains().altitudeFactor()).isCloseTo(altitudeFactor, within(0.03));
        AxisPointing predicted = learned.afterTurns(rig, -2, 2).axis();
        AxisPointing actual = moved(night.axis(), -40 * azimuthFactor, 40 * altitudeFactor);
        double move = actual.separation(night.axis()).arcminutes();
        assertThat(predicted.separation(actual).arcminutes()).isLessThan(0.05 * move);
    }

    /**
     * Derived outside this project: with the base leaning by β toward azimuth α, an azimuth turn D raises the axis by β
     * sin(A − α) D and adds D (1 − β tan(alt) cos(A − α)) of azimuth. The turns here are exact rotations about the
     * leaning vertical.
     */
    @ParameterizedTest
    @CsvSource({"54.6, 90", "54.6, 270", "-43.95, 90", "-43.95, 300", "54.6, 45"})
    void leaningBase_isLearned(double latitudeDeg, double leansTowardDeg) {
        double lean = Math.toRadians(2);
        double toward = Math.toRadians(leansTowardDeg);
        Vector3D vertical = new Vector3D(lean * Math.sin(toward), lean * Math.cos(toward), 1).normalize();
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Night night = new Night(rig(0.02, 0), site, AxisOffset.ofArcminutes(90, 0)).sighted();
        for (int i = 0; i < 2; i++) {
            double swing = Angle.ofArcminutes(-60).radians();
            Vector3D turned = new Rotation(vertical, -swing, RotationConvention.VECTOR_OPERATOR)
                    .applyTo(night.axis().elevatedEnd());
            night.turned(-3, 0, new AxisPointing(turned)).sighted();
        }
        double azimuth = night.axis().azimuth().radians();

        ScrewGains gains = night.state().gains();

        assertThat(gains.azimuthIntoAltitude()).isCloseTo(lean * Math.sin(azimuth - toward), within(0.004));
        assertThat(gains.azimuthFactor())
                .isCloseTo(1 - lean * night.axis().altitude().tan() * Math.cos(azimuth - toward), within(0.008));
    }

    /**
     * On a leaning base, raising the axis by d moves it β / cos² · d toward the side that the base leans to. The lean
     * learned from the altitude screw also applies to the azimuth screw. Exact rotations about the leaning hinge.
     */
    @ParameterizedTest
    @CsvSource({"54.6, 90", "54.6, 270", "-43.95, 90", "-43.95, 300", "30, 45"})
    void leaningBase_isAlsoLearnedFromTheAltitudeScrew(double latitudeDeg, double leansTowardDeg) {
        double lean = Math.toRadians(2);
        double toward = Math.toRadians(leansTowardDeg);
        Vector3D vertical = new Vector3D(lean * Math.sin(toward), lean * Math.cos(toward), 1).normalize();
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Night night = new Night(rig(0.02, 0), site, AxisOffset.ofArcminutes(0, 60)).sighted();
        for (int i = 0; i < 2; i++) {
            Vector3D axis = night.axis().elevatedEnd();
            Vector3D hinge = axis.crossProduct(vertical).normalize();
            Vector3D raised = new Rotation(hinge, Angle.ofArcminutes(-60).radians(), RotationConvention.VECTOR_OPERATOR)
                    .applyTo(axis);
            night.turned(0, -3, new AxisPointing(raised)).sighted();
        }
        double right = lean * Math.sin(toward - night.axis().azimuth().radians());

        ScrewGains gains = night.state().gains();

        double perLean = 1 / square(Math.cos(Math.toRadians(latitudeDeg)));
        assertThat(gains.altitudeIntoAzimuth()).isCloseTo(right * perLean, within(0.006 * perLean));
        assertThat(gains.azimuthIntoAltitude()).isCloseTo(-right, within(0.008));
    }

    @Test
    void clamping_addsItsShiftToTheUncertainty_andNothingElse() {
        Night night = new Night(rig(0.1, 0), NORTH, AxisOffset.ofArcminutes(20, 10)).sighted();
        AxisState before = night.state();

        AxisState after = night.shifted(Angle.ofArcminutes(1.5)).state();

        assertThat(after.axis().separation(before.axis()).arcseconds()).isLessThan(1e-6);
        OffsetCovariance added = before.offsetCovariance().plus(new OffsetCovariance(2.25, 0, 2.25));
        assertThat(after.offsetCovariance().eastEastArcmin2()).isCloseTo(added.eastEastArcmin2(), within(0.05));
        assertThat(after.offsetCovariance().upUpArcmin2()).isCloseTo(added.upUpArcmin2(), within(0.05));
        assertThat(after.gains()).isEqualTo(before.gains());
    }

    @Test
    void knock_discardsTheAxis_andKeepsTheScrewGains() {
        Rig rig = rig(0.15, 0);
        Night night = new Night(rig, NORTH, AxisOffset.ofArcminutes(150, -120)).sighted();
        night.turned(-3, 2, moved(night.axis(), -78, 28)).sighted();
        ScrewGains learned = night.state().gains();

        night.shifted(AxisState.PRIOR_SIGMA);
        Fix knocked = FixSolver.solve(NORTH, rig, KnownAxis.AIR, night.steps);

        assertThat(knocked).isInstanceOf(Fix.Underdetermined.class);
        assertThat(knocked.state().offsetCovariance().smallestSigma().degrees()).isGreaterThan(7.9);
        assertThat(knocked.state().gains().azimuthFactor()).isCloseTo(learned.azimuthFactor(), within(1e-9));
        assertThat(knocked.state().gains().azimuthSigma()).isCloseTo(learned.azimuthSigma(), within(1e-9));
        // Both screws were turned at once, so some of the azimuth may be due to a leaning base.
        assertThat(learned.azimuthFactor()).isCloseTo(1.3, within(2 * learned.azimuthSigma()));
        assertThat(learned.azimuthSigma()).isLessThan(0.06);
    }

    @Test
    void turnAgainstTheLastDirection_losesHalfTheBacklashOnAverage() {
        Rig rig = rig(0.01, 0.4);
        Night night = new Night(rig, NORTH, AxisOffset.ofArcminutes(50, 50)).sighted();
        night.turned(1, 1, moved(night.axis(), 20, 20)).sighted();
        AxisState before = night.state();

        AxisState on = before.afterTurns(rig, 1, 1);
        AxisState back = before.afterTurns(rig, -1, -1);

        double gain = before.gains().altitudeFactor();
        assertThat(on.axis().altitude().minus(before.axis().altitude()).arcminutes() / gain)
                .isCloseTo(20, within(0.5));
        assertThat(back.axis().altitude().minus(before.axis().altitude()).arcminutes() / gain)
                .isCloseTo(-16, within(0.5));
        // Uniform between none and all of 0.4 turns of 20′: 8′ / √12.
        assertThat(back.offsetCovariance().upUpArcmin2()
                        - before.offsetCovariance().upUpArcmin2())
                .isCloseTo(square(8 / Math.sqrt(12)), within(0.6));
    }

    @ParameterizedTest
    @CsvSource({"54.6, -1", "54.6, 1", "-43.95, -1", "-43.95, 1"})
    void turnPastTheGoalAndBack_losesNoBacklash_norDoesTheNextTurnInThatDirection(double latitudeDeg, double last) {
        Rig rig = rig(0.01, 0.4);
        Night night = new Night(rig, Site.ofDegrees(latitudeDeg, 0, 0), AxisOffset.ofArcminutes(50, 50)).sighted();
        night.turned(last, last, moved(night.axis(), 20 * last, 20 * last)).sighted();
        AxisState before = night.state();

        AxisState after =
                before.afterTurns(rig, new HandTurns(-2 * last, 0.5 * last), new HandTurns(-2 * last, 0.5 * last));

        double gain = before.gains().altitudeFactor();
        assertThat(after.axis().altitude().minus(before.axis().altitude()).arcminutes() / gain)
                .isCloseTo(-40 * last, within(1.2));
        assertThat(after.lastAltitudeSense()).isEqualTo(last);
        assertThat(after.lastAzimuthSense()).isEqualTo(last);
        // 1 % of 40′ and the cross-gain of a leaning base, but none of the 8′ / √12 of backlash.
        assertThat(after.offsetCovariance().sigmaUp().arcminutes()).isLessThan(1.2);
        AxisState on = after.afterTurns(rig, 0, last);
        assertThat(on.offsetCovariance().sigmaUp().arcminutes()).isLessThan(1.2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void usualClampShift_isExpectedOnTheSky(double latitudeDeg) {
        AxisOffset usual = AxisOffset.ofArcminutes(1.5, -2);
        Rig rig = rig(0.1, 0)
                .withExperience(
                        Optional.of(new Experience(3, 1.2, 0.03, 0.9, 0.04, 5, usual, Angle.ofArcminutes(0.5))));
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Night night = new Night(rig, site, AxisOffset.ofArcminutes(20, 10)).sighted();
        AxisState before = night.state();

        AxisState after = before.afterClamping(rig);

        AxisOffset moved = after.offset().minus(before.offset());
        assertThat(moved.east().arcminutes()).isCloseTo(1.5, within(0.02));
        assertThat(moved.up().arcminutes()).isCloseTo(-2, within(0.02));
        assertThat(after.offsetCovariance().upUpArcmin2()
                        - before.offsetCovariance().upUpArcmin2())
                .isCloseTo(0.25, within(0.01));
        night.steps.add(new Step.Shifted(99, rig.usualClampShift(), rig.clampingSigma()));
        assertThat(night.state().axis().separation(after.axis()).arcseconds()).isLessThan(1e-3);
        assertThat(before.gains().azimuthFactor()).isCloseTo(1.2, within(1e-9));
        assertThat(before.gains().altitudeSigma()).isCloseTo(0.04, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"1.5, false", "-2.25, false", "1.5, true", "-2.25, true", "0.3, true"})
    void turnsNeeded_undoTheExpectedTurns(double effective, boolean reversed) {
        Screw screw = rig(0.1, 0.4).azimuthScrew();
        assertThat(screw.expected(screw.needed(effective, reversed), reversed)).isCloseTo(effective, within(1e-12));
    }

    private static double square(double x) {
        return x * x;
    }
}
