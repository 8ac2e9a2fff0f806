package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * Sightings that do not fit a turn: the turn was not made as entered, or the screws differ from the rig description.
 */
class TurnSuspectsTest {
    private static final Rig RIG = ToldRig.typical();
    private static final Angle DRIFT_SIGMA = Angle.ofArcseconds(3);

    /** Sighted, turned as entered, and sighted again where the axis really went. */
    private static Fix night(
            Site site, double enteredAzimuth, double enteredAltitude, double azimuthArcmin, double altitudeArcmin) {
        KnownAxis before = KnownAxis.exactly(site, AxisOffset.ofArcminutes(70, -60));
        KnownAxis after = before.at(AxisPointing.of(
                before.axis().azimuth().plus(Angle.ofArcminutes(azimuthArcmin)),
                before.axis().altitude().plus(Angle.ofArcminutes(altitudeArcmin))));
        List<Step> steps = new ArrayList<>();
        addSightings(steps, before);
        steps.add(new Step.Turned(6, enteredAzimuth, enteredAltitude));
        addSightings(steps, after);
        return FixSolver.solve(site, RIG, KnownAxis.AIR, steps);
    }

    private static void addSightings(List<Step> steps, KnownAxis known) {
        long seq = steps.size() + 2L;
        steps.add(known.step(seq, known.driftOnMeridian(10, DRIFT_SIGMA)));
        steps.add(known.step(seq + 1, known.driftInEast(10, DRIFT_SIGMA)));
        steps.add(known.step(seq + 2, known.driftOnMeridian(10, DRIFT_SIGMA)));
        steps.add(known.step(seq + 3, known.driftInEast(10, DRIFT_SIGMA)));
    }

    private static double perTurn(Screw screw) {
        return screw.move(1, Angle.ofDegrees(45)).arcminutes();
    }

    private static final double AZIMUTH = perTurn(RIG.azimuthScrew());
    private static final double ALTITUDE = perTurn(RIG.altitudeScrew());

    @ParameterizedTest
    @CsvSource({"54.6", "-43.95"})
    void reversedTurn_isNamed(double latitudeDeg) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        assertReason(
                night(site, 4, 0, -4 * AZIMUTH, 0), "at turn #6 the azimuth screw moved the axis the opposite way");
        assertReason(
                night(site, 0, -3, 0, 3 * ALTITUDE), "at turn #6 the altitude screw moved the axis the opposite way");
    }

    @Test
    void turnNotMadeOrOfTheOtherScrew_isNamed() {
        Site site = Site.ofDegrees(54.6, 0, 240);
        assertReason(night(site, 4, 0, 0, 0), "at turn #6 nothing had moved");
        assertReason(night(site, 4, 0, 0, 4 * ALTITUDE), "at turn #6 the other screw had been turned");
    }

    /** The turn is the most likely mistake; drifts alone cannot rule out that all of them were read upside down. */
    private static void assertReason(Fix fix, String words) {
        assertThat(fix).isInstanceOf(Fix.Dubious.class);
        Explanation mostLikely = fix.explanations().get(0);
        assertThat(mostLikely.weight()).isGreaterThan(0.5);
        assertThat(mostLikely.mistake()).containsInstanceOf(Mistake.TurnMistaken.class);
        Mistake.TurnMistaken turn = (Mistake.TurnMistaken) mostLikely.mistake().orElseThrow();
        assertThat("at turn #" + turn.seq() + " " + turn.words()).isEqualTo(words);
        assertThat(((Fix.Dubious) fix).reason()).contains(turn.words());
    }

    /** Four sigmas from the rig description: too rare to keep the description, but no reason to doubt the sightings. */
    @ParameterizedTest
    @CsvSource({"54.6, 1.6, 0.6", "-43.95, 0.5, 1.5", "30, 1.65, 1.6"})
    void screwsFarFromTheRig_areLearned_andEverySightingIsBelieved(
            double latitudeDeg, double azimuthFactor, double altitudeFactor) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        Fix fix = night(site, -4, 3, -4 * AZIMUTH * azimuthFactor, 3 * ALTITUDE * altitudeFactor);

        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreements()).noneMatch(Agreement::contradictory);
        // One turn of both screws at once cannot separate the effect of a leaning base, so the rig description still
        // has weight.
        assertThat(fix.state().gains().azimuthFactor()).isCloseTo(azimuthFactor, within(0.15));
        assertThat(fix.state().gains().altitudeFactor()).isCloseTo(altitudeFactor, within(0.08));
    }

    /** A first turn with full effect and a second with only part of it; sighted before, between and after. */
    private static Fix slipping(Site site, double azimuth, double altitude, double share) {
        KnownAxis first = KnownAxis.exactly(site, AxisOffset.ofArcminutes(70, -60));
        KnownAxis second = moved(first, azimuth, altitude, 1);
        List<Step> steps = new ArrayList<>();
        addSightings(steps, first);
        steps.add(new Step.Turned(6, azimuth, altitude));
        addSightings(steps, second);
        steps.add(new Step.Turned(11, azimuth, altitude));
        addSightings(steps, moved(second, azimuth, altitude, share));
        return FixSolver.solve(site, RIG, KnownAxis.AIR, steps);
    }

    private static KnownAxis moved(KnownAxis from, double azimuthTurns, double altitudeTurns, double share) {
        return from.at(AxisPointing.of(
                from.axis().azimuth().plus(Angle.ofArcminutes(share * azimuthTurns * AZIMUTH)),
                from.axis().altitude().plus(Angle.ofArcminutes(share * altitudeTurns * ALTITUDE))));
    }

    @ParameterizedTest
    @CsvSource({"54.6, 0.33, a third", "-43.95, 0.33, a third", "54.6, 0.5, half", "-43.95, 0.25, a quarter"})
    void slippedScrew_isNamedWithTheFractionThatTookEffect(double latitudeDeg, double share, String words) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        assertReason(slipping(site, 6, 0, share), slipped("azimuth", words));
        assertReason(slipping(site, 0, -6, share), slipped("altitude", words));
    }

    private static String slipped(String screw, String share) {
        return "at turn #11 the " + screw + " screw slipped: only about " + share + " of its turns took effect";
    }

    /** A single turn cannot distinguish a screw that slipped from one with a smaller gain than the rig says. */
    @Test
    void weakScrew_onItsFirstTurn_isNotSuspected() {
        Site site = Site.ofDegrees(54.6, 0, 200);
        assertThat(night(site, 8, 0, 8 * AZIMUTH / 3, 0)).isInstanceOf(Fix.Solved.class);
    }
}
