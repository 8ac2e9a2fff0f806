package polewright.sky.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.AuthorityTable;
import polewright.sky.AuthorityTable.Row;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * Sun, Moon, Mars and Jupiter from twelve sites, topocentric, computed with pyerfa and DE405 outside the project. See
 * authorities/altaz.
 */
class BodiesAgainstErfaTest {
    /**
     * The theories' own largest errors (see {@link SolarSystemBody}), rounded up a little for the site's contribution.
     */
    private static final Map<String, Double> TOLERANCE_ARCSEC =
            Map.of("Sun", 0.05, "Moon", 13.0, "Mars", 0.4, "Jupiter", 0.4);

    static Stream<Row> bodies() {
        return AuthorityTable.rows("altaz/altaz.csv").filter(row -> TOLERANCE_ARCSEC.containsKey(row.text("body")));
    }

    static Stream<Row> bodiesAbove15Degrees() {
        return bodies().filter(row -> row.number("alt_airless_deg") > 15);
    }

    private static ObservingMoment moment(Row row) {
        return ObservingMoment.of(
                Site.ofDegrees(row.number("lat_deg"), row.number("lon_east_deg"), row.number("height_m")),
                SkyTime.of(Instant.parse(row.text("utc"))),
                new Weather(row.number("pressure_hpa"), row.number("temp_c"), 0));
    }

    private static ApparentPlace place(Row row) {
        return Ephemeris.apparent(SolarSystemBody.valueOf(row.text("body").toUpperCase(Locale.ROOT)), moment(row));
    }

    private static double arcsec(Vector3D u, Vector3D v) {
        return new Angle(Vector3D.angle(u, v)).arcseconds();
    }

    @ParameterizedTest
    @MethodSource("bodies")
    void apparentPlaceAgrees(Row row) {
        ApparentPlace expected = ApparentPlace.of(
                Angle.ofDegrees(row.number("ra_apparent_equinox_deg")),
                Angle.ofDegrees(row.number("dec_apparent_deg")));
        assertThat(arcsec(place(row).unit(), expected.unit())).isLessThan(TOLERANCE_ARCSEC.get(row.text("body")));
    }

    @ParameterizedTest
    @MethodSource("bodies")
    void airlessDirectionAgreesAboveAndBelowTheHorizon(Row row) {
        AirlessDirection expected = AirlessDirection.of(
                Angle.ofDegrees(row.number("az_airless_deg")), Angle.ofDegrees(row.number("alt_airless_deg")));
        assertThat(arcsec(moment(row).airless(place(row)).enu(), expected.enu()))
                .isLessThan(TOLERANCE_ARCSEC.get(row.text("body")));
    }

    @ParameterizedTest
    @MethodSource("bodiesAbove15Degrees")
    void refractedDirectionAgreesAbove15Degrees(Row row) {
        RefractedDirection expected = RefractedDirection.of(
                Angle.ofDegrees(row.number("az_refracted_deg")), Angle.ofDegrees(row.number("alt_refracted_deg")));
        assertThat(arcsec(moment(row).refracted(place(row)).enu(), expected.enu()))
                .isLessThan(TOLERANCE_ARCSEC.get(row.text("body")));
    }
}
