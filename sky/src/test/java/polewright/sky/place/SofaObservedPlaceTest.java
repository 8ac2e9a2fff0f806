package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import polewright.sky.AuthorityTable;
import polewright.sky.angle.Angle;
import polewright.sky.time.SkyTime;

/**
 * SOFA's test program, t_atco13 and t_atio13: a star from its catalogue entry to its observed direction. See
 * authorities/published.
 *
 * <p>The inputs have polar motion, which our types leave out. To first order it only shifts the site's astronomical
 * latitude and longitude (textbook form), so the site shifted accordingly must give the same zenith distance, and the
 * same azimuth except for the rotation of the meridian.
 */
class SofaObservedPlaceTest {
    private static final double POLAR_X_RAD = 2.47230737e-7;
    private static final double POLAR_Y_RAD = 1.82640464e-6;
    private static final double LONGITUDE_RAD = -0.527800806;
    private static final double LATITUDE_RAD = -1.2345856;
    private static final SkyTime TIME = new SkyTime(
            // JD 2456384.5 + 0.969254051
            Instant.parse("2013-04-02T00:00:00Z").plusNanos(Math.round(0.969254051 * 86_400e9)), 0.1550675);
    private static final Weather WEATHER = new Weather(731, 12.8, 0.59);
    private static final CatalogueStar STAR = new CatalogueStar(
            new Angle(2.71),
            new Angle(0.174),
            new Angle(1e-5 * Math.cos(0.174)).arcseconds() * 1000,
            new Angle(5e-6).arcseconds() * 1000,
            100,
            55);
    /**
     * ERFA solves for refraction with one Newton step, our solution converges fully: 0.003″ apart at this altitude of
     * 9°.
     */
    private static final double TOLERANCE_ARCSEC = 0.01;

    private static final double EXPECTED_AZIMUTH_RAD = AuthorityTable.published("sofa_atco13_aob");
    private static final double EXPECTED_ZENITH_DISTANCE_RAD = AuthorityTable.published("sofa_atco13_zob");

    private static Site siteUnderTheTruePole() {
        double toward = POLAR_X_RAD * Math.sin(LONGITUDE_RAD) + POLAR_Y_RAD * Math.cos(LONGITUDE_RAD);
        return new Site(
                new Angle(LATITUDE_RAD + POLAR_X_RAD * Math.cos(LONGITUDE_RAD) - POLAR_Y_RAD * Math.sin(LONGITUDE_RAD)),
                new Angle(LONGITUDE_RAD + toward * Math.tan(LATITUDE_RAD)),
                2738);
    }

    /** The amount by which azimuths are smaller when counted from the geographic pole. */
    private static double meridianTurnRad() {
        return (POLAR_X_RAD * Math.sin(LONGITUDE_RAD) + POLAR_Y_RAD * Math.cos(LONGITUDE_RAD)) / Math.cos(LATITUDE_RAD);
    }

    private static double arcsec(double radians) {
        return new Angle(radians).arcseconds();
    }

    @Test
    void atco13ZenithDistance() {
        ObservingMoment moment = ObservingMoment.of(siteUnderTheTruePole(), TIME, WEATHER);
        Angle altitude = moment.refracted(moment.apparent(STAR)).altitude();
        assertThat(arcsec(Math.PI / 2 - altitude.radians()))
                .isCloseTo(arcsec(EXPECTED_ZENITH_DISTANCE_RAD), within(TOLERANCE_ARCSEC));
    }

    @Test
    void atco13Azimuth() {
        ObservingMoment moment = ObservingMoment.of(siteUnderTheTruePole(), TIME, WEATHER);
        Angle azimuth = moment.refracted(moment.apparent(STAR)).azimuth();
        assertThat(arcsec(azimuth.radians() - meridianTurnRad()))
                .isCloseTo(arcsec(EXPECTED_AZIMUTH_RAD), within(TOLERANCE_ARCSEC));
    }

    @Test
    void atco13WithoutCorrection_isWithinThePolarMotion() {
        Site asGiven = new Site(new Angle(LATITUDE_RAD), new Angle(LONGITUDE_RAD), 2738);
        ObservingMoment moment = ObservingMoment.of(asGiven, TIME, WEATHER);
        RefractedDirection expected = RefractedDirection.of(
                new Angle(EXPECTED_AZIMUTH_RAD), new Angle(Math.PI / 2 - EXPECTED_ZENITH_DISTANCE_RAD));
        double separation =
                Vector3D.angle(moment.refracted(moment.apparent(STAR)).enu(), expected.enu());
        assertThat(arcsec(separation)).isLessThan(arcsec(Math.hypot(POLAR_X_RAD, POLAR_Y_RAD)) + TOLERANCE_ARCSEC);
    }

    /** SOFA's intermediate place is geocentric; our apparent place already includes diurnal aberration, toward east. */
    @Test
    void atio13AzimuthFromTheIntermediatePlace_withDiurnalAberrationAdded() {
        ObservingMoment moment = ObservingMoment.of(siteUnderTheTruePole(), TIME, WEATHER);
        double equationOfOriginsRad = AuthorityTable.published("sofa_atco13_eo");
        ApparentPlace place =
                ApparentPlace.of(new Angle(2.710121572969039 - equationOfOriginsRad), new Angle(0.17293713672182304));
        RefractedDirection seen = moment.refracted(place);
        double equatorSpeedOverLight = 465.1 / 299_792_458.0;
        double aberrationRad = equatorSpeedOverLight
                * Math.cos(LATITUDE_RAD)
                * seen.azimuth().cos()
                / seen.altitude().cos();
        assertThat(arcsec(seen.azimuth().radians() + aberrationRad - meridianTurnRad()))
                .isCloseTo(arcsec(AuthorityTable.published("sofa_atio13_aob")), within(TOLERANCE_ARCSEC));
    }
}
