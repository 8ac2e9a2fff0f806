package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.angle.Angle;
import polewright.sky.time.SkyTime;

/**
 * Conversions to another frame and back return the same direction: both hemispheres, the poles, the equator, the 0h
 * wrap.
 */
@Tag("slow")
class DirectionRoundTripTest {
    private static final SkyTime TIME = SkyTime.of(Instant.parse("2026-11-20T21:00:00Z"));
    private static final double NOTHING_ARCSEC = 1e-8;
    private static final double REFRACTION_ARCSEC = 0.001;

    static Stream<ObservingMoment> moments() {
        return Stream.of(54.60, -43.95, 0.0, 90.0, -90.0, 1e-9, 89.9999)
                .map(latitude ->
                        ObservingMoment.of(Site.ofDegrees(latitude, 170.4, 240), TIME, new Weather(980, -4, 0.7)));
    }

    static Stream<Arguments> momentsAndPlaces() {
        var random = new SplittableRandom(24);
        return moments()
                .flatMap(moment -> Stream.concat(
                                Stream.of(
                                        new HourAnglePlace(Angle.ZERO, Angle.ZERO),
                                        new HourAnglePlace(Angle.HALF_TURN, Angle.ofDegrees(40)),
                                        new HourAnglePlace(new Angle(-1e-12), Angle.ofDegrees(-40)),
                                        new HourAnglePlace(Angle.ofDegrees(30), Angle.ofDegrees(89.99999)),
                                        new HourAnglePlace(Angle.ofDegrees(30), Angle.ofDegrees(-89.99999))),
                                Stream.generate(() -> new HourAnglePlace(
                                                Angle.ofDegrees(random.nextDouble(-180, 180)),
                                                Angle.ofDegrees(random.nextDouble(-90, 90))))
                                        .limit(25))
                        .map(place -> Arguments.of(moment, place)));
    }

    private static Vector3D unit(HourAnglePlace place) {
        return Spherical.unit(place.hourAngle(), place.declination());
    }

    private static double arcsec(Vector3D u, Vector3D v) {
        return new Angle(Vector3D.angle(u, v)).arcseconds();
    }

    @ParameterizedTest
    @MethodSource("momentsAndPlaces")
    void hourAngleAndBackFromTheHorizon(ObservingMoment moment, HourAnglePlace place) {
        HourAnglePlace back = moment.hourAngle(moment.airless(place));
        assertThat(arcsec(unit(back), unit(place))).isLessThan(NOTHING_ARCSEC);
    }

    @ParameterizedTest
    @MethodSource("momentsAndPlaces")
    void hourAngleAndBackFromTheApparentPlace(ObservingMoment moment, HourAnglePlace place) {
        HourAnglePlace back = moment.hourAngle(moment.apparent(place));
        assertThat(arcsec(unit(back), unit(place))).isLessThan(NOTHING_ARCSEC);
    }

    @ParameterizedTest
    @MethodSource("momentsAndPlaces")
    void refractionAndBack(ObservingMoment moment, HourAnglePlace place) {
        AirlessDirection direction = moment.airless(place);
        AirlessDirection back = moment.airless(moment.refracted(direction));
        assertThat(arcsec(back.enu(), direction.enu())).isLessThan(REFRACTION_ARCSEC);
    }

    @ParameterizedTest
    @MethodSource("momentsAndPlaces")
    void refractionLiftsButKeepsAzimuth(ObservingMoment moment, HourAnglePlace place) {
        AirlessDirection direction = moment.airless(place);
        RefractedDirection seen = moment.refracted(direction);
        assertThat(seen.altitude()).isGreaterThanOrEqualTo(direction.altitude().minus(Angle.ofArcseconds(1e-9)));
        double turn = seen.azimuth().minus(direction.azimuth()).wrappedSigned().arcseconds()
                * direction.altitude().cos();
        assertThat(Math.abs(turn)).isLessThan(NOTHING_ARCSEC);
    }

    @ParameterizedTest
    @MethodSource("momentsAndPlaces")
    void azimuthAndAltitudeRebuildTheDirection(ObservingMoment moment, HourAnglePlace place) {
        AirlessDirection direction = moment.airless(place);
        assertThat(arcsec(
                        AirlessDirection.of(direction.azimuth(), direction.altitude())
                                .enu(),
                        direction.enu()))
                .isLessThan(NOTHING_ARCSEC);
    }

    @ParameterizedTest
    @MethodSource("moments")
    void rightAscensionCrossesZeroHoursWithoutAJump(ObservingMoment moment) {
        double sidereal = moment.siderealTime().degrees();
        HourAnglePlace before = moment.hourAngle(ApparentPlace.of(Angle.ofDegrees(-1e-6), Angle.ZERO));
        HourAnglePlace after = moment.hourAngle(ApparentPlace.of(Angle.ofDegrees(1e-6), Angle.ZERO));
        assertThat(before.hourAngle().minus(after.hourAngle()).degrees()).isBetween(1.9e-6, 2.1e-6);
        assertThat(after.hourAngle().degrees()).isBetween(sidereal - 360.1, sidereal + 0.1);
    }

    @Test
    void mirrorSiteSeesTheMirrorSky() {
        ObservingMoment north = ObservingMoment.of(Site.ofDegrees(50, 0, 0), TIME, Weather.AIRLESS);
        ObservingMoment south = ObservingMoment.of(Site.ofDegrees(-50, 0, 0), TIME, Weather.AIRLESS);
        var random = new SplittableRandom(2);
        for (int i = 0; i < 100; i++) {
            Angle hourAngle = Angle.ofDegrees(random.nextDouble(-180, 180));
            Angle declination = Angle.ofDegrees(random.nextDouble(-90, 90));
            Vector3D seenNorth =
                    north.airless(new HourAnglePlace(hourAngle, declination)).enu();
            Vector3D seenSouth = south.airless(new HourAnglePlace(hourAngle, declination.negated()))
                    .enu();
            Vector3D mirrored = new Vector3D(seenSouth.getX(), -seenSouth.getY(), seenSouth.getZ());
            assertThat(arcsec(seenNorth, mirrored)).isLessThan(NOTHING_ARCSEC);
        }
    }
}
