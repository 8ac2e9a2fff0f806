package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Reversed screws: the turns show it, and the next order is in the right direction. */
class SensesLearnedTest {
    private static final Rig ASSUMED = Rig.typicalForkOnWedge();
    private static final Angle DRIFT_SIGMA = Angle.ofArcseconds(3);

    /** A wedge with these screw gains relative to the rig; negative if reversed. */
    private static final class Wedge {
        private final Rig rig;
        private final double azimuthFactor;
        private final double altitudeFactor;
        private final List<Step> steps = new ArrayList<>();
        private KnownAxis axis;

        Wedge(Site site, Rig rig, double azimuthFactor, double altitudeFactor, Random random) {
            this.rig = rig;
            this.azimuthFactor = azimuthFactor;
            this.altitudeFactor = altitudeFactor;
            axis = new KnownAxis(site, AxisPointing.of(site, AxisOffset.ofArcminutes(70, -60)), random::nextGaussian);
        }

        private long next() {
            return steps.size() + 2L;
        }

        void sight() {
            sight(10);
        }

        void sight(int minutes) {
            steps.add(axis.step(next(), axis.driftOnMeridian(minutes, DRIFT_SIGMA)));
            steps.add(axis.step(next(), axis.driftInEast(minutes, DRIFT_SIGMA)));
        }

        void turn(double azimuth, double altitude) {
            steps.add(new Step.Turned(next(), azimuth, altitude));
            axis = axis.at(AxisPointing.of(
                    axis.axis().azimuth().plus(by(rig.azimuthScrew(), azimuth).times(azimuthFactor)),
                    axis.axis()
                            .altitude()
                            .plus(by(rig.altitudeScrew(), altitude).times(altitudeFactor))));
        }

        private Angle by(Screw screw, double turns) {
            return screw.move(turns, axis.axis().altitude());
        }

        Fix fix() {
            return FixSolver.solve(axis.site(), rig, KnownAxis.AIR, steps);
        }

        /** Makes the turns to the pole that follow from the fix. */
        void makeTurnsToPole() {
            Fix fix = fix();
            AxisState.Turns order = fix.state().turnsTo(AxisOffset.NONE, fix.rig());
            turn(order.azimuth(), order.altitude());
        }

        double offArcmin() {
            return axis.axis().offset(axis.site()).distance().arcminutes();
        }
    }

    private static Wedge wedge(double latitudeDeg, Rig rig, double azimuthFactor, double altitudeFactor, long seed) {
        return new Wedge(Site.ofDegrees(latitudeDeg, 0, 200), rig, azimuthFactor, altitudeFactor, new Random(seed));
    }

