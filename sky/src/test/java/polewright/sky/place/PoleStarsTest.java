package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.AuthorityTable;
import polewright.sky.AuthorityTable.Row;
import polewright.sky.ReferenceStars;
import polewright.sky.angle.Angle;
import polewright.sky.time.SkyTime;

/**
 * Polaris and Sigma Octantis, 2024 to 2031, computed with pyerfa outside the project (authorities/pole-stars). The
 * table is geocentric; a site's diurnal aberration, up to 0.3″, is avoided with a site at the pole in question.
 */
class PoleStarsTest {
    private static final double DISTANCE_ARCMIN = 0.01;
    /** The table's last digit, 1e-6 h, is 0.05″ of hour angle, and negligible on the sky so near the pole. */
    private static final double HOURS = 3e-6;

    static Stream<Row> dates() {
        return AuthorityTable.rows("pole-stars/polestars.csv");
    }

    private static ObservingMoment moment(String utc, double latitude) {
        return ObservingMoment.of(Site.ofDegrees(latitude, 0, 0), SkyTime.of(Instant.parse(utc)), Weather.AIRLESS);
    }

    private static double polarDistanceArcmin(ApparentPlace place) {
        return 90 * 60 - place.declination().abs().arcminutes();
    }

    @ParameterizedTest
    @MethodSource("dates")
    void greenwichSiderealTimeAgrees(Row row) {
        assertThat(moment(row.text("utc_ut1_equal"), 0).siderealTime().hours())
                .isCloseTo(row.number("gast_h"), within(1e-6));
    }

    @ParameterizedTest
    @MethodSource("dates")
    void polarisAgreesWithTheTable(Row row) {
        ObservingMoment moment = moment(row.text("utc_ut1_equal"), 90);
        ApparentPlace polaris = moment.apparent(ReferenceStars.POLARIS);
        assertThat(polarDistanceArcmin(polaris)).isCloseTo(row.number("polaris_dist_arcmin"), within(DISTANCE_ARCMIN));
        assertThat(polaris.rightAscension().hours()).isCloseTo(row.number("polaris_ra_apparent_h"), within(HOURS));
        assertThat(moment.hourAngle(polaris).hourAngle().wrappedPositive().hours())
                .isCloseTo(row.number("polaris_ha_at_greenwich_h"), within(HOURS));
    }

    @ParameterizedTest
    @MethodSource("dates")
    void sigmaOctantisAgreesWithTheTable(Row row) {
        ObservingMoment moment = moment(row.text("utc_ut1_equal"), -90);
        ApparentPlace star = moment.apparent(ReferenceStars.SIGMA_OCTANTIS);
        assertThat(polarDistanceArcmin(star)).isCloseTo(row.number("sigoct_dist_arcmin"), within(DISTANCE_ARCMIN));
        assertThat(star.rightAscension().hours()).isCloseTo(row.number("sigoct_ra_apparent_h"), within(HOURS));
        assertThat(moment.hourAngle(star).hourAngle().wrappedPositive().hours())
                .isCloseTo(row.number("sigoct_ha_at_greenwich_h"), within(HOURS));
    }

    /** J. Meeus, Mathematical Astronomy Morsels: 27′09″ on 2100 March 24 (from memory). */
    @Test
    void polarisIsNearestThePoleInMarch2100() {
        double nearest = polarDistanceArcmin(moment("2100-03-24T00:00:00Z", 90).apparent(ReferenceStars.POLARIS));
        assertThat(nearest).isCloseTo(27 + 9 / 60.0, within(0.02));
        for (String other : new String[] {"2099-03-24T00:00:00Z", "2100-02-01T00:00:00Z", "2100-05-15T00:00:00Z"}) {
            assertThat(polarDistanceArcmin(moment(other, 90).apparent(ReferenceStars.POLARIS)))
                    .isGreaterThan(nearest);
        }
    }

    @Test
    void polarDistanceOfPolarisVariesByFourTenthsOfAnArcminuteInAYear() {
        double january = polarDistanceArcmin(moment("2027-01-01T00:00:00Z", 90).apparent(ReferenceStars.POLARIS));
        double july = polarDistanceArcmin(moment("2027-07-01T00:00:00Z", 90).apparent(ReferenceStars.POLARIS));
        assertThat(Math.abs(july - january)).isCloseTo(0.4, within(0.1));
        assertThat(Angle.ofArcminutes(january).degrees()).isLessThan(1);
    }
}
