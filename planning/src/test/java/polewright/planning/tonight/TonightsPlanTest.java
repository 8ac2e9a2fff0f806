package polewright.planning.tonight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.work.WorkPreset;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.reach.Barrier;
import polewright.mount.reach.PointingLimits;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.DeepSkyList;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.body.SunGuard;
import polewright.sky.place.Horizon;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;

@Tag("slow")
class TonightsPlanTest {
    static final Site LARKFELL = Site.ofDegrees(54.6, -2.9, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.4, 710);
    private static final Horizon HILLS = new Horizon(List.of(
            new Horizon.Point(Angle.ofDegrees(60), Angle.ofDegrees(8)),
            new Horizon.Point(Angle.ofDegrees(120), Angle.ofDegrees(35)),
            new Horizon.Point(Angle.ofDegrees(240), Angle.ofDegrees(12))));

    static final Observing LOOKING = looking(1);
    private static final Observing NARROW = looking(0.3);

    private static Observing looking(double fieldDeg) {
        return new Observing(
                Purpose.EYES, Set.of(WorkPreset.CASUAL_LOOK), Angle.ofDegrees(fieldDeg), Duration.ofMinutes(30));
    }

    private static Evening evening(Site site, String now) {
        return Evening.at(
                site,
                Weather.standardAt(site.heightMetres()),
                Rig.typicalForkOnWedge(),
                HILLS,
                Instant.parse(now),
                Optional.empty());
    }

    static SkyBody object(String name) {
        return new FixedStar(
                DeepSkyList.bundled().named(name).label(),
                DeepSkyList.bundled().named(name).place());
    }

    static List<Target> with(SkyBody... wanted) {
        List<Target> targets = new ArrayList<>(Target.ofLists());
        for (SkyBody body : wanted) {
            targets.removeIf(target -> target.label().equals(body.label()));
            targets.add(Target.wanted(body));
        }
        return targets;
    }

    @ParameterizedTest
    @CsvSource({"54.6, -2.9, 2026-12-10T14:00:00Z", "-43.95, 170.4, 2026-06-14T03:00:00Z", "0, 30, 2026-03-20T12:00:00Z"
    })
    void plan_keepsToTheWindows_withoutOverlaps(double latitude, double longitude, String now) {
        Evening evening = evening(Site.ofDegrees(latitude, longitude, 200), now);
        TonightsPlan tonight = TonightsPlan.of(evening, LOOKING, Target.ofLists(), 8);
        PointingLimits reach = evening.reach();
        assertThat(tonight.plan().slots()).hasSizeGreaterThan(4);
        Instant ended = Instant.EPOCH;
        for (NightPlan.Slot slot : tonight.plan().slots()) {
            assertThat(slot.when().from()).isAfterOrEqualTo(ended);
            assertThat(slot.when().length()).isEqualTo(Duration.ofMinutes(30));
            for (int minutes = 0; minutes <= 30; minutes += 5) {
                Instant at = slot.when().from().plus(Duration.ofMinutes(minutes));
                assertThat(reach.canReach(slot.showing().path().at(at))).isTrue();
                ObservingMoment moment = evening.moment(at);
                assertThat(SunGuard.at(moment).isSunUp()).isFalse();
            }
            ended = slot.when().to();
        }
    }

    /** The ends of each window against the object's actual position every minute. */
    @ParameterizedTest
    @CsvSource({"M 42", "M 31", "M 13", "M 46"})
    void windows_agreeWithCheckingEveryMinute(String name) {
        Evening evening = evening(LARKFELL, "2026-12-10T14:00:00Z");
        SkyBody body = object(name);
        TargetOutcome outcome = new TargetFinder(evening, LOOKING).find(Target.wanted(body));
        Interval dark = evening.darkness()
                .below(polewright.sky.almanac.SunDepth.ASTRONOMICAL)
                .orElseThrow();
        List<Interval> windows =
                outcome instanceof TargetOutcome.Shows shows ? shows.showing().windows() : List.of();
        PointingLimits reach = evening.reach();
        for (Instant at = dark.from(); at.isBefore(dark.to()); at = at.plusSeconds(60)) {
            ObservingMoment moment = evening.moment(at);
            boolean isOpen = reach.canReach(moment.hourAngle(Ephemeris.apparent(body, moment)));
            Instant when = at;
            boolean nearAnEnd = windows.stream()
                    .anyMatch(w -> Duration.between(w.from(), when).abs().toSeconds() < 10
                            || Duration.between(w.to(), when).abs().toSeconds() < 10);
            if (!nearAnEnd) {
                assertThat(windows.stream().anyMatch(w -> w.contains(when)))
                        .as("%s at %s", name, at)
                        .isEqualTo(isOpen);
            }
        }
    }

