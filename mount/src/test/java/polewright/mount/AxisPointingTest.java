package polewright.mount;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

class AxisPointingTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);
    private static final Site EQUATOR = Site.ofDegrees(0, 0, 0);

    @ParameterizedTest
    @ValueSource(doubles = {90, 85, 54.6, 5, 0, -5, -43.95, -85, -90})
    void offsetAndPointingAreInverses_upToFifteenDegrees(double latitude) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        Random random = new Random(20260411);
        for (int i = 0; i < 200; i++) {
            double size = Math.toRadians(15) * random.nextDouble();
            double way = 2 * Math.PI * random.nextDouble();
            AxisOffset offset = new AxisOffset(new Angle(size * Math.sin(way)), new Angle(size * Math.cos(way)));

            AxisPointing axis = AxisPointing.of(site, offset);

            assertThat(axis.elevatedEnd().getNorm()).isEqualTo(1, within(1e-12));
            assertThat(axis.offset(site).east().radians())
                    .isEqualTo(offset.east().radians(), within(1e-12));
            assertThat(axis.offset(site).up().radians()).isEqualTo(offset.up().radians(), within(1e-12));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {54.6, 5, -5, -43.95})
    void azimuthAndAltitudeRebuildTheAxis(double latitude) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(300, 120));

        AxisPointing again = AxisPointing.of(axis.azimuth(), axis.altitude());

        assertThat(axis.elevatedEnd().distance(again.elevatedEnd())).isLessThan(1e-12);
    }

    /** Computed outside this project: xE = cos φ · dA and xU = dh, to first order; the remainder is of second order. */
    @ParameterizedTest
    @ValueSource(doubles = {70, 54.6, 30, 0.5, -0.5, -30, -43.95, -70})
    void azimuthErrorIsEastOverCosLatitude_andAltitudeErrorIsUp_toFirstOrder(double latitude) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        double east = 4;
        double up = -3;
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(east, up));

        // Second order: offset² · tan φ / cos φ, at most 5′ · 5′ / 3438′ · 8.
        double secondOrder = 0.06;
        double eastward = site.hemisphereSign() * axis.azimuthError(site).arcminutes();
        assertThat(eastward).isEqualTo(east / site.latitude().cos(), within(secondOrder));
        assertThat(axis.altitudeError(site).arcminutes()).isEqualTo(up, within(secondOrder));
    }

    /** docs/formulas.md and docs/schema: θ − sin θ, in arcseconds. */
    @ParameterizedTest
    @CsvSource({"60, 0.18", "165, 3.80", "300, 22.84"})
    void offsetIsASineProjection_notAGreatCircle(double arcmin, double shortByArcsec) {
        AxisPointing axis =
                AxisPointing.of(LARKFELL.poleAzimuth(), LARKFELL.poleAltitude().plus(Angle.ofArcminutes(arcmin)));

        AxisOffset offset = axis.offset(LARKFELL);

        assertThat(arcmin * 60 - offset.up().arcseconds()).isEqualTo(shortByArcsec, within(0.005));
        assertThat(offset.distance()).isEqualTo(offset.up());
    }

    @Test
    void axisEastOfThePole_hasAzimuthPastNorth_atNorthernSite() {
        AxisPointing axis = AxisPointing.of(Angle.ofDegrees(1), LARKFELL.poleAltitude());

        assertThat(axis.offset(LARKFELL).east().degrees()).isEqualTo(Math.cos(Math.toRadians(54.6)), within(1e-3));
        assertThat(axis.azimuthError(LARKFELL).degrees()).isEqualTo(1, within(1e-9));
    }

    @Test
    void axisEastOfThePole_hasAzimuthShortOfSouth_atSouthernSite() {
        AxisPointing axis = AxisPointing.of(Angle.ofDegrees(179), TUSSOCK_FLAT.poleAltitude());

        assertThat(axis.offset(TUSSOCK_FLAT).east().degrees()).isEqualTo(Math.cos(Math.toRadians(43.95)), within(1e-3));
        assertThat(axis.azimuthError(TUSSOCK_FLAT).degrees()).isEqualTo(-1, within(1e-9));
    }

    @Test
    void axisTooHigh_isUp_inBothHemispheres() {
        for (Site site : new Site[] {LARKFELL, TUSSOCK_FLAT, EQUATOR}) {
            AxisPointing axis =
                    AxisPointing.of(site.poleAzimuth(), site.poleAltitude().plus(Angle.ofDegrees(2)));

            assertThat(axis.offset(site).up().radians()).isEqualTo(Math.sin(Math.toRadians(2)), within(1e-12));
            assertThat(axis.offset(site).east().radians()).isEqualTo(0, within(1e-12));
            assertThat(axis.altitudeError(site).degrees()).isEqualTo(2, within(1e-9));
        }
    }

    /** Design, section 4: at a southern site the observer sees (−e_E, −e_U) of the northern end's offset. */
    @Test
    void southernOffset_isTheNegativeOfTheNorthernEndsOffset() {
        AxisPointing axis = AxisPointing.of(TUSSOCK_FLAT, AxisOffset.ofArcminutes(40, 25));
        double latitude = TUSSOCK_FLAT.latitude().radians();
        Vector3D northPole = new Vector3D(0, Math.cos(latitude), Math.sin(latitude));

        Vector3D northernOffset = axis.northernEnd(TUSSOCK_FLAT).subtract(northPole);

        Vector3D q = new Vector3D(0, -Math.sin(latitude), Math.cos(latitude));
        assertThat(new Angle(northernOffset.getX()).arcminutes()).isEqualTo(-40, within(1e-9));
        assertThat(new Angle(northernOffset.dotProduct(q)).arcminutes()).isEqualTo(-25, within(1e-9));
    }

    @Test
    void theEquatorCountsAsNorthern() {
        assertThat(AxisPointing.atPole(EQUATOR).azimuth().degrees()).isEqualTo(0, within(1e-12));
        assertThat(AxisPointing.atPole(EQUATOR).altitude().degrees()).isEqualTo(0, within(1e-12));
    }

    @Test
    void separationOfAnAxisFromThePole_isTheArcsineOfItsOffset() {
        AxisOffset offset = AxisOffset.ofArcminutes(600, -450);

        Angle separation = AxisPointing.of(TUSSOCK_FLAT, offset).separation(AxisPointing.atPole(TUSSOCK_FLAT));

        assertThat(separation.sin()).isEqualTo(offset.distance().radians(), within(1e-12));
    }

    @Test
    void offsetBeyondTheSphere_isRefused() {
        assertThatThrownBy(() -> AxisPointing.of(LARKFELL, AxisOffset.ofArcminutes(3600, 0)))
                .isInstanceOf(InputRefused.class)
                .hasMessage(
                        "an axis offset of 60.0 degrees is beyond 57. Point the tripod at the pole by compass first.");
        assertThatThrownBy(() -> AxisPointing.of(LARKFELL, AxisOffset.ofArcminutes(Double.NaN, 0)))
                .isInstanceOf(InputRefused.class);
    }
}
