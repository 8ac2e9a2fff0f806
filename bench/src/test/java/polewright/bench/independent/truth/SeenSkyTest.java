package polewright.bench.independent.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;

/**
 * Against worked examples of J. Meeus, <i>Astronomical Algorithms</i>, 2nd edition; as in soniakeys/meeus, v3,
 * bfbd9ac2c7f7.
 */
class SeenSkyTest {
    /** Example 13.b: Venus over Washington; the book counts azimuth from the south. */
    @Test
    void hourAngleAndDeclination_ofAzimuthAndAltitude() {
        Place washington = Place.ofDegrees(38 + 55 / 60.0 + 17 / 3600.0, -(77 + 3 / 60.0 + 56 / 3600.0), 0);
        SeenSky sky = SeenSky.of(washington, Instant.parse("1987-04-10T19:21:00Z"), Air.NONE);
        double[] venus = Directions.of(Math.toRadians(180 + 68.0337), Math.toRadians(15.1249));
        assertThat(Math.toDegrees(sky.hourAngle(venus))).isCloseTo(64.352133, within(2e-4));
        assertThat(Math.toDegrees(sky.declination(venus))).isCloseTo(-6.719892, within(2e-4));
    }

    /**
     * Examples 21.b and 23.b: Theta Persei on 2028 November 13.19 TD, with precession, proper motion, nutation and
     * aberration.
     */
    @Test
    void apparentPlace() {
        Star thetaPersei = new Star(
                "tet Per",
                Math.toRadians(15 * (2 + 44 / 60.0 + 11.986 / 3600)),
                Math.toRadians(49 + 13 / 60.0 + 42.48 / 3600),
                0.03425 * 15 * 1000 * Math.cos(Math.toRadians(49.228)),
                -89.5,
                0,
                0,
                4.1);
        Instant at = Instant.parse("2028-11-13T04:32:27Z");
        Place greenwich = Place.ofDegrees(51.5, 0, 0);
        SeenSky sky = SeenSky.of(greenwich, at, Air.NONE);
        double[] seen = sky.direction(thetaPersei);
        // Diurnal aberration and parallax are added: under a second of arc.
        assertThat(Math.toDegrees(sky.declination(seen))).isCloseTo(49.3520685, within(1 / 3600.0));
        double rightAscensionDeg = meanSiderealDeg(at) - Math.toDegrees(sky.hourAngle(seen));
        // Mean sidereal time instead of apparent: the equation of the equinoxes is under 18″.
        assertThat(((rightAscensionDeg % 360) + 360) % 360).isCloseTo(41.5599646, within(20 / 3600.0));
    }

    /** The book's (12.4), without its smallest terms. */
    private static double meanSiderealDeg(Instant at) {
        double days = at.getEpochSecond() / 86400.0 + 2440587.5 - 2451545;
        return 280.46061837 + 360.98564736629 * days + 0.000387933 * Math.pow(days / 36525, 2);
    }

    /** Refraction of about 58″ tan z in standard air (common practice). */
    @Test
    void refraction_raisesAStar() {
        Star star = new Star("a star", 0, 0, 0, 0, 0, 0, 1);
        Instant at = Instant.parse("2026-10-01T22:00:00Z");
        Place larkfell = Place.ofDegrees(54.6, -2.9, 240);
        double airless = Directions.altitude(SeenSky.of(larkfell, at, Air.NONE).direction(star));
        double seen =
                Directions.altitude(SeenSky.of(larkfell, at, new Air(1010, 10)).direction(star));
        assertThat(Math.toDegrees(seen - airless) * 3600).isCloseTo(58 / Math.tan(seen), within(1.5));
    }

    /**
     * At an equinox the Sun rises due east; at Larkfell's solstice noon its altitude is 90° − 54.6° + 23.44° (common
     * practice).
     */
    @Test
    void sun() {
        Place larkfell = Place.ofDegrees(54.6, -2.9, 240);
        Instant noon = Instant.parse("2026-06-21T12:13:30Z");
        assertThat(Math.toDegrees(SeenSky.of(larkfell, noon, Air.NONE).sunAltitude()))
                .isCloseTo(90 - 54.6 + 23.44, within(0.02));
    }
}