    /** The Moon moves by its own diameter in an hour: its window must be its own, not that of a fixed star. */
    @Test
    void windowOfTheMoon_followsTheMoon() {
        Evening evening = evening(TUSSOCK_FLAT, "2026-06-25T03:00:00Z");
        TargetOutcome.Shows shows =
                (TargetOutcome.Shows) new TargetFinder(evening, LOOKING).find(Target.wanted(SolarSystemBody.MOON));
        for (Interval window : shows.showing().windows()) {
            for (Instant at : List.of(window.from(), window.to())) {
                ObservingMoment moment = evening.moment(at);
                var real = moment.hourAngle(Ephemeris.apparent(SolarSystemBody.MOON, moment));
                var pathed = shows.showing().path().at(at);
                assertThat(real.hourAngle()
                                .minus(pathed.hourAngle())
                                .wrappedSigned()
                                .abs()
                                .arcminutes())
                        .isLessThan(6);
            }
        }
    }

    /**
     * Also for targets whose best time is at the start or end of a window, between the times at which the Moon was
     * computed.
     */
    @ParameterizedTest
    @CsvSource({"54.6, -2.9, 2026-11-25T14:00:00Z", "-43.95, 170.4, 2026-06-25T03:00:00Z"})
    void moonDistance_isThatAtTheBestTime(double latitude, double longitude, String now) {
        Evening evening = evening(Site.ofDegrees(latitude, longitude, 200), now);
        List<Observability> showings = TargetFinder.ranked(
                new TargetFinder(evening, LOOKING).find(Target.ofLists().subList(0, 400)));
        assertThat(showings).hasSizeGreaterThan(100);
        for (Observability showing : showings) {
            ObservingMoment moment = evening.moment(showing.best());
            Angle real = Ephemeris.apparent(showing.target().body(), moment)
                    .separation(Ephemeris.apparent(SolarSystemBody.MOON, moment));
            // The Moon moves a tenth of a degree among the stars in ten minutes.
            assertThat(showing.moonDistance().degrees())
                    .as("%s at %s", showing.target().label(), showing.best())
                    .isCloseTo(real.degrees(), within(0.25));
        }
        TonightsPlan plan =
                TonightsPlan.of(evening, LOOKING, Target.ofLists().subList(0, 400), TonightsPlan.USUAL_COUNT);
        for (NightPlan.Slot slot : plan.plan().slots()) {
            Instant middle = slot.when().from().plus(slot.when().length().dividedBy(2));
            ObservingMoment moment = evening.moment(middle);
            double realDeg = Ephemeris.apparent(slot.showing().target().body(), moment)
                    .separation(Ephemeris.apparent(SolarSystemBody.MOON, moment))
                    .degrees();
            plan.moonDistance(slot.showing(), slot.when())
                    .ifPresent(distance -> assertThat(distance.degrees()).isCloseTo(realDeg, within(0.25)));
        }
    }

    @Test
    void targetsAskedFor_comeFirst_orAreListedAsMissed() {
        Evening evening = evening(LARKFELL, "2026-12-10T14:00:00Z");
        TonightsPlan tonight = TonightsPlan.of(evening, LOOKING, with(object("NGC 7331"), object("M 8")), 3);
        assertThat(tonight.plan().slots())
                .anyMatch(slot -> slot.showing().target().label().startsWith("NGC 7331"));
        assertThat(tonight.missed()).hasSize(1);
        TargetOutcome.OutOfReach missed =
                (TargetOutcome.OutOfReach) tonight.missed().get(0);
        assertThat(missed.target().label()).startsWith("M 8");
        assertThat(missed.barrier()).isInstanceOfAny(Barrier.BelowHorizon.class, Barrier.BehindSkyline.class);
    }

