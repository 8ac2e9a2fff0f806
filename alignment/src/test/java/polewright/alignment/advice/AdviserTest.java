package polewright.alignment.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.advice.AdviceSituations.GROUND_READ;
import static polewright.alignment.advice.AdviceSituations.RIG;
import static polewright.alignment.advice.AdviceSituations.SHARP;
import static polewright.alignment.advice.AdviceSituations.axis;
import static polewright.alignment.advice.AdviceSituations.clamped;
import static polewright.alignment.advice.AdviceSituations.fix;
import static polewright.alignment.advice.AdviceSituations.sharp;
import static polewright.alignment.advice.AdviceSituations.unclamped;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.advice.Advice.Clamp;
import polewright.alignment.advice.Advice.MoveByHand;
import polewright.alignment.advice.Advice.Stop;
import polewright.alignment.advice.Advice.TakeSighting;
import polewright.alignment.advice.Advice.TurnScrews;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.fix.Step;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.sky.angle.Angle;

/** The advice at each stage, from bare ground to stop. */
class AdviserTest {
    @ParameterizedTest
    @CsvSource({
        "54.6, LEVEL_AND_SCALE, DRIFT_ON_MERIDIAN, LEVEL_AND_SCALE",
        "10, LEVEL_AND_SCALE, DRIFT_ON_MERIDIAN, LEVEL_AND_SCALE",
        "-43.95, LEVEL_AND_SCALE, DRIFT_ON_MERIDIAN, LEVEL_AND_SCALE",
        "-70, LEVEL_AND_SCALE, COMPASS, LEVEL_AND_SCALE"
    })
    void nothingKnown_readScaleAndCompassFirst(
            double latitudeDeg, SightingKind atFirst, SightingKind onceScaleIsRead, SightingKind onceCompassIsRead) {
        KnownAxis known = axis(latitudeDeg, 180, 90);

        TakeSighting first = (TakeSighting) Adviser.advise(unclamped(fix(known), false, false));
        assertThat(first.kind()).isEqualTo(atFirst);
        assertThat(first.watch()).isZero();
        assertThat(first.reason()).isEqualTo("no fix yet");
        assertThat(first.probabilityNow()).isLessThan(0.001);

        TakeSighting afterScale = (TakeSighting)
                Adviser.advise(unclamped(fix(known, known.scale(LevelledScale.USUAL_SIGMA)), false, true));
        // A three-minute drift takes three minutes longer than a compass and is far more accurate, but near the zenith
        // azimuth matters little.
        assertThat(afterScale.kind()).isEqualTo(onceScaleIsRead);

        TakeSighting afterCompass = (TakeSighting)
                Adviser.advise(unclamped(fix(known, known.compass(CompassBearing.USUAL_SIGMA)), true, false));
        assertThat(afterCompass.kind()).isEqualTo(onceCompassIsRead);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void vagueFixNearThePole_takeASighting(double latitudeDeg) {
        KnownAxis known = axis(latitudeDeg, 20, 15);
        Fix vague = fix(known, known.compass(CompassBearing.USUAL_SIGMA), known.scale(LevelledScale.USUAL_SIGMA));

        TakeSighting advice = (TakeSighting) Adviser.advise(unclamped(vague, true, true));

        assertThat(advice.kind()).isNotIn(SightingKind.COMPASS, SightingKind.LEVEL_AND_SCALE);
        assertThat(advice.reason())
                .isEqualTo("the fix is not yet accurate enough to say whether the axis is within" + " 5′ of the pole");
    }

    /** The pole star is far out of the finder's 6°, and turning by compass and scale would bring it in. */
    @Test
    void fewDegreesOffInTheNorth_turnByCompassAndScale() {
        KnownAxis known = axis(54.6, 240, -200);
        Fix rough = fix(known, known.compass(CompassBearing.USUAL_SIGMA), known.scale(LevelledScale.USUAL_SIGMA));

        assertThat(Adviser.advise(unclamped(rough, true, true))).isInstanceOf(TurnScrews.class);
    }

    /** The southern pole star is farther from the pole: a compass alone might not bring it into the finder. */
    @Test
    void fewDegreesOffInTheSouth_watchADriftOnTheMeridianFirst_thenTurn() {
        KnownAxis known = axis(-43.95, 240, -200);
        Sighting compass = known.compass(CompassBearing.USUAL_SIGMA);
        Sighting scale = known.scale(LevelledScale.USUAL_SIGMA);

        TakeSighting first = (TakeSighting) Adviser.advise(unclamped(fix(known, compass, scale), true, true));
        assertThat(first.kind()).isEqualTo(SightingKind.DRIFT_ON_MERIDIAN);

        Fix better = fix(known, compass, scale, known.driftOnMeridian(5, Angle.ofArcseconds(4)));
        assertThat(Adviser.advise(unclamped(better, true, true))).isInstanceOf(TurnScrews.class);
    }

    @Test
    void tooFarForTheScrews_moveTheMountByHand() {
        // 13° west in the north: the axis has to swing right by 13° / cos φ, less a correction for the curvature of the
        // sphere.
        KnownAxis known = axis(54.6, -13 * 60, 0);
        Fix rough = fix(known, known.compass(CompassBearing.USUAL_SIGMA), known.scale(LevelledScale.USUAL_SIGMA));

        MoveByHand advice = (MoveByHand) Adviser.advise(unclamped(rough, true, true));

        assertThat(advice.azimuth()
                        .minus(known.axis().azimuthError(known.site()).negated())
                        .degrees())
                .isCloseTo(0, within(1.5));
        assertThat(advice.azimuth().degrees()).isGreaterThan(15);
    }

    @Test
    void southernAxisTooFarEast_isSwungRight() {
        // Facing south, east is to the left.
        KnownAxis known = axis(-43.95, 13 * 60, 0);
        Fix rough = fix(known, known.compass(CompassBearing.USUAL_SIGMA), known.scale(LevelledScale.USUAL_SIGMA));

        MoveByHand advice = (MoveByHand) Adviser.advise(unclamped(rough, true, true));

        assertThat(advice.azimuth().degrees()).isGreaterThan(10);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void goodEnough_clamp_thenConfirm_thenStop(double latitudeDeg) {
        Fix good = sharp(axis(latitudeDeg, 1, -1));

        Advice clamp = Adviser.advise(unclamped(good, true, true));
        assertThat(clamp).isInstanceOf(Clamp.class);
        // Rice's distribution, 1.41′ off and 2′ of clamps each way: 90.8 % within 5′.
        assertThat(clamp.probabilityNow()).isCloseTo(0.908, within(0.005));

        TakeSighting confirm = (TakeSighting) Adviser.advise(clamped(good, Confirmation.NONE));
        assertThat(confirm.reason()).isEqualTo("confirm that clamping did not move the axis");

        Stop stop = (Stop) Adviser.advise(clamped(good, Confirmation.AGREES));
        assertThat(stop.offset().east().arcminutes()).isCloseTo(1, within(0.1));
    }

    /** A confirming sighting that was set aside does not confirm. */
    @Test
    void sightingAfterClampingThatContradicts_doesNotConfirm() {
        TakeSighting again = (TakeSighting) Adviser.advise(clamped(sharp(axis(54.6, 1, -1)), Confirmation.CONTRADICTS));

        assertThat(again.reason())
                .isEqualTo("the last one contradicts those from before the clamps were tightened; if this one agrees"
                        + " with it, the mount has moved: log a knock");
    }

    @Test
    void clampedAndKnownToBeOff_loosenBeforeTurning() {
        TurnScrews advice = (TurnScrews) Adviser.advise(clamped(sharp(axis(54.6, 20, 12)), Confirmation.AGREES));

        assertThat(advice.loosenFirst()).isTrue();
        assertThat(advice.probabilityAfter()).isGreaterThan(advice.probabilityNow());
    }

    /** After a knock everything has to be sighted again, whether the clamps are tight or not. */
    @Test
    void knockedWhileClamped_startFromTheGroundAgain() {
        KnownAxis known = axis(54.6, 1, -1);
        List<Step> steps = List.of(
                known.step(2, known.driftOnMeridian(15, SHARP)),
                known.step(3, known.driftInEast(15, SHARP)),
                new Step.Shifted(4, polewright.alignment.fix.AxisState.PRIOR_SIGMA));
        Fix knocked = FixSolver.solve(known.site(), RIG, KnownAxis.AIR, steps);

        Advice advice = Adviser.advise(
                new Situation(RIG, knocked, DiscAllowance.VISUAL, true, Confirmation.NONE, Set.of(), Daylight.NONE));

        assertThat(((TakeSighting) advice).kind()).isEqualTo(SightingKind.LEVEL_AND_SCALE);
    }

    @ParameterizedTest
    @CsvSource({"0.5, 0.3", "6, 3", "40, -25", "200, 100"})
    void probabilities_areProbabilities(double east, double up) {
        Advice advice = Adviser.advise(unclamped(sharp(axis(54.6, east, up)), true, true));
        assertThat(advice.probabilityNow()).isBetween(0.0, 1.0);
        if (advice instanceof TurnScrews turns) {
            assertThat(turns.probabilityAfter()).isBetween(advice.probabilityNow(), 1.0);
        }
    }

    /**
     * While the Sun is up no stars are sighted: the shadow is the best reading, and after it there is nothing to do.
     */
    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void byDay_readTheGroundAndTheShadow_thenWaitForDark(double latitudeDeg) {
        KnownAxis known = axis(latitudeDeg, 30, 20);
        Fix ground = fix(known, known.compass(CompassBearing.USUAL_SIGMA), known.scale(LevelledScale.USUAL_SIGMA));
        Advice shadow = Adviser.advise(new Situation(
                RIG, ground, DiscAllowance.VISUAL, false, Confirmation.NONE, GROUND_READ, Daylight.SHADOW));
        assertThat(((TakeSighting) shadow).kind()).isEqualTo(SightingKind.SHADOW);

        Set<SightingKind> allRead = EnumSet.copyOf(GROUND_READ);
        allRead.add(SightingKind.SHADOW);
        assertThat(Adviser.advise(new Situation(
                        RIG, ground, DiscAllowance.VISUAL, false, Confirmation.NONE, allRead, Daylight.SHADOW)))
                .isInstanceOf(Advice.WaitForDark.class);
    }

    @Test
    void prospect_isAtTheBestAim_andTakesMinutes() {
        Situation off = unclamped(sharp(axis(54.6, 20, 12)), true, true);

        Prospect prospect = Adviser.prospect(off).orElseThrow();

        assertThat(prospect.offset()).isEqualTo(DiscAllowance.VISUAL.bestAim());
        assertThat(prospect.minutes()).isBetween(5.0, 40.0);
        // 15 % of 20' in azimuth, a hand, the clamps' 1.5'.
        assertThat(prospect.covariance().sigmaEast().arcminutes()).isBetween(1.5, 6.0);
        assertThat(Adviser.prospect(unclamped(fix(axis(54.6, 20, 12)), false, false)))
                .isEmpty();
    }
}
