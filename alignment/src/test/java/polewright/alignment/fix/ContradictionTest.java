package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.SkySetting;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisOffset;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Sightings that contradict each other: which to believe, and for how long the conflict matters. */
class ContradictionTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final Angle FINDER = Angle.ofDegrees(16);
    private static final Angle EYE_IN_FINDER = Angle.ofArcminutes(15);

    private static AxisOffset degrees(double east, double up) {
        return AxisOffset.ofArcminutes(60 * east, 60 * up);
    }

    @Test
    void twoConflictingSightings_areBothNamed_andTheFixIsDubious() {
        Site site = Site.ofDegrees(54.60, 0, 240);
        KnownAxis known = KnownAxis.exactly(site, degrees(1, 0.5));
        List<Step> steps = List.of(
                known.step(2, known.scale(Angle.ofDegrees(0.5))),
                known.step(3, known.driftOnMeridian(5, Angle.ofArcseconds(4))),
                known.step(4, KnownAxis.reversed(known.driftOnMeridian(5, Angle.ofArcseconds(4)))));

        Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, steps);

        assertThat(fix).isInstanceOf(Fix.Dubious.class);
        assertThat(((Fix.Dubious) fix).reason())
                .isEqualTo("sightings #3 and #4 contradict each other, and neither is more likely to be right;"
                        + " one more sighting, of another kind, will decide");
        // Neither is used; the uncertainty region covers both axes, one degree to either side.
        assertThat(fix.agreements().stream().filter(Agreement::contradictory).map(Agreement::seq))
                .containsExactly(3L, 4L);
        List<Explanation> believingOne = fix.explanations().stream()
                .filter(explanation -> explanation.mistake().isEmpty())
                .toList();
        assertThat(believingOne).hasSize(2);
        for (Explanation explanation : believingOne) {
            assertThat(explanation.weight()).isCloseTo(0.5, within(0.05));
            assertThat(explanation.state().offset().east().abs().degrees()).isCloseTo(1, within(0.1));
            AxisOffset apart = explanation.state().offset().minus(fix.state().offset());
            assertThat(fix.state().offsetCovariance().normalisedSquare(apart)).isLessThan(2);
        }
        assertThat(fix.agreements().stream().filter(Agreement::contradictory).map(Agreement::likelyCause))
                .containsOnly(Optional.of("north and south were swapped"));
        assertThat(fix.agreements()).noneMatch(Agreement::accused);
    }

    @Test
    void twoConflictingSightings_areEachConsideredOnce() {
        Site site = Site.ofDegrees(54.60, 0, 240);
        KnownAxis known = KnownAxis.exactly(site, degrees(1, 0.5));
        List<Step> steps = List.of(
                known.step(2, known.scale(Angle.ofDegrees(0.5))),
                known.step(3, known.driftOnMeridian(5, Angle.ofArcseconds(4))),
                known.step(4, KnownAxis.reversed(known.driftOnMeridian(5, Angle.ofArcseconds(4)))));
        CondensedPast past = CondensedPast.none(site, RIG);
        Interpretation asEntered = Contradictions.weigh(new NightSmoother(past, steps));

        MistakeSearch search = MistakeSearch.in(past, KnownAxis.AIR, RIG, steps, asEntered);

        assertThat(asEntered.inConflict()).containsExactlyInAnyOrder(3L, 4L);
        assertThat(Stream.concat(search.found().stream(), search.others().stream())
                        .filter(candidate -> candidate.mistake().isEmpty())
                        .map(candidate -> candidate.interpretation().setAside()))
                .containsExactlyInAnyOrder(Set.of(3L), Set.of(4L));
    }

    /** Once the axis has been turned and sighted again, an earlier disagreement no longer matters. */
    @Test
    void conflictBeforeATurn_noLongerMatters_onceTheAxisIsSightedAgain() {
        Site site = Site.ofDegrees(54.60, 0, 240);
        KnownAxis before = KnownAxis.exactly(site, degrees(1, 0.5));
        KnownAxis now = KnownAxis.exactly(site, degrees(0.1, 0.5));
        List<Step> steps = new ArrayList<>(List.of(
                before.step(2, before.scale(Angle.ofDegrees(0.5))),
                before.step(3, before.driftOnMeridian(5, Angle.ofArcseconds(4))),
                before.step(4, KnownAxis.reversed(before.driftOnMeridian(5, Angle.ofArcseconds(4)))),
                new Step.Turned(5, -4, 0),
                now.step(6, now.driftInEast(15, Angle.ofArcseconds(1)))));
        assertThat(FixSolver.solve(site, RIG, KnownAxis.AIR, steps)).isInstanceOf(Fix.Dubious.class);

        steps.add(now.step(7, now.driftOnMeridian(15, Angle.ofArcseconds(1))));
        Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, steps);

        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.state().axis().separation(now.axis()).arcminutes()).isLessThan(0.5);
    }

    @Test
    void thirdSighting_decidesWhichOfTwoIsWrong() {
        Site site = Site.ofDegrees(54.60, 0, 240);
        KnownAxis known = KnownAxis.exactly(site, degrees(1, 0.5));
        List<Step> steps = List.of(
                known.step(2, known.scale(Angle.ofDegrees(0.5))),
                known.step(3, KnownAxis.reversed(known.driftOnMeridian(5, Angle.ofArcseconds(4)))),
                known.step(4, known.driftOnMeridian(5, Angle.ofArcseconds(4))),
                known.step(5, known.driftOnMeridian(5, Angle.ofArcseconds(4))));

        Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, steps);

        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreement(3).orElseThrow().contradictory()).isTrue();
        assertThat(fix.agreement(3).orElseThrow().likelyCause()).contains("north and south were swapped");
    }

    @Test
    void unexplainedOutlier_isSetAsideWithoutACause() {
        Site site = Site.ofDegrees(-43.95, 0, 710);
        KnownAxis known = KnownAxis.exactly(site, degrees(1, 0.5));
        List<Step> steps = known.consistentNight();
        StillPoint elsewhere = new StillPoint(
                SkySetting.EVENING,
                known.star(30, 89.5),
                ReadLength.ofField(0.45, FINDER),
                new ClockDirection(3),
                View.of(Orientation.ERECT),
                EYE_IN_FINDER);
        steps.add(known.step(20, elsewhere));

        Agreement agreement =
                FixSolver.solve(site, RIG, KnownAxis.AIR, steps).agreement(20).orElseThrow();

        assertThat(agreement.contradictory()).isTrue();
        assertThat(agreement.likelyCause()).isEmpty();
        assertThat(agreement.kind()).isEqualTo("still point");
        assertThat(agreement.figures()).isEqualTo(2);
    }

    /** The limit for one sighting is 1 in 1000; the iteration may add to that, but not much. */
    @Test
    void consistentNights_haveFalseAlarmsInUnderOnePercentOfSightings() {
        int sightings = 0;
        int alarms = 0;
        for (long seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            double latitudeDeg = (seed % 2 == 0 ? 1 : -1) * (10 + 55 * random.nextDouble());
            Site site = Site.ofDegrees(latitudeDeg, 0, 200);
            KnownAxis known = new KnownAxis(
                    site,
                    KnownAxis.exactly(site, degrees(4 * random.nextGaussian(), 4 * random.nextGaussian()))
                            .axis(),
                    random::nextGaussian);
            List<Step> steps = known.consistentNight();
            Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, steps);
            sightings += fix.agreements().size();
            alarms += (int)
                    fix.agreements().stream().filter(Agreement::contradictory).count();
        }
        assertThat(sightings).isEqualTo(1800);
        assertThat(alarms).isLessThanOrEqualTo(18);
    }
}
