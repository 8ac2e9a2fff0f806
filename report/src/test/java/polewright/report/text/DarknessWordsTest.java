package polewright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.sky.almanac.Darkness;
import polewright.sky.almanac.MoonTonight;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;

class DarknessWordsTest {
    private static List<String> words(double latitude, double longitude, String now, String zone) {
        Site site = Site.ofDegrees(latitude, longitude, 100);
        Darkness darkness = Darkness.comingAt(site, Instant.parse(now));
        return DarknessWords.of(
                        site, Weather.standardAt(100), darkness, MoonTonight.of(site, darkness), ZoneId.of(zone))
                .stream()
                .map(DarknessWordsTest::plain)
                .toList();
    }

    /** Replaces non-breaking spaces by plain ones. */
    private static String plain(String line) {
        return line.replace(Wrapping.unbroken(" "), " ");
    }

    @Test
    void winterNightAtLarkfell() {
        assertThat(words(54.6, -2.9, "2026-11-25T14:00:00Z", "Europe/London"))
                .startsWith(
                        "Night from Wednesday 25 November 2026, times in GMT:",
                        "  Sun sets                      15:56 GMT",
                        "  Civil twilight ends           16:38 GMT")
                .contains(
                        "Thursday 26 November 2026:",
                        "Astronomical darkness from 18:07 to 05:51 (Thursday): 11 h 45 min.");
    }

    @Test
    void noAstronomicalDarkness_isStated() {
        assertThat(words(60.5, 5, "2026-06-20T12:00:00Z", "Europe/Oslo"))
                .anyMatch(line -> line.startsWith("No astronomical darkness: the Sun only reaches 6")
                        && line.contains("below the horizon (18° is needed). Twilight all night, darkest at "));
        assertThat(words(69.6, 18.9, "2026-06-20T12:00:00Z", "Europe/Oslo"))
                .anyMatch(line -> line.startsWith("No night: the Sun does not set. Lowest at "));
        assertThat(words(69.6, 18.9, "2026-12-20T12:00:00Z", "Europe/Oslo"))
                .anyMatch(line -> line.startsWith("The Sun does not rise; at noon it is still "));
        assertThat(words(-69.6, 18.9, "2026-12-20T12:00:00Z", "UTC"))
                .anyMatch(line -> line.startsWith("No night: the Sun does not set."));
    }

    @Test
    void inTheSouth_datesAreLocal() {
        assertThat(words(-43.95, 170.4, "2026-06-15T03:00:00Z", "Pacific/Auckland"))
                .first()
                .isEqualTo("Night from Monday 15 June 2026, times in NZST:");
    }

    @Test
    void whenTheClocksChange_eachTimeHasItsZone() {
        List<String> lines = words(54.6, -2.9, "2026-10-24T12:00:00Z", "Europe/London");
        assertThat(lines).first().isEqualTo("Night from Saturday 24 October 2026; the clocks change, BST to GMT:");
        assertThat(lines).anyMatch(line -> line.endsWith("BST")).anyMatch(line -> line.endsWith("GMT"));
    }

    @Test
    void times_areRoundedBeforeTheDayIsNamed() {
        NightClock clock = new NightClock(
                ZoneId.of("UTC"),
                new Interval(Instant.parse("2026-01-15T12:00:00Z"), Instant.parse("2026-01-16T12:00:00Z")));
        assertThat(clock.inSentence(Instant.parse("2026-01-15T23:59:29Z"))).isEqualTo("23:59");
        assertThat(plain(clock.inSentence(Instant.parse("2026-01-15T23:59:59Z"))))
                .isEqualTo("00:00 (Friday)");
    }
}
