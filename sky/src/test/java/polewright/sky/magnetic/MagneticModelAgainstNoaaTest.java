package polewright.sky.magnetic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.Year;
import java.time.ZoneOffset;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.AuthorityTable;
import polewright.sky.AuthorityTable.Row;
import polewright.sky.angle.Angle;

/** The World Magnetic Model 2025 against NOAA's test values, 2025.0 to 2029.5. See authorities/wmm2025. */
class MagneticModelAgainstNoaaTest {
    /** Angles are printed to 0.01°, so half of that is rounding. */
    private static final double ANGLE_DEG = 0.0051;
    /** The table has six decimals; dates are rounded to the second, and the field changes by 1e-5 nT in a minute. */
    private static final double NANOTESLA = 0.01;

    static Stream<Row> noaaValues() {
        return AuthorityTable.rows("wmm2025/noaa_test_values.csv");
    }

    static Stream<Row> selectedValues() {
        return AuthorityTable.rows("wmm2025/wmm2025_public.csv");
    }

    private static Instant instant(double decimalYear) {
        int year = (int) decimalYear;
        return LocalDate.of(year, 1, 1)
                .atStartOfDay(ZoneOffset.UTC)
                .toInstant()
                .plusSeconds(Math.round((decimalYear - year) * Year.of(year).length() * 86_400));
    }

    private static MagneticField field(double latitude, double longitude, double heightKm, double year) {
        return MagneticModel.wmm2025()
                .field(Angle.ofDegrees(latitude), Angle.ofDegrees(longitude), heightKm * 1000, instant(year));
    }

    private static double degreesApart(Angle angle, double degrees) {
        return Math.abs(angle.minus(Angle.ofDegrees(degrees)).wrappedSigned().degrees());
    }

    @ParameterizedTest
    @MethodSource("noaaValues")
    void fieldAgrees(Row row) {
        MagneticField field = field(row.number("lat"), row.number("lon"), row.number("alt"), row.number("date"));
        assertThat(field.northNanotesla()).isCloseTo(row.number("x"), within(NANOTESLA));
        assertThat(field.eastNanotesla()).isCloseTo(row.number("y"), within(NANOTESLA));
        assertThat(field.downNanotesla()).isCloseTo(row.number("z"), within(NANOTESLA));
        assertThat(field.horizontalNanotesla()).isCloseTo(row.number("h"), within(NANOTESLA));
        assertThat(field.totalNanotesla()).isCloseTo(row.number("f"), within(NANOTESLA));
        assertThat(degreesApart(field.inclination(), row.number("incl"))).isLessThan(ANGLE_DEG);
        assertThat(degreesApart(field.declination(), row.number("decl"))).isLessThan(ANGLE_DEG);
    }

    @ParameterizedTest
    @MethodSource("selectedValues")
    void declinationAgreesWithTheSelectedValues(Row row) {
        MagneticField field = field(
                row.number("lat_deg"), row.number("lon_deg"), row.number("height_km"), row.number("decimal_year"));
        assertThat(degreesApart(field.declination(), row.number("declination_deg")))
                .isLessThan(ANGLE_DEG);
    }
}
