package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.operations.CommandRun;
import polewright.operations.ReferenceTable;
import polewright.operations.ReferenceTable.Row;

/** The {@code ground} command compared with published and independently computed tables. */
class GroundAgainstReferencesTest {
    /**
     * Table positions are rounded to 1e-6°; the solar parallax differs by 2 · 8.8″ between opposite ends of the Earth.
     */
    private static final double SUN_DEG = 0.01;

    @TempDir
    private Path folder;

    static List<Row> inhabitedPlaces() {
        return ReferenceTable.rows("wmm2025/noaa_test_values.csv").stream()
                .filter(row -> row.number("alt") <= 9)
                .toList();
    }

    static List<Row> suns() {
        return ReferenceTable.rows("altaz/altaz.csv").stream()
                .filter(row -> row.cell("body").equals("Sun"))
                .toList();
    }

    static List<Row> poleStars() {
        return ReferenceTable.rows("pole-stars/polestars.csv");
    }

    /** NOAA's published test values for the World Magnetic Model 2025. */
    @ParameterizedTest
    @MethodSource("inhabitedPlaces")
    void declination_matchesNoaa(Row row) {
        JsonNode ground = ground(
                row.cell("lat") + "," + row.cell("lon") + "," + 1000 * row.number("alt"), ofYear(row.number("date")));
        double expected = row.number("decl");
        assertThat(ground.get("declination_deg").doubleValue()).isCloseTo(expected, within(0.01));
        double poleAzimuth = row.number("lat") >= 0 ? 0 : 180;
        assertSameDirection(ground.get("compass_bearing_deg").doubleValue(), poleAzimuth - expected, 0.01);
        assertSameDirection(ground.get("compass_north_deg").doubleValue(), -expected, 0.01);
    }

    /** In all of these rows the Sun is down. */
    @ParameterizedTest
    @MethodSource("suns")
    void sunBelowTheHorizon_givesNoShadow(Row row) {
        JsonNode ground = ground(row.cell("lat_deg") + "," + row.cell("lon_east_deg"), row.cell("utc"));
        assertThat(row.number("alt_airless_deg")).isNegative();
        assertThat(ground.has("shadow_azimuth_deg")).isFalse();
    }

    /**
     * At the antipodes the same Sun is up. East and up are reversed there and north is not, so the Sun is at 360°
     * minus the table's azimuth, and the shadow falls the opposite way.
     */
    @ParameterizedTest
    @MethodSource("suns")
    void shadow_isOppositeTheTablesSun(Row row) {
        double latitude = -row.number("lat_deg");
        double longitude =
                row.number("lon_east_deg") > 0 ? row.number("lon_east_deg") - 180 : row.number("lon_east_deg") + 180;
        JsonNode ground = ground(latitude + "," + longitude, row.cell("utc"));
        double shadow = 360 - row.number("az_airless_deg") + 180;
        assertSameDirection(ground.get("shadow_azimuth_deg").doubleValue(), shadow, SUN_DEG);
        double pole = latitude > 0 ? 0 : 180;
        assertSameDirection(ground.get("axis_clockwise_of_shadow_deg").doubleValue(), pole - shadow, SUN_DEG);
    }

    /** Common practice: at solar transit, outside the tropics, the shadow lies along the meridian. */
    @ParameterizedTest
    @CsvSource({"54.6,-2.9,0", "-43.95,170.4,180", "35.7,139.65,0", "-33.4,-70.6,180"})
    void shadowAtTransit_liesAlongTheMeridian(double latitude, double longitude, double expected) {
        String site = latitude + "," + longitude;
        String transit =
                ground(site, "2026-03-03T00:00:00Z").get("next_sun_transit").textValue();
        assertSameDirection(ground(site, transit).get("shadow_azimuth_deg").doubleValue(), expected, SUN_DEG);
    }