    @Test
    void midnightSun_nothingIsPlanned() {
        Evening evening = evening(Site.ofDegrees(69.6, 18.9, 10), "2026-06-20T12:00:00Z");
        TonightsPlan tonight = TonightsPlan.of(evening, LOOKING, with(object("M 13")), 8);
        assertThat(tonight.plan().slots()).isEmpty();
        assertThat(tonight.missed()).singleElement().isInstanceOf(TargetOutcome.TooLight.class);
    }

    /** In the deepest twilight of a northern summer night bright objects are still planned. */
    @Test
    void withoutAstronomicalDarkness_theDarkestHoursAreUsed() {
        Evening evening = evening(LARKFELL, "2026-05-20T12:00:00Z");
        TonightsPlan tonight = TonightsPlan.of(evening, LOOKING, Target.ofLists(), 4);
        Interval deepest = evening.darkness()
                .below(polewright.sky.almanac.SunDepth.NAUTICAL)
                .orElseThrow();
        assertThat(tonight.plan().slots()).isNotEmpty();
        tonight.plan().slots().stream()
                .filter(slot -> !slot.showing().target().isBrightBody())
                .forEach(
                        slot -> assertThat(deepest.contains(slot.when().from())).isTrue());
    }

    @Test
    void plan_slewsNoFartherThanListOrder() {
        Evening evening = evening(LARKFELL, "2026-12-10T14:00:00Z");
        TonightsPlan tonight = TonightsPlan.of(evening, LOOKING, Target.ofLists(), 10);
        List<NightPlan.Slot> byName = new ArrayList<>(tonight.plan().slots());
        byName.sort(
                java.util.Comparator.comparing(slot -> slot.showing().target().label()));
        assertThat(tonight.plan().slewed().radians())
                .isLessThan(new NightPlan(byName).slewed().radians());
    }

    @Test
    void plan_isDeterministic() {
        Evening evening = evening(TUSSOCK_FLAT, "2026-06-14T03:00:00Z");
        List<String> once = labels(evening);
        assertThat(labels(evening)).isEqualTo(once);
    }

    private static List<String> labels(Evening evening) {
        return TonightsPlan.of(evening, LOOKING, Target.ofLists(), 8).plan().slots().stream()
                .map(slot -> slot.when() + slot.showing().target().label())
                .toList();
    }

    @Test
    void exposures_shrinkWithTheAxisOffset() {
        Evening evening = evening(LARKFELL, "2026-12-10T14:00:00Z");
        Observability showing = ((TargetOutcome.Shows)
                        new TargetFinder(evening, LOOKING).find(Target.wanted(object("M 31"))))
                .showing();
        assertThat(TonightsExposure.of(evening, showing)).isEmpty();
        double near = seconds(evening, showing, 1);
        double far = seconds(evening, showing, 200);
        assertThat(near).isGreaterThan(2 * far);
    }

    private static double seconds(Evening evening, Observability showing, double upArcmin) {
        Rig rig = evening.rig().withCameras(List.of(new Camera("main", 1200, 3.76, 6000, 4000)));
        Evening known = new Evening(
                evening.site(),
                evening.weather(),
                rig,
                evening.horizon(),
                evening.now(),
                evening.darkness(),
                Optional.of(new KnownAxis(AxisOffset.ofArcminutes(0, upArcmin), new OffsetCovariance(0.01, 0, 0.01))));
        return TonightsExposure.of(known, showing).orElseThrow().guided().toMillis() / 1000.0;
    }

    /** Its factors: higher, darker sky, a suitable size; the last two do not matter for a planet. */
    @Test
    void score_increasesWithAltitudeAndDarkness() {
        Target galaxy = Target.wanted(object("M 31"));
        assertThat(ObservabilityScore.of(galaxy, LOOKING).at(Angle.ofDegrees(60), 21.5))
                .isGreaterThan(ObservabilityScore.of(galaxy, LOOKING).at(Angle.ofDegrees(30), 21.5))
                .isGreaterThan(ObservabilityScore.of(galaxy, LOOKING).at(Angle.ofDegrees(60), 18))
                .isGreaterThan(ObservabilityScore.of(galaxy, NARROW).at(Angle.ofDegrees(60), 21.5));
        Target planet = Target.wanted(SolarSystemBody.SATURN);
        assertThat(ObservabilityScore.of(planet, LOOKING).at(Angle.ofDegrees(60), 18))
                .isCloseTo(ObservabilityScore.of(planet, LOOKING).at(Angle.ofDegrees(60), 21.5), within(1e-12));
    }
}
