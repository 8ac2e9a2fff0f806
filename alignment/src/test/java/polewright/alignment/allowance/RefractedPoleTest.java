package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.allowance.Items.MEAN;
import static polewright.alignment.allowance.Items.TINY;
import static polewright.alignment.allowance.Items.UNGUIDED;
import static polewright.alignment.allowance.Items.shot;
import static polewright.alignment.allowance.Items.zone;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.work.SkyRegion;
import polewright.mount.rig.TrackingRate;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.time.SiderealRate;

/**
 * How refraction moves the best axis, compared with E. S. King's results as secondary sources describe them ("Forms of
 * Images in Stellar Photography" 1902; Manual of Celestial Photography 1931; the originals were not read) and a table
 * of them calculated outside this project. Air of 1010 hPa, 10 °C, dry: k = 58.07″, and with the tan³ z term that the
 * table omits.
 */
class RefractedPoleTest {
    private static final double K_ARCSEC = 58.07;
    private static final double B_OVER_A = 0.0650 / 58.07;
    private static final double SECONDS = 60;

    /** Ratio of differential refraction by A tan z + B tan³ z to that by A tan z alone. */
    private static double withCube(double altitudeDeg) {
        double tan = 1 / Math.tan(Math.toRadians(altitudeDeg));
        return 1 - 3 * B_OVER_A * tan * tan;
    }

    /**
     * Nulling the drift of a star at this altitude leaves the axis γ = k |sin φ| cos φ / sin² a above the true pole.
     */
    @ParameterizedTest
    @CsvSource({
        "45, 15, 433", "45, 20, 248", "45, 30, 116", "45, 45, 58", "45, 60, 39",
        "-45, 15, 433", "-45, 20, 248", "-45, 30, 116", "-45, 45, 58", "-45, 60, 39",
    })
    void axisAtKingsPole_stopsTheDriftOfAStarInTheEastOrWest(double latDeg, double altitudeDeg, double tableArcsec) {
        ApparentSky sky = new ApparentSky(Site.ofDegrees(latDeg, 0, 0), MEAN);
        for (double east : new double[] {-1, 1}) {
            double atPole = declinationDrift(sky, altitudeDeg, east, 0);
            double perArcmin = declinationDrift(sky, altitudeDeg, east, 1) - atPole;
            double nulledArcsec = -60 * atPole / perArcmin;

            assertThat(nulledArcsec).isCloseTo(tableArcsec * withCube(altitudeDeg), within(0.012 * tableArcsec + 0.5));
        }
    }

    private static double declinationDrift(ApparentSky sky, double altitudeDeg, double east, double upArcmin) {
        double altitude = Math.toRadians(altitudeDeg);
        Vector3D middle = new Vector3D(east * Math.cos(altitude), 0, Math.sin(altitude));
        UnguidedMotion motion = new UnguidedMotion(
                sky.seen(sky.later(middle, -SECONDS / 2)),
                sky.seen(sky.later(middle, SECONDS / 2)),
                SiderealRate.RAD_PER_SECOND * SECONDS);
        return motion.shift(CandidateAxis.of(sky.site(), new Vector2D(0, upArcmin)))
                .getY();
    }

    /** The refracted pole is R(|φ|) above the true one, which is γ at the altitude of the pole. */
    @ParameterizedTest
    @CsvSource({"20, 158", "30, 100", "40, 69.0", "50, 48.7", "60, 33.5", "-40, 69.0"})
    void refractedPole_isKingsPoleForStarsAtTheAltitudeOfThePole(double latDeg, double tableArcsec) {
        ApparentSky sky = new ApparentSky(Site.ofDegrees(latDeg, 0, 0), MEAN);
        double lat = Math.toRadians(latDeg);
        Vector3D pole = new Vector3D(0, Math.signum(lat) * Math.cos(lat), Math.abs(Math.sin(lat)));

        double liftArcsec = Angle.ofRadians(Math.asin(sky.seen(pole).getZ()) - Math.abs(lat))
                .arcseconds();

        assertThat(liftArcsec).isCloseTo(tableArcsec, within(0.6));
        assertThat(K_ARCSEC * Math.abs(Math.sin(lat)) * Math.cos(lat) / Math.pow(Math.sin(lat), 2))
                .isCloseTo(tableArcsec, within(0.01 * tableArcsec));
    }

