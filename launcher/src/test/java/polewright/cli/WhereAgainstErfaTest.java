package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.operations.CommandRun;
import polewright.operations.ReferenceTable;
import polewright.operations.ReferenceTable.Row;
import polewright.sky.angle.Angle;

/**
 * Every row of authorities/altaz (eight bodies, twelve sites, computed with pyerfa and JPL's DE405 outside the
 * project) through the command line as a user types it: stars by name from our own list; Sun, Moon and planets by our
 * theories.
 */
class WhereAgainstErfaTest {
    private static final Set<String> STARS = Set.of("Polaris", "Vega", "Arcturus", "Sigma Octantis");

    /** The required accuracy. */
    private static final double STAR_ARCSEC = 1;

    /** The Moon's theory is good to 13″, those of the planets and the Sun to better than 1″. */
    private static final double BODY_ARCSEC = 60;

    private static final double TIGHT_BODY_ARCSEC = 0.5;
    private static final double TIGHT_MOON_ARCSEC = 14;
    private static final double LOWEST_REFRACTED_DEG = 15;

    @TempDir
    private Path folder;

    static List<Row> rows() {
        return ReferenceTable.rows("altaz/altaz.csv");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void where_agreesWithTheTable(Row row) {
        JsonNode where = where(row);
        double tolerance = tolerance(row);
        assertThat(separationArcsec(
                        where.get("ra_of_date_deg").doubleValue(),
                        where.get("dec_of_date_deg").doubleValue(),
                        row.number("ra_apparent_equinox_deg"),
                        row.number("dec_apparent_deg")))
                .as("right ascension and declination")
                .isLessThan(tolerance);
        assertThat(separationArcsec(
                        where.get("az_deg").doubleValue(),
                        where.get("alt_deg").doubleValue(),
                        row.number("az_airless_deg"),
                        row.number("alt_airless_deg")))
                .as("azimuth and altitude")
                .isLessThan(tolerance);
        assertThat(separationArcsec(
                        where.get("hour_angle_deg").doubleValue(),
                        where.get("dec_of_date_deg").doubleValue(),
                        row.number("ha_airless_deg"),
                        row.number("dec_airless_deg")))
                .as("hour angle")
                .isLessThan(tolerance);
        if (row.number("alt_airless_deg") > LOWEST_REFRACTED_DEG) {
            assertThat(separationArcsec(
                            where.get("az_deg").doubleValue(),
                            where.get("alt_apparent_deg").doubleValue(),
                            row.number("az_refracted_deg"),
                            row.number("alt_refracted_deg")))
                    .as("apparent altitude")
                    .isLessThan(tolerance);
        }
    }

    @ParameterizedTest
    @MethodSource("rowsWithSun")
    void solarElongation_agreesWithTheTable(Row row) {
        Row sun = sunAtTheSameTime(row).orElseThrow();
        double expectedArcsec = separationArcsec(
                sun.number("ra_apparent_equinox_deg"),
                sun.number("dec_apparent_deg"),
                row.number("ra_apparent_equinox_deg"),
                row.number("dec_apparent_deg"));
        double reportedArcsec = where(row).get("sun_distance_deg").doubleValue() * 3600;
        assertThat(Math.abs(reportedArcsec - expectedArcsec)).isLessThan(BODY_ARCSEC);
    }

    static List<Row> rowsWithSun() {
        return rows().stream().filter(r -> sunAtTheSameTime(r).isPresent()).toList();
    }

    private static Optional<Row> sunAtTheSameTime(Row row) {
        return rows().stream()
                .filter(r -> r.cell("body").equals("Sun")
                        && r.cell("utc").equals(row.cell("utc"))
                        && r.cell("site").equals(row.cell("site")))
                .findFirst();
    }

    private JsonNode where(Row row) {
        JsonNode where = new CommandRun(folder, "2026-01-01T00:00:00Z")
                .good(
                        "where",
                        row.cell("body"),
                        "--site",
                        row.cell("lat_deg") + "," + row.cell("lon_east_deg") + "," + row.cell("height_m"),
                        "--at",
                        row.cell("utc"),
                        "--pressure",
                        row.cell("pressure_hpa"),
                        "--temperature",
                        row.cell("temp_c"),
                        "--json")
                .json();
        assertThat(where.fieldNames())
                .toIterable()
                .contains(
                        "ra_of_date_deg",
                        "dec_of_date_deg",
                        "hour_angle_deg",
                        "az_deg",
                        "alt_deg",
                        "alt_apparent_deg",
                        "sun_distance_deg");
        return where;
    }

    private static double tolerance(Row row) {
        if (STARS.contains(row.cell("body"))) {
            return STAR_ARCSEC;
        }
        double stated = row.cell("body").equals("Moon") ? TIGHT_MOON_ARCSEC : TIGHT_BODY_ARCSEC;
        return Math.min(BODY_ARCSEC, stated);
    }

    /** Great-circle distance in arcseconds between two positions in degrees. */
    private static double separationArcsec(double long1, double lat1, double long2, double lat2) {
        return new Angle(Vector3D.angle(unit(long1, lat1), unit(long2, lat2))).arcseconds();
    }

    private static Vector3D unit(double longitudeDeg, double latitudeDeg) {
        return new Vector3D(Math.toRadians(longitudeDeg), Math.toRadians(latitudeDeg));
    }
}