    @ParameterizedTest
    @CsvSource({
        "54.6, -1, 1",
        "54.6, 1, -1",
        "54.6, -1, -1",
        "54.6, -0.75, -1.25",
        "-43.95, -1.25, 1",
        "-43.95, -0.8, -1.2",
        "20, -1, -0.75"
    })
    void assumedSense_isShownByOneTurn_andTheNextOrderIsRight(double latitude, double azimuth, double altitude) {
        Wedge wedge = wedge(latitude, ASSUMED, azimuth, altitude, 1);
        wedge.sight();
        double first = wedge.offArcmin();
        wedge.makeTurnsToPole();
        wedge.sight();

        Fix fix = wedge.fix();
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreements()).noneMatch(Agreement::contradictory);
        assertThat(fix.rig().azimuthScrew().clockwise()).isEqualTo(azimuth < 0 ? ScrewSense.LEFT : ScrewSense.RIGHT);
        assertThat(fix.rig().altitudeScrew().clockwise())
                .isEqualTo(altitude < 0 ? ScrewSense.LOWERS : ScrewSense.RAISES);
        wedge.makeTurnsToPole();
        assertThat(wedge.offArcmin()).isLessThan(first / 3);
        wedge.sight();
        wedge.makeTurnsToPole();
        assertThat(wedge.offArcmin()).isLessThan(6);
    }

    @Test
    void screwsWithOtherGains_areNotTakenForReversed() {
        Random random = new Random(5);
        int undecided = 0;
        for (long seed = 1; seed <= 60; seed++) {
            Wedge wedge = wedge(
                    54.6,
                    ASSUMED,
                    Math.max(0.3, 1 + 0.25 * random.nextGaussian()),
                    Math.max(0.3, 1 + 0.25 * random.nextGaussian()),
                    seed);
            wedge.sight();
            wedge.makeTurnsToPole();
            wedge.sight();
            wedge.makeTurnsToPole();
            wedge.sight();
            Fix fix = wedge.fix();
            if (!fix.rig().equals(ASSUMED)) {
                // A direction that is merely more likely may be wrong; it is tested before any order relies on it.
                assertThat(fix.senses().isAzimuthKnown() && fix.senses().isAltitudeKnown())
                        .isFalse();
                undecided++;
            }
        }
        assertThat(undecided).isLessThanOrEqualTo(2);
    }

    @Test
    void certaintyOfSenses_followsFromTheTurns() {
        Wedge wedge = wedge(54.6, ASSUMED, -1, 1, 1);
        wedge.sight();
        assertThat(wedge.fix().senses()).isEqualTo(new ScrewSenses(0.5, 0.5));
        wedge.turn(-1, 0);
        assertThat(wedge.fix().senses().azimuth()).as("not looked yet").isCloseTo(0.5, within(0.01));
        wedge.sight();
        assertThat(wedge.fix().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(wedge.fix().senses().isAzimuthKnown()).isTrue();
        assertThat(wedge.fix().senses().altitude()).as("not turned").isEqualTo(0.5);
        wedge.turn(0, 1);
        wedge.sight();
        assertThat(wedge.fix().rig().altitudeScrew().clockwise()).isEqualTo(ScrewSense.RAISES);
        assertThat(wedge.fix().senses().isAltitudeKnown()).isTrue();
    }

    /** A sixteenth of a turn moves the axis by 1.5′, which a one-minute drift cannot show. */
    @Test
    void turnTooSmallToDetect_leavesTheSenseOpen() {
        Wedge wedge = wedge(54.6, ASSUMED, -1, 1, 1);
        wedge.sight(1);
        wedge.turn(-0.0625, 0);
        wedge.sight(1);
        assertThat(wedge.fix().senses().azimuth()).isBetween(0.3, 0.9);
    }

    @Test
    void describedSenses_areCertain() {
        Wedge wedge = wedge(54.6, ToldRig.typical(), 1, 1, 1);
        assertThat(wedge.fix().senses()).isEqualTo(new ScrewSenses(1, 1));
        wedge.sight();
        wedge.turn(-1, 0.5);
        wedge.sight();
        assertThat(wedge.fix().senses()).isEqualTo(new ScrewSenses(1, 1));
    }

    /** If the owner described the direction, one contrary turn counts as a slip of the hand; two do not. */
    @Test
    void describedRig_isDoubtedAfterTwoTurns() {
        Rig described = ToldRig.typical();
        Wedge wedge = wedge(54.6, described, -1, 1, 2);
        wedge.sight();
        wedge.sight();
        wedge.turn(-2, 0);
        wedge.sight();
        wedge.sight();
        assertThat(wedge.fix()).isInstanceOf(Fix.Dubious.class);
        assertThat(wedge.fix().rig()).isEqualTo(described);
        wedge.turn(-2, 0);
        wedge.sight();
        Fix fix = wedge.fix();
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(fix.state().offset().distance().arcminutes()).isCloseTo(wedge.offArcmin(), within(2.0));
    }

    private static Rig azimuthDescribed(Rig rig) {
        return rig.withScrews(rig.azimuthScrew().withSenseConfirmed(), rig.altitudeScrew(), rig.levelSigma());
    }

    /** Each screw on its own: the described one is certain, the other is learned. */
    @Test
    void oneDescribedSense_leavesTheOtherToBeLearned() {
        Wedge wedge = wedge(54.6, azimuthDescribed(ASSUMED), 1, -1, 1);
        assertThat(wedge.fix().senses()).isEqualTo(new ScrewSenses(1, 0.5));
        wedge.sight();
        wedge.turn(-1, 1);
        wedge.sight();
        Fix fix = wedge.fix();
        assertThat(fix.rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.RIGHT);
        assertThat(fix.rig().altitudeScrew().clockwise()).isEqualTo(ScrewSense.LOWERS);
        assertThat(fix.senses().isAltitudeKnown()).isTrue();
        assertThat(fix.senses().azimuth()).isEqualTo(1);
    }

    /** A wrong description is doubted even while the other screw is still to be learned. */
    @Test
    void wronglyDescribedSense_isDoubtedAfterTwoTurns_whileTheOtherIsAssumed() {
        Wedge wedge = wedge(54.6, azimuthDescribed(ASSUMED), -1, -1, 2);
        wedge.sight();
        wedge.sight();
        for (int i = 0; i < 2; i++) {
            wedge.turn(-2, 1);
            wedge.sight();
            wedge.sight();
        }
        Fix fix = wedge.fix();
        assertThat(fix.rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(fix.rig().altitudeScrew().clockwise()).isEqualTo(ScrewSense.LOWERS);
        assertThat(fix.state().offset().distance().arcminutes()).isCloseTo(wedge.offArcmin(), within(2.0));
    }

    private static Rig shownByEarlierNights(double azimuth, double altitude) {
        return ASSUMED.withExperience(Optional.of(
                new Experience(3, 1, 0.1, 1, 0.1, 0, AxisOffset.NONE, Angle.ofArcminutes(2), azimuth, altitude)));
    }

    @Test
    void senseFromEarlierNights_isKnownBeforeTheFirstTurn() {
        Fix fix = wedge(54.6, shownByEarlierNights(0.995, 0.8), 1, 1, 1).fix();
        assertThat(fix.senses()).isEqualTo(new ScrewSenses(0.995, 0.8));
        assertThat(fix.senses().isAzimuthKnown()).isTrue();
        assertThat(fix.senses().isAltitudeKnown()).isFalse();
    }

    /** A log may hold 0 or 1, but no night can show a certainty. */
    @Test
    void certaintyFromEarlierNights_isBounded() {
        Wedge wedge = wedge(54.6, shownByEarlierNights(0, 1), 1, 1, 1);
        wedge.sight();
        wedge.turn(0, 1);
        wedge.sight();
        wedge.turn(-1, 0);
        wedge.sight();
        Fix fix = wedge.fix();
        assertThat(fix.rig().azimuthScrew().clockwise())
                .isEqualTo(ASSUMED.azimuthScrew().clockwise());
        assertThat(fix.senses().isAzimuthKnown()).isTrue();
        assertThat(fix.senses().isAltitudeKnown()).isTrue();
    }

    /** A mount that has been taken apart since: one turn shows it, as if nothing were known. */
    @Test
    void senseFromEarlierNights_isOverruledByOneTurn() {
        Wedge wedge = wedge(54.6, shownByEarlierNights(0.995, 0.995), -1, -1, 1);
        wedge.sight();
        wedge.turn(-1, 1);
        wedge.sight();
        Fix fix = wedge.fix();
        assertThat(fix.rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(fix.rig().altitudeScrew().clockwise()).isEqualTo(ScrewSense.LOWERS);
        assertThat(fix.senses().isAzimuthKnown()).isTrue();
        assertThat(fix.senses().isAltitudeKnown()).isTrue();
    }

    /** A learned direction is kept when the turns that showed it are condensed. */
    @Test
    void learnedSense_inALongNight_isKept() {
        Wedge wedge = wedge(54.6, ASSUMED, -1, 1, 3);
        for (int i = 0; i < 25; i++) {
            wedge.sight();
            wedge.turn(i % 2 == 0 ? 1 : -1, 0.5);
        }
        wedge.sight();
        Fix fix = wedge.fix();
        assertThat(fix.rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(fix.senses().isAzimuthKnown()).isTrue();
        assertThat(fix.senses().isAltitudeKnown()).isTrue();
        assertThat(fix.agreements()).filteredOn(Agreement::contradictory).hasSizeLessThan(3);
    }
}
