package polewright.planning.tonight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.planning.tonight.TonightsPlanTest.LARKFELL;
import static polewright.planning.tonight.TonightsPlanTest.LOOKING;
import static polewright.planning.tonight.TonightsPlanTest.object;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.sky.almanac.SunDepth;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Horizon;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;

/** Scheduling by the Moon, the Sun, the work and the gaps. */
@Tag("slow")
class NightPlannerTest {
    /**
     * Moonlight affects a cluster, which is seen as stars, less than a glow of the same brightness (common practice).
     */
    @Test
    void moonlight_affectsAGalaxyMoreThanACluster() {
        assertThat(lossInMoonlight(object("M 29"))).isLessThan(0.35);
        assertThat(lossInMoonlight(object("M 33"))).isGreaterThan(0.8);
        assertThat(lossInMoonlight(SolarSystemBody.JUPITER)).isZero();
    }

    private static double lossInMoonlight(SkyBody body) {
        Target target = Target.wanted(body);
        return 1
                - ObservabilityScore.of(target, LOOKING).at(Angle.ofDegrees(60), 18)
                        / ObservabilityScore.of(target, LOOKING).at(Angle.ofDegrees(60), 21.5);
    }

    @Test
    void score_dependsOnTonightsWork() {
        Target planet = Target.wanted(SolarSystemBody.JUPITER);
        Target galaxy = Target.wanted(object("M 51"));
        assertThat(ratio(planet, galaxy, with(WorkPreset.PLANETS, 0.25)))
                .isGreaterThan(ratio(planet, galaxy, with(WorkPreset.CASUAL_LOOK, 0.25)))
                .isGreaterThan(ratio(planet, galaxy, with(WorkPreset.SHORT_SUBS, 0.25)));
        assertThat(ratio(planet, galaxy, with(WorkPreset.SHORT_SUBS, 0.25)))
                .isGreaterThan(ratio(planet, galaxy, with(WorkPreset.LONG_GUIDED_SUBS, 0.25)));
    }

    private static Observing with(WorkPreset kind, double fieldDeg) {
        return new Observing(
                kind.isShot() ? Purpose.CAMERA : Purpose.EYES,
                Set.of(kind),
                Angle.ofDegrees(fieldDeg),
                Duration.ofMinutes(30));
    }

    private static double ratio(Target one, Target other, Observing observing) {
        Angle altitude = Angle.ofDegrees(45);
        return ObservabilityScore.of(one, observing).at(altitude, 21)
                / ObservabilityScore.of(other, observing).at(altitude, 21);
    }

    /** The logged work decides; without any, the rig. */
    @Test
    void observing_followsTheWork_orElseTheRig() {
        Rig rig = Rig.typicalForkOnWedge().withCameras(List.of(new Camera("main", 1200, 3.76, 6000, 4000)));
        assertThat(Observing.of(rig, Optional.empty(), Optional.empty()).kinds())
                .containsExactly(WorkPreset.SHORT_SUBS);
        Work work = new Work(List.of(WorkPreset.PLANETS.with(rig), WorkPreset.LONG_GUIDED_SUBS.with(rig)));
        Observing camera = Observing.of(rig, Optional.of(work), Optional.empty());
        assertThat(camera.purpose()).isEqualTo(Purpose.CAMERA);
        assertThat(camera.kinds()).containsExactly(WorkPreset.LONG_GUIDED_SUBS);
        assertThat(camera.turn()).isEqualTo(Duration.ofHours(3));
        Observing eyes = Observing.of(rig, Optional.of(work), Optional.of(Purpose.EYES));
        assertThat(eyes.kinds()).containsExactly(WorkPreset.PLANETS);
        assertThat(eyes.turn()).isEqualTo(Duration.ofMinutes(30));
    }

    /** Venus and Mercury of that morning were once "best" at the minute of sunrise. */
    @ParameterizedTest
    @CsvSource({
        "54.6, -2.9, 2026-11-27T05:00:00Z",
        "54.6, -2.9, 2025-03-05T17:00:00Z",
        "-43.95, 170.4, 2026-10-05T06:00:00Z",
        "-43.95, 170.4, 2026-10-05T16:00:00Z",
    })
    void nothingIsAdvised_withinHalfAnHourOfSunsetOrSunrise(double latitude, double longitude, String now) {
        Evening evening = openEvening(latitude, longitude, now);
        TonightsPlan plan = TonightsPlan.usual(evening, LOOKING, Target.ofLists());
        plan.plan().slots().forEach(slot -> check(evening, slot.showing(), slot.when()));
        for (Observability other : plan.others()) {
            check(evening, other, new Interval(other.best(), other.best()));
        }
        List<Observability> all = TargetFinder.ranked(
                new TargetFinder(evening, LOOKING).find(Target.ofLists().subList(0, 8)));
        all.forEach(showing -> showing.windows().forEach(window -> check(evening, showing, window)));
    }

    private static void check(Evening evening, Observability showing, Interval when) {
        Interval night = evening.darkness().sunsetToSunrise();
        for (Instant at = when.from(); !at.isAfter(when.to()); at = at.plusSeconds(60)) {
            assertThat(Duration.between(night.from(), at).toSeconds())
                    .as("%s at %s, after sunset", showing.target().label(), at)
                    .isGreaterThanOrEqualTo(1800);
            assertThat(Duration.between(at, night.to()).toSeconds())
                    .as("%s at %s, before sunrise", showing.target().label(), at)
                    .isGreaterThanOrEqualTo(1800);
        }
    }

