package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.place.Site;

class DoubtfulSiteTest {
    private static final Instant WINTER = Instant.parse("2026-01-15T20:00:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);

    private static Optional<DoubtfulSite> of(double latitude, double longitude, String zone, Site... last) {
        return DoubtfulSite.of(
                Site.ofDegrees(latitude, longitude, 0),
                ZoneId.of(zone),
                WINTER,
                last.length == 0 ? Optional.empty() : Optional.of(last[0]));
    }

    @Test
    void swappedCoordinates_areDetectedByTheTimeZone() {
        DoubtfulSite doubtful = of(0.40, 52.10, "Europe/London").orElseThrow();
        assertThat(doubtful.hoursOffZone().orElseThrow()).isCloseTo(52.10 / 15, within(1e-9));
        assertThat(doubtful.meant()).hasValue(Site.ofDegrees(52.10, 0.40, 0));
        assertThat(of(52.10, 0.40, "Europe/London")).isEmpty();
    }

    @Test
    void swappedCoordinates_areDetectedByTheLastNight_inAnyTimeZone() {
        DoubtfulSite doubtful = of(-2.90, 54.60, "UTC", LARKFELL).orElseThrow();
        assertThat(doubtful.hoursOffZone()).isEmpty();
        assertThat(doubtful.kilometresFromLast().orElseThrow()).isGreaterThan(5000);
        assertThat(doubtful.meant()).hasValue(Site.ofDegrees(54.60, -2.90, 0));
    }

    @Test
    void eastForWest_isDetected() {
        assertThat(of(-43.95, -170.40, "Pacific/Auckland", Site.ofDegrees(-43.95, 170.40, 710))
                        .orElseThrow()
                        .meant())
                .hasValue(Site.ofDegrees(-43.95, 170.40, 0));
    }

    @Test
    void siteFarFromTheLastNights_isDetected_nearbyOneIsNot() {
        assertThat(of(54.60, -2.90, "Europe/London", Site.ofDegrees(-43.95, 170.40, 710)))
                .isPresent();
        // 0.8 degrees of latitude are 89 km, 1 degree is 111.
        assertThat(of(53.80, -2.90, "Europe/London", LARKFELL)).isEmpty();
        assertThat(of(53.60, -2.90, "Europe/London", LARKFELL)
                        .orElseThrow()
                        .kilometresFromLast()
                        .orElseThrow())
                .isCloseTo(111.2, within(0.1));
    }

    /** A time zone that was never set is UTC; that must not warn everyone who lives elsewhere. */
    @ParameterizedTest
    @CsvSource({"UTC", "Etc/UTC", "GMT", "Z", "+00:00"})
    void computerOnUtc_isUninformative(String zone) {
        assertThat(of(0.40, 52.10, zone)).isEmpty();
        assertThat(of(-43.95, 170.40, zone)).isEmpty();
    }

    /** Places with the widest time zones; offsets from the IANA time zone database, coordinates in round numbers. */
    @ParameterizedTest
    @CsvSource({
        "39.5, 76.0, Asia/Shanghai",
        "43.8, 87.6, Asia/Shanghai",
        "64.5, -165.4, America/Nome",
        "1.9, -157.4, Pacific/Kiritimati",
        "40.4, -3.7, Europe/Madrid",
        "42.9, -9.3, Europe/Madrid",
        "64.1, -21.9, Atlantic/Reykjavik",
        "-54.8, -68.3, America/Argentina/Ushuaia",
        "-50.3, -72.3, America/Argentina/Rio_Gallegos",
        "-43.95, 176.5, Pacific/Chatham",
        "28.6, 77.2, Asia/Kolkata",
        "54.6, -2.9, Europe/London",
        "-43.95, 170.4, Pacific/Auckland",
        "69.4, 30.0, Europe/Oslo"
    })
    void sitesInWideTimeZones_areNotQuestioned(double latitude, double longitude, String zone) {
        assertThat(of(latitude, longitude, zone)).isEmpty();
    }

    @Test
    void summerTimeMakesNoDifference() {
        Site west = Site.ofDegrees(42.9, -9.3, 0);
        assertThat(DoubtfulSite.of(
                        west, ZoneId.of("Europe/Madrid"), Instant.parse("2026-07-15T20:00:00Z"), Optional.empty()))
                .isEmpty();
    }
}