    /** authorities/pole-stars: distance and Greenwich hour angle, by pyerfa. */
    @ParameterizedTest
    @MethodSource("poleStars")
    void poleStars_matchErfa(Row row) {
        JsonNode north = ground("51.5,0", row.cell("utc_ut1_equal")).get("pole_star");
        assertThat(north.get("name").textValue()).isEqualTo("Polaris");
        // 0.02′ is 1″, the accuracy required of the stars.
        assertThat(north.get("distance_arcmin").doubleValue())
                .isCloseTo(row.number("polaris_dist_arcmin"), within(0.02));
        // A position error of 1″ is 0.03° of hour angle this close to the pole.
        assertSameDirection(
                north.get("hour_angle_deg").doubleValue(), 15 * row.number("polaris_ha_at_greenwich_h"), 0.03);
        JsonNode south = ground("-35,0", row.cell("utc_ut1_equal")).get("pole_star");
        assertThat(south.get("name").textValue()).isEqualTo("Sigma Octantis");
        assertThat(south.get("distance_arcmin").doubleValue())
                .isCloseTo(row.number("sigoct_dist_arcmin"), within(0.02));
        assertSameDirection(
                south.get("hour_angle_deg").doubleValue(), 15 * row.number("sigoct_ha_at_greenwich_h"), 0.03);
    }

    /**
     * Right and up offsets of the pole star from the pole, by view, derived outside this project and checked by
     * rotation: north erect (−sin H, cos H), inverted (sin H, −cos H), mirrored (sin H, cos H); in the south the first
     * changes sign.
     */
    @ParameterizedTest
    @CsvSource({"51.5", "-35"})
    void poleStarClockPosition_matchesTheFormulas(double latitude) {
        double sign = Math.signum(latitude);
        for (int hour = 0; hour < 24; hour += 5) {
            JsonNode star = ground(latitude + ",0", "2026-05-01T%02d:00:00Z".formatted(hour))
                    .get("pole_star");
            double sin = Math.sin(Math.toRadians(star.get("hour_angle_deg").doubleValue()));
            double cos = Math.cos(Math.toRadians(star.get("hour_angle_deg").doubleValue()));
            assertClock(star, "erect", -sign * sin, cos);
            assertClock(star, "inverted", sign * sin, -cos);
            assertClock(star, "mirrored", sign * sin, cos);
        }
    }

    @Test
    void wedgeAngle_isTheLatitude_inBothHemispheres() {
        assertThat(ground("54.6,-2.9", "2026-05-01T00:00:00Z")
                        .get("wedge_scale_deg")
                        .doubleValue())
                .isCloseTo(54.6, within(1e-9));
        assertThat(ground("-43.95,170.4", "2026-05-01T00:00:00Z")
                        .get("wedge_scale_deg")
                        .doubleValue())
                .isCloseTo(43.95, within(1e-9));
    }

    private static void assertClock(JsonNode star, String view, double right, double up) {
        double expected = Math.toDegrees(Math.atan2(right, up));
        assertSameDirection(star.get("clockwise_from_top_" + view + "_deg").doubleValue(), expected, 1e-6);
    }

    private static void assertSameDirection(double degrees, double expectedDegrees, double toleranceDegrees) {
        assertThat(Math.IEEEremainder(degrees - expectedDegrees, 360)).isCloseTo(0, within(toleranceDegrees));
    }

    private JsonNode ground(String site, String at) {
        return new CommandRun(folder, "2026-01-01T00:00:00Z")
                .good("ground", "--site", site, "--at", at, "--json")
                .json();
    }

    private static String ofYear(double decimalYear) {
        int year = (int) decimalYear;
        LocalDate first = LocalDate.of(year, 1, 1);
        Instant start = first.atStartOfDay(ZoneOffset.UTC).toInstant();
        return start.plusSeconds(Math.round((decimalYear - year) * first.lengthOfYear() * 86_400L))
                .toString();
    }
}
