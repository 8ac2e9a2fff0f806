package polewright.sky.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.AuthorityTable;
import polewright.sky.AuthorityTable.Row;
import polewright.sky.angle.Angle;
import polewright.sky.time.JulianDate;
import polewright.sky.time.TimeScale;

/** Geocentric directions and distances, 1972 to 2060, against JPL's DE405. See authorities/jpl-de405. */
class SolarSystemAgainstJplTest {
    /** A little over the largest error seen at 400 dates, which is listed in the javadoc of {@link SolarSystemBody}. */
    private static final Map<SolarSystemBody, Double> TOLERANCE_ARCSEC = Map.of(
            SolarSystemBody.SUN, 0.02,
            SolarSystemBody.MOON, 13.0,
            SolarSystemBody.MERCURY, 0.06,
            SolarSystemBody.VENUS, 0.15,
            SolarSystemBody.MARS, 0.35,
            SolarSystemBody.JUPITER, 0.35,
            SolarSystemBody.SATURN, 0.5,
            SolarSystemBody.URANUS, 1.9,
            SolarSystemBody.NEPTUNE, 3.4);

    static Stream<Row> places() {
        return AuthorityTable.rows("jpl-de405/places.csv");
    }

    private static Vector3D vector(Row row, String what) {
        return new Vector3D(row.number(what + "_x_au"), row.number(what + "_y_au"), row.number(what + "_z_au"));
    }

    @ParameterizedTest
    @MethodSource("places")
    void positionAgreesWithJpl(Row row) {
        SolarSystemBody body = SolarSystemBody.valueOf(row.text("body"));
        Vector3D toward =
                SolarSystem.towardAu(body, new JulianDate(TimeScale.TT, row.number("tt_jd"), 0), vector(row, "earth"));
        Vector3D expected = vector(row, "astrometric");
        assertThat(new Angle(Vector3D.angle(toward, expected)).arcseconds()).isLessThan(TOLERANCE_ARCSEC.get(body));
        assertThat(toward.getNorm() / expected.getNorm()).isCloseTo(1, within(6e-5));
    }
}
