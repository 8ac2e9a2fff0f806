package polewright.bench.independent.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * For an axis one minute of arc off the pole a star drifts by at most 15.041″/s · sin 1′, 0.2625″ a minute (common
 * practice).
 */
class TrackedStarTest {
    private static final Instant AT = Instant.parse("2026-10-01T22:00:00Z");
    private static final Duration WATCHED = Duration.ofMinutes(4);
    private static final double ARCSEC_PER_MINUTE_PER_ARCMIN = 15.041 * 60 * Math.sin(Math.toRadians(1 / 60.0));

    /** A star with this hour angle half-way through the watch, on the equator. */
    private static Star at(Place place, double hourAngleDeg) {
        SeenSky sky = SeenSky.of(place, AT.plus(WATCHED.dividedBy(2)), Air.NONE);
        Star zero = new Star("equinox", 0, 0, 0, 0, 0, 0, 1);
        double hourAngle = sky.hourAngle(sky.direction(zero));
        return new Star("a star", hourAngle - Math.toRadians(hourAngleDeg), 0, 0, 0, 0, 0, 1);
    }

    private static double arcsec(double latitudeDeg, Offset offset, double hourAngleDeg, ReticleLine line) {
        Place place = Place.ofDegrees(latitudeDeg, 10, 0);
        return Math.toDegrees(TrackedStar.northward(
                        place, Air.NONE, place.axis(offset), at(place, hourAngleDeg), AT, WATCHED, line))
                * 3600;
    }

    /** For an axis east of the pole a star on the meridian drifts south in the north, and north in the south. */
    @ParameterizedTest
    @CsvSource({"45, -1", "-45, 1"})
    void eastward_onTheMeridian(double latitudeDeg, int sign) {
        double expected = sign * 30 * 4 * ARCSEC_PER_MINUTE_PER_ARCMIN;
        assertThat(arcsec(latitudeDeg, new Offset(30, 0), 0, ReticleLine.BY_TRAIL))
                .isCloseTo(expected, within(0.3));
    }

    /** For an axis too high a star in the west drifts south in the north, one in the east north. */
    @ParameterizedTest
    @CsvSource({"90, -1", "-90, 1"})
    void tooHigh_sixHoursFromTheMeridian(double hourAngleDeg, int sign) {
        double expected = sign * 30 * 4 * ARCSEC_PER_MINUTE_PER_ARCMIN;
        assertThat(arcsec(45, new Offset(0, 30), hourAngleDeg, ReticleLine.BY_TRAIL))
                .isCloseTo(expected, within(0.5));
    }

    @ParameterizedTest
    @EnumSource(ReticleLine.class)
    void onThePole_nothingDrifts(ReticleLine line) {
        assertThat(arcsec(-43.95, new Offset(0, 0), 40, line)).isCloseTo(0, within(0.05));
    }

    /** Along the mount's own north the drift is the change of the mount's declination: the angle to its axis. */
    @Test
    void byTheMount_isTheChangeOfTheAngleToTheAxis() {
        Place place = Place.ofDegrees(54.6, -2.9, 240);
        Offset offset = new Offset(150, -90);
        double[] axis = place.axis(offset);
        Star star = at(place, 50);
        double before = Directions.angle(axis, SeenSky.of(place, AT, Air.NONE).direction(star));
        double after = Directions.angle(
                axis, SeenSky.of(place, AT.plus(WATCHED), Air.NONE).direction(star));
        assertThat(arcsec(54.6, offset, 50, ReticleLine.BY_SLOW_MOTION))
                .isCloseTo(Math.toDegrees(before - after) * 3600, within(0.5));
    }
}
