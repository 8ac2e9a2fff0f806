package polewright.sky.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

@Tag("slow")
class SunGuardTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);
    private static final ObservingMoment NOON = moment(LARKFELL, "2026-06-20T12:00:00Z");
    private static final SunGuard GUARD = SunGuard.at(NOON);
    private static final int BRUTE_FORCE_STEPS = 6_000;

    private static ObservingMoment moment(Site site, String utc) {
        return ObservingMoment.of(site, SkyTime.of(Instant.parse(utc)), Weather.AIRLESS);
    }

    private static AirlessDirection direction(Vector3D v) {
        return new AirlessDirection(v.normalize());
    }

    private static AirlessDirection random(SplittableRandom random) {
        return AirlessDirection.of(
                Angle.ofDegrees(random.nextDouble(360)), new Angle(Math.asin(random.nextDouble(-1, 1))));
    }

    /** A direction at an angle from the Sun, at a given position angle. */
    private static AirlessDirection atDistance(AirlessDirection sun, Angle apart, double side) {
        Vector3D across = sun.enu().orthogonal();
        Vector3D other = Vector3D.crossProduct(sun.enu(), across);
        Vector3D sideways = new Vector3D(Math.cos(side), across, Math.sin(side), other);
        return new AirlessDirection(new Vector3D(apart.cos(), sun.enu(), apart.sin(), sideways));
    }

    static Stream<Arguments> slews() {
        var random = new SplittableRandom(16);
        Stream<Arguments> anywhere = Stream.generate(() -> Arguments.of(random(random), random(random)))
                .limit(40);
        Stream<Arguments> acrossTheSun = Stream.generate(() -> {
                    double side = random.nextDouble(2 * Math.PI);
                    return Arguments.of(
                            atDistance(GUARD.sun(), Angle.ofDegrees(random.nextDouble(1, 80)), side),
                            atDistance(GUARD.sun(), Angle.ofDegrees(random.nextDouble(1, 80)), side + 2.9));
                })
                .limit(40);
        Stream<Arguments> short_ = Stream.generate(() -> {
                    AirlessDirection from = random(random);
                    return Arguments.of(from, atDistance(from, Angle.ofArcminutes(random.nextDouble(0.01, 30)), 1));
                })
                .limit(20);
        return Stream.of(anywhere, acrossTheSun, short_).flatMap(s -> s);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-7, 0.001, 0.2, 1, 30, 90, 179.9})
    void distanceIsFromTheLimb(double degrees) {
        AirlessDirection there = atDistance(GUARD.sun(), Angle.ofDegrees(degrees), 0.4);
        assertThat(GUARD.distance(there).plus(GUARD.semiDiameter()).degrees()).isCloseTo(degrees, within(1e-12));
    }

    @Test
    void distanceInsideTheDiscIsNegative() {
        assertThat(GUARD.distance(GUARD.sun())).isEqualTo(GUARD.semiDiameter().negated());
        assertThat(GUARD.semiDiameter().degrees()).isCloseTo(0.2622, within(0.001));
    }

    @ParameterizedTest
    @MethodSource("slews")
    void nearestOnArc_agreesWithBruteForce(AirlessDirection from, AirlessDirection to) {
        double whole = Vector3D.angle(from.enu(), to.enu());
        Angle nearest = IntStream.rangeClosed(0, BRUTE_FORCE_STEPS)
                .mapToObj(i -> {
                    double along = whole * i / BRUTE_FORCE_STEPS;
                    return GUARD.distance(
                            direction(new Vector3D(Math.sin(whole - along), from.enu(), Math.sin(along), to.enu())));
                })
                .min(Angle::compareTo)
                .orElseThrow();
        // The steps are at most 0.03 degrees long, so the best of them may miss the nearest point by half that.
        assertThat(GUARD.nearestOnArc(from, to).degrees())
                .isBetween(nearest.degrees() - 0.016, nearest.degrees() + 1e-9);
    }

    @ParameterizedTest
    @MethodSource("slews")
    void nearestOnArc_isSymmetric(AirlessDirection from, AirlessDirection to) {
        assertThat(GUARD.nearestOnArc(from, to).degrees())
                .isCloseTo(GUARD.nearestOnArc(to, from).degrees(), within(1e-10));
    }

    @Test
    void slewAcrossTheSun_isDetected_withBothEndsFarAway() {
        AirlessDirection left = atDistance(GUARD.sun(), Angle.ofDegrees(40), 0);
        AirlessDirection right = atDistance(GUARD.sun(), Angle.ofDegrees(40), Math.PI);
        assertThat(GUARD.distance(left).degrees()).isGreaterThan(39);
        assertThat(GUARD.distance(right).degrees()).isGreaterThan(39);
        assertThat(GUARD.nearestOnArc(left, right).degrees())
                .isCloseTo(-GUARD.semiDiameter().degrees(), within(1e-6));
    }

    @Test
    void slewOfZeroLength_isAsNearAsItsDirection() {
        AirlessDirection there = atDistance(GUARD.sun(), Angle.ofDegrees(12), 2);
        assertThat(GUARD.nearestOnArc(there, there)).isEqualTo(GUARD.distance(there));
    }

    @Test
    void path_isAsNearAsItsNearestLeg() {
        AirlessDirection far = atDistance(GUARD.sun(), Angle.ofDegrees(60), 1.75);
        AirlessDirection left = atDistance(GUARD.sun(), Angle.ofDegrees(20), 0.5);
        AirlessDirection right = atDistance(GUARD.sun(), Angle.ofDegrees(20), 3);
        assertThat(GUARD.nearestOnPath(List.of(far, left, right, far))).isEqualTo(GUARD.nearestOnArc(left, right));
        assertThat(GUARD.nearestOnPath(List.of(far))).isEqualTo(GUARD.distance(far));
    }

    @Test
    void emptyPath_isRejected() {
        assertThatThrownBy(() -> GUARD.nearestOnPath(List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("an empty path is nowhere near anything");
    }

    static Stream<Arguments> standingTelescopes() {
        var random = new SplittableRandom(15);
        return Stream.of(NOON, moment(TUSSOCK_FLAT, "2026-12-20T22:00:00Z"))
                .flatMap(moment -> Stream.generate(() -> {
                            HourAnglePlace sun =
                                    moment.hourAngle(SunGuard.at(moment).sun());
                            var place = new HourAnglePlace(
                                    sun.hourAngle().plus(Angle.ofDegrees(random.nextDouble(-40, 80))),
                                    sun.declination().plus(Angle.ofDegrees(random.nextDouble(-20, 20))));
                            return Arguments.of(
                                    moment, moment.airless(place), Duration.ofMinutes(random.nextInt(0, 240)));
                        })
                        .limit(25));
    }

    @ParameterizedTest
    @MethodSource("standingTelescopes")
    void sunPassingAStationaryTelescope_isPredicted(ObservingMoment moment, AirlessDirection still, Duration duration) {
        SunGuard now = SunGuard.at(moment);
        double nearest = IntStream.rangeClosed(0, (int) duration.toMinutes())
                .mapToDouble(minute -> {
                    ObservingMoment then = ObservingMoment.of(
                            moment.site(),
                            SkyTime.of(moment.time().utc().plus(Duration.ofMinutes(minute))),
                            Weather.AIRLESS);
                    return SunGuard.at(then).distance(still).degrees();
                })
                .min()
                .orElseThrow();
        // The true Sun, minute by minute: it lags by 0.041 degrees an hour and moves 0.125 degrees a minute.
        assertThat(now.nearestWhileStationary(still, duration).degrees()).isCloseTo(nearest, within(0.2));
    }

    @Test
    void larkfellInSummer_sunIsUpAtNoonAndDownAtMidnight() {
        assertThat(GUARD.isSunUp()).isTrue();
        assertThat(SunGuard.at(moment(LARKFELL, "2026-06-21T00:00:00Z")).isSunUp())
                .isFalse();
    }

    @Test
    void sunIsUpAtTussockFlat_whenItIsDownAtLarkfell() {
        String utc = "2026-12-20T23:00:00Z";
        assertThat(SunGuard.at(moment(TUSSOCK_FLAT, utc)).isSunUp()).isTrue();
        assertThat(SunGuard.at(moment(LARKFELL, utc)).isSunUp()).isFalse();
    }

    @Test
    void distanceToAStar_agreesWithTheEphemeris() {
        ApparentPlace place = ApparentPlace.of(Angle.ofDegrees(100), Angle.ofDegrees(40));
        assertThat(GUARD.distance(NOON.airless(place))
                        .plus(GUARD.semiDiameter())
                        .degrees())
                .isCloseTo(Ephemeris.sunDistance(place, NOON).degrees(), within(1e-9));
    }
}
