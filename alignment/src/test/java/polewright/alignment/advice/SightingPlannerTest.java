package polewright.alignment.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static polewright.alignment.advice.AdviceSituations.GROUND_READ;
import static polewright.alignment.advice.AdviceSituations.RIG;
import static polewright.alignment.advice.AdviceSituations.SHARP;
import static polewright.alignment.advice.AdviceSituations.axis;
import static polewright.alignment.advice.AdviceSituations.clamped;
import static polewright.alignment.advice.AdviceSituations.fix;
import static polewright.alignment.advice.AdviceSituations.unclamped;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.advice.Advice.TakeSighting;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.KnownAxis;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.RefractedDirection;

/** The next sighting advised, with or without a dispute between earlier sightings. */
class SightingPlannerTest {
    private static AdvisedStar star(String name, double hourAngleDeg, double decDeg) {
        return new AdvisedStar(
                name,
                name,
                1,
                new HourAnglePlace(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(decDeg)),
                RefractedDirection.of(Angle.ZERO, Angle.ofDegrees(45)));
    }

    private static Situation under(Fix fix, AdvisedStar... stars) {
        return new Situation(
                RIG,
                fix,
                DiscAllowance.VISUAL,
                false,
                Confirmation.NONE,
                GROUND_READ,
                Daylight.NONE,
                List.of(stars),
                false,
                Set.of());
    }

    @Test
    void conflictingSightings_areSettledByOneOfTheirKind_evenWhenClamped() {
        KnownAxis known = axis(54.6, 40, 0);
        StarDrift drift = known.driftOnMeridian(10, Angle.ofArcseconds(4));
        StarDrift swapped = new StarDrift(
                drift.at(),
                drift.length(),
                drift.star(),
                drift.drift(),
                drift.direction().reversed(),
                drift.sigma());
        Fix dubious = fix(known, known.driftInEast(15, SHARP), drift, swapped);
        assertThat(dubious).isInstanceOf(Fix.Dubious.class);

        for (Situation situation : List.of(unclamped(dubious, true, true), clamped(dubious, Confirmation.AGREES))) {
            TakeSighting advice = (TakeSighting) Adviser.advise(situation);
            assertThat(advice.kind()).isEqualTo(SightingKind.DRIFT_ON_MERIDIAN);
            assertThat(advice.reason()).startsWith("sightings #3 and #4 contradict each other");
        }
    }

