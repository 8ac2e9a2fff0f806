package polewright.planning.tonight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.body.SunGuard;
import polewright.sky.daylight.Instrument;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.Horizon;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

@Tag("slow")
class AlignmentStarsTest {
    static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);
    private static final Instrument TUBE = Instrument.forFinding(200);

    private static Evening evening(Site site, Horizon horizon, String at) {
        return Evening.at(
                site,
                Weather.standardAt(site.heightMetres()),
                Rig.typicalForkOnWedge(),
                horizon,
                Instant.parse(at),
                Optional.empty());
    }

    private static AlignmentOutcome outcome(Evening evening, int count) {
        return AlignmentStars.of(evening, count, TUBE, Optional.empty());
    }

    private static AlignmentOutcome.Chosen chosen(Evening evening, int count) {
        return (AlignmentOutcome.Chosen) outcome(evening, count);
    }

    private static List<String> names(AlignmentOutcome.Chosen chosen) {
        return chosen.stars().stream().map(star -> star.seen().name()).toList();
    }

    /** Common practice: bright stars at altitudes of 25–70°, on both sides of the meridian, far from each other. */
    @ParameterizedTest
    @CsvSource({
        "N, 2026-11-25T18:30:00Z", "N, 2026-02-10T20:00:00Z", "N, 2026-05-01T22:30:00Z", "N, 2026-08-20T22:00:00Z",
        "S, 2026-11-25T10:30:00Z", "S, 2026-02-10T10:00:00Z", "S, 2026-05-01T08:30:00Z", "S, 2026-08-20T09:00:00Z"
    })
    void threeWellSpreadBrightStars_areChosen_inEitherHemisphere(String hemisphere, String at) {
        AlignmentOutcome.Chosen chosen =
                chosen(evening(hemisphere.equals("N") ? LARKFELL : TUSSOCK_FLAT, Horizon.OPEN, at), 3);

        assertThat(chosen.stars()).hasSize(3).allSatisfy(star -> {
            assertThat(star.seen().altitude().degrees()).isBetween(20.0, 75.0);
            assertThat(star.seen().magnitude()).isLessThan(2.3);
            assertThat(star.isSeenByEye()).isTrue();
        });
        assertThat(chosen.stars()).anyMatch(s -> s.seen().place().hourAngle().radians() > 0);
        assertThat(chosen.stars()).anyMatch(s -> s.seen().place().hourAngle().radians() < 0);
        assertThat(chosen.stars()
                        .get(0)
                        .seen()
                        .separation(chosen.stars().get(1).seen())
                        .degrees())
                .isGreaterThan(20);
        assertThat(chosen.visibleByEyeFrom()).isEmpty();
    }

    @Test
    void moreStars_leaveASmallerError() {
        double before = Double.POSITIVE_INFINITY;
        for (int count = 1; count <= 6; count++) {
            double error = chosen(evening(LARKFELL, Horizon.OPEN, "2026-11-25T18:30:00Z"), count)
                    .expectedError()
                    .orElseThrow()
                    .arcminutes();
            assertThat(error).as(count + " stars").isLessThan(before);
            before = error;
        }
    }

    @Test
    void result_isDeterministic() {
        Evening evening = evening(LARKFELL, Horizon.OPEN, "2026-11-25T18:30:00Z");
        assertThat(outcome(evening, 4)).isEqualTo(outcome(evening, 4));
    }

    @Test
    void starsBelowTheLocalHorizon_areNotChosen() {
        Horizon westHidden = new Horizon(List.of(point(0, 0), point(179, 0), point(180, 85), point(359, 85)));
        AlignmentOutcome.Chosen chosen = chosen(evening(LARKFELL, westHidden, "2026-11-25T18:30:00Z"), 3);

        assertThat(chosen.stars())
                .hasSize(3)
                .allSatisfy(star ->
                        assertThat(star.seen().direction().azimuth().degrees()).isLessThan(180));
    }

    @Test
    void walledInSite_nothingIsReachable() {
        Horizon walls = new Horizon(List.of(point(0, 89), point(180, 89)));
        AlignmentOutcome outcome = outcome(evening(LARKFELL, walls, "2026-11-25T18:30:00Z"), 3);

        assertThat(outcome).isInstanceOfSatisfying(AlignmentOutcome.Nothing.class, nothing -> {
            assertThat(nothing.exclusions().get(ExclusionReason.OUT_OF_REACH)).isGreaterThan(10);
            assertThat(nothing.visibleByEyeFrom()).isEmpty();
        });
    }

    private static Horizon.Point point(double azimuthDeg, double altitudeDeg) {
        return new Horizon.Point(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg));
    }

    /**
     * On 3 January 2026 the Moon was full, in Gemini (common knowledge of almanacs): so not Pollux, which was next to
     * it.
     */
    @ParameterizedTest
    @ValueSource(strings = {"2026-01-03T22:00:00Z", "2026-01-04T01:00:00Z", "2026-03-03T22:00:00Z"})
    void starsNearAFullMoon_areNotChosen(String at) {
        Evening evening = evening(LARKFELL, Horizon.OPEN, at);
        ObservingMoment moment = evening.moment(evening.now());
        AirlessDirection moon = moment.airless(SolarSystem.apparent(SolarSystemBody.MOON, moment));

        assertThat(moon.altitude().degrees()).isPositive();
        assertThat(chosen(evening, 8).stars())
                .allSatisfy(star -> assertThat(Math.toDegrees(
                                Vector3D.angle(star.seen().airless().enu(), moon.enu())))
                        .isGreaterThan(19.5));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-06-21T12:00:00Z",
                "2026-03-20T09:00:00Z",
                "2026-09-10T15:00:00Z",
                "2026-11-25T12:30:00Z",
                "2026-12-21T12:00:00Z",
                "2026-08-01T07:00:00Z"
            })
    void byDay_starsAndSlewsKeepAwayFromTheSun(String at) {
        int checked = 0;
        for (Site site : List.of(LARKFELL, TUSSOCK_FLAT, Site.ofDegrees(10, -2.90, 0), Site.ofDegrees(-30, 170, 0))) {
            Evening evening = evening(site, Horizon.OPEN, at);
            ObservingMoment moment = evening.moment(evening.now());
            SunGuard sun = SunGuard.at(moment);
            if (sun.isSunUp() && outcome(evening, 3) instanceof AlignmentOutcome.Chosen chosen) {
                assertThat(chosen.isSunUp()).isTrue();
                assertThat(chosen.stars()).allSatisfy(star -> {
                    assertThat(sun.distance(star.seen().airless()).degrees()).isGreaterThanOrEqualTo(30);
                    assertThat(star.isSeenByEye()).isFalse();
                });
                assertThat(nearestDuringSlews(chosen, moment, sun)).isGreaterThan(29.9);
                checked++;
            }
        }
        assertThat(checked).as("sites in daylight with stars").isPositive();
    }

    /** Follows every move from home in steps of a thousandth of it, independently of the planning code. */
    private static double nearestDuringSlews(AlignmentOutcome.Chosen chosen, ObservingMoment moment, SunGuard sun) {
        double hourAngle = 0;
        double declination = 90 * moment.site().hemisphereSign();
        double nearest = 180;
        for (AlignmentStar star : chosen.stars()) {
            double turn = star.move().longitude().degrees();
            double tilt = star.move().latitude().degrees();
            double longest = Math.max(Math.abs(turn), Math.abs(tilt));
            for (int i = 0; i <= 2000; i++) {
                double first = Math.min(1, i / 1000.0);
                double second = Math.max(0, i / 1000.0 - 1);
                double along = longest * i / 2000;
                double turned = switch (star.move().order()) {
                    case BOTH_TOGETHER -> Math.copySign(Math.min(Math.abs(turn), along), turn);
                    case LOWER_AXIS_FIRST -> turn * first;
                    case UPPER_AXIS_FIRST -> turn * second;
                };
                double tilted = switch (star.move().order()) {
                    case BOTH_TOGETHER -> Math.copySign(Math.min(Math.abs(tilt), along), tilt);
                    case LOWER_AXIS_FIRST -> tilt * second;
                    case UPPER_AXIS_FIRST -> tilt * first;
                };
                AirlessDirection there = moment.airless(
                        new HourAnglePlace(Angle.ofDegrees(hourAngle + turned), Angle.ofDegrees(declination + tilted)));
                nearest = Math.min(nearest, sun.distance(there).degrees());
            }
            hourAngle += turn;
            declination += tilt;
            assertThat(hourAngle).isCloseTo(star.seen().place().hourAngle().degrees(), within(1e-6));
        }
        return nearest;
    }

    @Test
    void byDay_smallTelescopeHasFewerStarsThanALargeOne() {
        Evening noon = evening(LARKFELL, Horizon.OPEN, "2026-06-21T12:00:00Z");
        ObservingMoment moment = noon.moment(noon.now());
        StarsInView stars = StarsInView.at(moment);
        int small = StarCandidates.of(stars, noon.reach(), moment, Instrument.forFinding(60))
                .usable()
                .size();
        int large = StarCandidates.of(stars, noon.reach(), moment, Instrument.forFinding(300))
                .usable()
                .size();
        assertThat(small).isLessThan(large);
    }

    @Test
    void tubeNearTheSun_isNotSlewed() {
        AlignmentOutcome outcome = AlignmentStars.of(
                evening(LARKFELL, Horizon.OPEN, "2026-06-21T12:00:00Z"), 2, TUBE, Optional.of(SolarSystemBody.SUN));

        assertThat(outcome)
                .isInstanceOfSatisfying(
                        AlignmentOutcome.Nothing.class,
                        nothing -> assertThat(nothing.isBlockedBySun()).isTrue());
    }

    /**
     * Larkfell, 25 November: sunset 15:53; the first stars are visible within three quarters of an hour (common
     * practice).
     */
    @Test
    void beforeDark_givesTheTimeWhenStarsBecomeVisible() {
        Instant out = outcome(evening(LARKFELL, Horizon.OPEN, "2026-11-25T13:00:00Z"), 3)
                .visibleByEyeFrom()
                .orElseThrow();
        assertThat(out).isBetween(Instant.parse("2026-11-25T15:55:00Z"), Instant.parse("2026-11-25T16:45:00Z"));
    }

    @Test
    void midnightSun_noStarsBecomeVisibleToTheEye() {
        Site far = Site.ofDegrees(69, 20, 10);
        AlignmentOutcome outcome = outcome(evening(far, Horizon.OPEN, "2026-06-20T23:00:00Z"), 3);
        assertThat(outcome.visibleByEyeFrom()).isEmpty();
    }

    /**
     * 60° N at midsummer: the Sun 6.5° below the horizon at midnight; the brightest stars are still visible (common
     * practice).
     */
    @Test
    void summerTwilight_brightestStarsAreVisible() {
        Site north = Site.ofDegrees(60, 0, 10);
        AlignmentOutcome.Chosen chosen = chosen(evening(north, Horizon.OPEN, "2026-06-21T00:00:00Z"), 3);
        assertThat(names(chosen)).containsAnyOf("Vega", "Arcturus");
        assertThat(chosen.stars()).allMatch(AlignmentStar::isSeenByEye);
    }

    /** An upright fork has different errors from those of the pointing model: stars, but no go-to error. */
    @Test
    void uprightFork_getsStarsButNoGoToError() {
        Rig fork = Rig.typicalForkOnWedge();
        Rig upright = new Rig(
                fork.name(),
                MountKind.FORK_UPRIGHT,
                fork.azimuthScrew(),
                fork.altitudeScrew(),
                fork.levelSigma(),
                fork.clampSigma(),
                fork.optics());
        Evening evening = Evening.at(
                LARKFELL,
                Weather.standardAt(LARKFELL.heightMetres()),
                upright,
                Horizon.OPEN,
                Instant.parse("2026-11-25T18:30:00Z"),
                Optional.empty());

        AlignmentOutcome.Chosen chosen = chosen(evening, 2);
        assertThat(chosen.stars()).hasSize(2);
        assertThat(chosen.expectedError()).isEmpty();
    }

    @Test
    void zeroAndTooManyStars_areRefused() {
        Evening evening = evening(LARKFELL, Horizon.OPEN, "2026-11-25T18:30:00Z");
        assertThatThrownBy(() -> outcome(evening, 0))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("0 alignment stars is outside 1 to 8");
        assertThatThrownBy(() -> outcome(evening, 9)).isInstanceOf(InputRefused.class);
    }
}
