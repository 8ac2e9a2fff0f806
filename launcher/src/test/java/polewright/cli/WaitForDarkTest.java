package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/**
 * By day, with compass and scale read and the Sun too low for a shadow: how long to wait, and for which sighting.
 * Sunset and civil twilight at Larkfell on 21 June 2026 by NOAA's solar equations (NOAA Solar Calculator, Meeus 1998),
 * worked out independently of the program: the Sun sets at 20:52 UTC, and civil twilight ends at 21:49 UTC.
 */
class WaitForDarkTest {
    @TempDir
    private Path folder;

    private CommandRun afterTheReadings() {
        CommandRun person = new CommandRun(folder, "2026-06-21T20:20:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
        person.good("sight", "compass", "1");
        person.good("sight", "scale", "54.6");
        return person;
    }

    @Test
    void waiting_namesTheTimeAndTheSighting() {
        String next = afterTheReadings().good("next").out().replaceAll("\\s+", " ");
        assertThat(next)
                .containsPattern("WAIT until the Sun is down at 20:5[123] UTC, in 3[123] min\\.")
                .contains("NEXT Point the tube at the pole, swing it back and forth in right ascension")
                .containsPattern("The first bright stars appear about 21:(48|49|50) UTC\\.")
                .contains("CARE Keep tube and finder capped while the Sun is up.");
    }

    @Test
    void json_hasTimesAndSighting() {
        JsonNode advice = afterTheReadings().good("advise", "--json").json();
        assertThat(advice.path("do").asText()).isEqualTo("wait");
        assertThat(advice.path("until").asText()).startsWith("2026-06-21T20:5");
        assertThat(advice.path("stars_show_at").asText()).startsWith("2026-06-21T21:");
        assertThat(advice.path("next_sighting").asText()).isEqualTo("still_point");
    }
}