    private static Evening openEvening(double latitude, double longitude, String now) {
        // Hills would hide what is low near the Sun.
        Site site = Site.ofDegrees(latitude, longitude, 240);
        return Evening.at(
                site,
                Weather.standardAt(site.heightMetres()),
                Rig.typicalForkOnWedge(),
                Horizon.OPEN,
                Instant.parse(now),
                Optional.empty());
    }

    @Test
    void targetAskedForNearTheSun_isStillShown_withOneCaution() {
        Evening evening = openEvening(54.6, -2.9, "2026-11-27T07:00:00Z");
        TonightsPlan plan = TonightsPlan.of(
                evening,
                LOOKING,
                TonightsPlanTest.with(SolarSystemBody.VENUS, SolarSystemBody.MERCURY, SolarSystemBody.SATURN),
                3);
        assertThat(plan.missed())
                .extracting(outcome -> outcome.target().label())
                .doesNotContain("Venus", "Mercury");
        assertThat(plan.sunCautions()).singleElement().satisfies(caution -> {
            assertThat(caution.crossing()).isEqualTo(TwilightCaution.Crossing.RISES);
            assertThat(caution.at())
                    .isEqualTo(evening.darkness().sunsetToSunrise().to());
            assertThat(caution.near()).extracting(near -> near.target().label()).contains("Mercury");
        });
    }

    /**
     * Targets that need darkness wait for moonset if that is worthwhile; those insensitive to moonlight come before.
     */
    @Test
    void faintGlows_getMoonlessHours_planetsAndClustersMoonlitOnes() {
        Rig rig = Rig.typicalForkOnWedge().withCameras(List.of(new Camera("main", 700, 3.76, 6000, 4000)));
        Evening evening = Evening.at(
                LARKFELL,
                Weather.standardAt(240),
                rig,
                Horizon.OPEN,
                Instant.parse("2026-12-17T14:00:00Z"),
                Optional.empty());
        TonightsPlan plan =
                TonightsPlan.usual(evening, Observing.of(rig, Optional.empty(), Optional.empty()), Target.ofLists());
        assertThat(plan.moon().moonless()).isNotEmpty();
        double faintInMoonlight = 0;
        double faint = 0;
        for (NightPlan.Slot slot : plan.plan().slots()) {
            Target.Nature nature = slot.showing().target().nature();
            if (nature == Target.Nature.GLOW || nature == Target.Nature.NEBULA) {
                faint++;
                Instant middle = slot.when().from().plus(slot.when().length().dividedBy(2));
                faintInMoonlight += plan.moon().up().stream().anyMatch(up -> up.contains(middle)) ? 1 : 0;
            }
        }
        assertThat(faint).isGreaterThanOrEqualTo(3);
        assertThat(faintInMoonlight).isLessThanOrEqualTo(1);
    }

    /** Nothing good may be observable in an hour that is left free. */
    @ParameterizedTest
    @CsvSource({
        "54.6, -2.9, 2026-11-25T14:00:00Z",
        "-43.95, 170.4, 2026-06-25T03:00:00Z",
        "35, 20, 2026-09-20T14:00:00Z"
    })
    void noGapOfAnHourRemains_whileSomethingGoodIsUp(double latitude, double longitude, String now) {
        Evening evening = openEvening(latitude, longitude, now);
        TonightsPlan plan = TonightsPlan.usual(evening, LOOKING, Target.ofLists());
        TargetFinder finder = new TargetFinder(evening, LOOKING);
        Instant free = evening.darkness().below(SunDepth.NAUTICAL).orElseThrow().from();
        for (NightPlan.Slot slot : plan.plan().slots()) {
            for (Instant at = free;
                    !at.plus(Duration.ofHours(1)).isAfter(slot.when().from());
                    at = at.plusSeconds(600)) {
                Interval hour = new Interval(at, at.plusSeconds(1800));
                for (Observability other : plan.others()) {
                    double value = NightPlanner.value(other, hour, finder::score);
                    assertThat(Double.isNaN(value) || value < GapFilling.GOOD)
                            .as("%s at %s", other.target().label(), at)
                            .isTrue();
                }
            }
            free = slot.when().to();
        }
    }

    /** True transits, by day too, not the end of the dark hours: the hour angle is then zero. */
    @Test
    void transit_hasHourAngleZero_byDayToo() {
        Evening evening = openEvening(54.6, -2.9, "2026-11-25T14:00:00Z");
        List<Observability> all = TargetFinder.ranked(
                new TargetFinder(evening, LOOKING).find(Target.ofLists().subList(0, 200)));
        int byDay = 0;
        for (Observability showing : all) {
            ObservingMoment moment = evening.moment(showing.transit());
            assertThat(moment.hourAngle(Ephemeris.apparent(showing.target().body(), moment))
                            .hourAngle()
                            .arcminutes())
                    .as(showing.target().label())
                    .isCloseTo(0, within(0.3));
            assertThat(Duration.between(showing.best(), showing.transit()).abs())
                    .isLessThan(Duration.ofHours(13));
            byDay += evening.darkness().sunsetToSunrise().contains(showing.transit()) ? 0 : 1;
        }
        assertThat(byDay).isPositive();
    }
}
