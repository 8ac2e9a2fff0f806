package polewright.planning.tonight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.rig.Camera;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.FieldRotation;
import polewright.sky.place.Site;

/**
 * Against the handbook's rate, 15.0411°/h cos φ |cos A| / cos a (docs/formulas.md), and the directions where it is
 * zero.
 */
class UprightExposuresTest {
    private static final Site LARKFELL = Site.ofDegrees(54.6, -2.9, 240);
    private static final Camera CAMERA = new Camera("main", 1200, 3.76, 6000, 4000);

    @ParameterizedTest
    @CsvSource({
        "54.6, 180, 30",
        "54.6, 180, 60",
        "54.6, 45, 45",
        "54.6, 0, 40",
        "-43.95, 0, 30",
        "-43.95, 140, 70",
        "20, 200, 50"
    })
    void longest_isTheToleratedRotationDividedByTheHandbookRate(double latitude, double azimuth, double altitude) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        UprightExposures upright = UprightExposures.of(site, CAMERA);
        double ratePerHour = FieldRotation.perHour(
                        site, AirlessDirection.of(Angle.ofDegrees(azimuth), Angle.ofDegrees(altitude)))
                .abs()
                .radians();
        double expected = upright.tolerance().radians() / upright.corner().radians() / ratePerHour * 3600;
        // During an exposure of some minutes the rate itself changes by a few per cent.
        assertThat(upright.longest(azimuth, altitude).toMillis() / 1000.0).isCloseTo(expected, within(0.04 * expected));
    }

    /** Due east and west the field momentarily does not rotate; overhead it spins. */
    @Test
    void longestDueEastAndWest_shortestOverhead() {
        UprightExposures upright = UprightExposures.of(LARKFELL, CAMERA);
        assertThat(upright.longest(90, 40))
                .isGreaterThan(upright.longest(180, 40).multipliedBy(4));
        assertThat(upright.longest(270, 40))
                .isGreaterThan(upright.longest(180, 40).multipliedBy(4));
        assertThat(upright.longest(180, 85)).isLessThan(upright.longest(180, 40).dividedBy(4));
    }

    /** At the pole the sky and the field rotate about the zenith at the same rate everywhere: 15.04° an hour. */
    @Test
    void atThePole_allDirectionsAreEqual() {
        UprightExposures upright = UprightExposures.of(Site.ofDegrees(89.999, 0, 0), CAMERA);
        assertThat(upright.longest(10, 45).toMillis() / 1000.0)
                .isCloseTo(upright.longest(250, 45).toMillis() / 1000.0, within(0.5));
    }

    @Test
    void shortExposuresArePossibleAlmostEverywhere_longOnesAreNot() {
        UprightExposures upright = UprightExposures.of(LARKFELL, CAMERA);
        assertThat(upright.shareOfSky(Duration.ofSeconds(2))).isGreaterThan(0.95);
        assertThat(upright.shareOfSky(Duration.ofMinutes(5))).isLessThan(0.2);
    }
}