    /** The still point takes less time, and was once advised again, which would repeat the same mistake. */
    @Test
    void conflictOfStillPointAndDrift_isNotSettledByTheStillPointAgain() {
        KnownAxis known = axis(54.6, 40, 10);
        Angle field = Angle.ofDegrees(6);
        StillPoint seen = known.stillPoint(new View(Orientation.ERECT, Angle.ZERO), field, Angle.ofArcminutes(3));
        StillPoint entered = new StillPoint(
                seen.at(),
                seen.star(),
                seen.distance(),
                seen.toward(),
                new View(Orientation.MIRRORED, Angle.ZERO),
                seen.sigma());
        Fix dubious = fix(known, known.driftOnMeridian(10, Angle.ofArcseconds(4)), entered);
        assertThat(dubious).isInstanceOf(Fix.Dubious.class);

        TakeSighting byEye = (TakeSighting) Adviser.advise(unclamped(dubious, true, true));
        assertThat(byEye.kind()).isEqualTo(SightingKind.DRIFT_ON_MERIDIAN);

        Rig withCamera = RIG.withCameras(List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));
        TakeSighting byCamera = (TakeSighting) Adviser.advise(new Situation(
                withCamera, dubious, DiscAllowance.VISUAL, false, Confirmation.NONE, GROUND_READ, Daylight.NONE));
        assertThat(byCamera.kind()).isEqualTo(SightingKind.FRAMES);
    }

    @Test
    void poleStarInTheFinder_makesTheStillPointWorthwhile() {
        KnownAxis known = axis(-43.95, 40, 20);
        Fix fix = fix(
                known,
                known.compass(CompassBearing.USUAL_SIGMA),
                known.scale(LevelledScale.USUAL_SIGMA),
                known.stillPoint(View.of(Orientation.INVERTED), Angle.ofDegrees(6), Angle.ofDegrees(1)));
        TakeSighting advice = (TakeSighting) Adviser.advise(unclamped(fix, true, true));
        assertThat(advice.kind()).isEqualTo(SightingKind.STILL_POINT);
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void frames_areAdvised_withACameraAndTheSunDown(double latitudeDeg) {
        Rig withCamera = RIG.withCameras(List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));
        Fix nothing = fix(axis(latitudeDeg, 200, -100));
        Situation night = new Situation(
                withCamera, nothing, DiscAllowance.VISUAL, false, Confirmation.NONE, Set.of(), Daylight.NONE);
        Situation day = new Situation(
                withCamera, nothing, DiscAllowance.VISUAL, false, Confirmation.NONE, Set.of(), Daylight.SHADOW);

        TakeSighting byNight = (TakeSighting) Adviser.advise(night);
        assertThat(byNight.kind()).isEqualTo(SightingKind.FRAMES);
        assertThat(byNight.watch()).isZero();
        assertThat(((TakeSighting) Adviser.advise(day)).kind()).isNotEqualTo(SightingKind.FRAMES);
    }

    /** A finder needs the pole star brought in first; a camera measures the axis from where it is. */
    @Test
    void fewDegreesOff_withACamera_takeFramesBeforeTurning() {
        KnownAxis known = axis(54.6, 240, -200);
        Fix rough = fix(known, known.compass(CompassBearing.USUAL_SIGMA), known.scale(LevelledScale.USUAL_SIGMA));
        Rig withCamera = RIG.withCameras(List.of(new Camera("guide camera", 240, 3.75, 1280, 960)));

        Advice advice = Adviser.advise(new Situation(
                withCamera, rough, DiscAllowance.VISUAL, false, Confirmation.NONE, GROUND_READ, Daylight.NONE));

        assertThat(advice)
                .isInstanceOfSatisfying(
                        TakeSighting.class, take -> assertThat(take.kind()).isEqualTo(SightingKind.FRAMES));
    }

    /** Declination drift on the meridian measures east and west, six hours from it altitude (common practice). */
    @ParameterizedTest
    @ValueSource(doubles = {54.6, -43.95})
    void star_isChosenForItsInformation(double latitudeDeg) {
        KnownAxis known = axis(latitudeDeg, 8, 4);
        AdvisedStar south = star("on the meridian", -1, 5);
        AdvisedStar east = star("in the east", -90, 20 * Math.signum(latitudeDeg));
        Fix heightUnknown = fix(known, known.driftOnMeridian(15, SHARP), known.scale(LevelledScale.USUAL_SIGMA));
        Fix eastUnknown = fix(known, known.driftInEast(15, SHARP), known.compass(CompassBearing.USUAL_SIGMA));

        TakeSighting forHeight = (TakeSighting) Adviser.advise(under(heightUnknown, south, east));
        TakeSighting forEast = (TakeSighting) Adviser.advise(under(eastUnknown, south, east));

        assertThat(forHeight.star()).contains(east);
        assertThat(forHeight.kind()).isEqualTo(SightingKind.DRIFT_EAST_OR_WEST);
        assertThat(forEast.star()).contains(south);
        assertThat(forEast.watch()).isPositive();
    }

    @Test
    void ranking_isBestFirst_andExpectsNoLessThanDoingNothing() {
        KnownAxis known = axis(54.6, 8, 4);
        Fix fix = fix(known, known.driftOnMeridian(5, Angle.ofArcseconds(4)), known.driftInEast(5, SHARP));
        Situation situation = unclamped(fix, true, true);
        double now = Adviser.advise(situation).probabilityNow();

        List<RankedSighting> ranking = Adviser.ranking(situation);

        assertThat(ranking).hasSizeGreaterThan(5);
        assertThat(ranking).isSortedAccordingTo((a, b) -> Double.compare(b.gainPerMinute(), a.gainPerMinute()));
        assertThat(ranking).allSatisfy(r -> {
            assertThat(r.probabilityAfter()).isBetween(now, 1.0);
            assertThat(r.minutes()).isPositive();
        });
    }

    /** A longer watch gives a higher expected probability. */
    @Test
    void longerWatch_promisesMore() {
        KnownAxis known = axis(54.6, 8, 4);
        Fix fix = fix(known, known.driftOnMeridian(15, SHARP), known.driftInEast(5, Angle.ofArcseconds(10)));
        List<RankedSighting> inTheEast = Adviser.ranking(unclamped(fix, true, true)).stream()
                .filter(r -> r.kind() == SightingKind.DRIFT_EAST_OR_WEST)
                .sorted(java.util.Comparator.comparing(RankedSighting::watch))
                .toList();
        assertThat(inTheEast).extracting(RankedSighting::probabilityAfter).isSorted();
        assertThat(inTheEast.get(inTheEast.size() - 1).probabilityAfter())
                .isGreaterThan(inTheEast.get(0).probabilityAfter() + 0.05);
    }
}