    /**
     * King's rate: on the meridian at the equator one turn in 1436.068 (1 + k) = 1436.47 mean minutes, 0.404 more than
     * without air, at any latitude.
     */
    @ParameterizedTest
    @ValueSource(doubles = {20, 35, 50, -30, -45})
    void starsOnTheMeridianAtTheEquator_moveAtKingsRate_atAnyLatitude(double latDeg) {
        ApparentSky sky = new ApparentSky(Site.ofDegrees(latDeg, 0, 0), MEAN);
        double half = SiderealRate.RAD_PER_SECOND * SECONDS / 2;
        Vector3D first = sky.seen(sky.airless(-half, 0));
        Vector3D last = sky.seen(sky.airless(half, 0));
        double sidereal = SiderealRate.RAD_PER_SECOND * SECONDS;
        double aheadArcsec = new UnguidedMotion(first, last, sidereal)
                .shift(CandidateAxis.of(sky.site(), Vector2D.ZERO))
                .getX();
        double followed = sidereal - Angle.ofArcseconds(aheadArcsec).radians();

        double minutesPerTurn = 2 * Math.PI / followed * SECONDS / 60;

        assertThat(minutesPerTurn).isCloseTo(1436.47, within(0.015));
        assertThat(minutesPerTurn - 1436.068).isCloseTo(0.404, within(0.015));
        assertThat(TrackingRate.KING.arcsecPerSecond()).isCloseTo(15.0368, within(0.0001));
        Vector2D atKingsRate = new UnguidedMotion(
                        first,
                        last,
                        Angle.ofArcseconds(TrackingRate.KING.arcsecPerSecond() * SECONDS)
                                .radians())
                .shift(CandidateAxis.of(sky.site(), Vector2D.ZERO));
        assertThat(atKingsRate.getX()).isCloseTo(0, within(0.01));
    }

    /** So the zone of a star is centred on King's pole for it and not on the true one. */
    @ParameterizedTest
    @CsvSource({"45, 0, -45", "45, 0, 45", "-45, 0, -45", "50, 0, 30", "-35, 0, 40"})
    void zoneOfAStarOnTheEquator_isCentredOnKingsPole(double latDeg, double decDeg, double haDeg) {
        double lat = Math.toRadians(latDeg);
        double sinAlt = Math.cos(lat) * Math.cos(Math.toRadians(haDeg));
        double altitudeDeg = Math.toDegrees(Math.asin(sinAlt));
        double kingArcsec = K_ARCSEC * Math.abs(Math.sin(lat)) * Math.cos(lat) / (sinAlt * sinAlt);
        double halfTurnDeg = 15.041 * 120 / 3600 / 2;
        WorkZone zone = zone(
                Site.ofDegrees(latDeg, 0, 0),
                MEAN,
                shot(TINY, Items.at(haDeg - halfTurnDeg, decDeg), 120, UNGUIDED, 3));

        Allowance.Span up = zone.upSpanAt(Angle.ZERO).orElseThrow();

        double middleArcsec = (up.low().arcseconds() + up.high().arcseconds()) / 2;
        assertThat(middleArcsec).isCloseTo(kingArcsec * withCube(altitudeDeg), within(0.02 * kingArcsec + 0.5));
    }

    @Test
    void bestAimForTheSkyAbove30Degrees_isAboveTheTruePole_inBothHemispheres() {
        for (double latDeg : new double[] {50, -50}) {
            WorkZone zone = zone(
                    Site.ofDegrees(latDeg, 0, 0), MEAN, shot(TINY, SkyRegion.Above.THIRTY_DEGREES, 60, UNGUIDED, 2.5));

            assertThat(zone.bestAim().east().arcseconds()).isCloseTo(0, within(2.0));
            assertThat(zone.bestAim().up().arcseconds()).isBetween(30.0, 120.0);
        }
    }
}
