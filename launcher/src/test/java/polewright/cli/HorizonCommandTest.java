package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

class HorizonCommandTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beginTheNight() {
        person = new CommandRun(folder, "2026-01-15T17:30:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
    }

    @Test
    void skyline_isKeptForTheNextNight() {
        person.good("horizon", "0,8", "95,22.5", "180,4");
        assertThat(person.good("horizon").lines())
                .containsExactly(
                        "The skyline, from north through east:",
                        "  azimuth 0° (north): 8° high",
                        "  azimuth 95° (east): 22.5° high",
                        "  azimuth 180° (south): 4° high");
        person.waitMinutes(24 * 60);
        assertThat(person.good("begin").lines()).contains("NOTE  Same skyline as last time, with 3 corners.");
        assertThat(person.good("horizon").lines()).hasSize(4);
        assertThat(person.good("begin", "--site", "-43.95,170.40,710").out()).doesNotContain("skyline");
    }

    @Test
    void undo_restoresThePreviousSkyline() {
        person.good("horizon", "0,8", "180,4");
        person.good("horizon", "--open");
        person.good("undo");
        assertThat(person.good("horizon").lines()).hasSize(3);
    }

    @Test
    void removedSkyline_staysRemovedNextNight() {
        person.good("horizon", "0,8", "180,4");
        person.waitMinutes(24 * 60);
        person.good("begin");
        person.good("horizon", "--open");
        person.waitMinutes(24 * 60);
        assertThat(person.good("begin").out()).doesNotContain("skyline");
        assertThat(person.good("horizon").lines()).containsExactly("Open horizon: no skyline entered.");
    }

    @Test
    void file_isReadWholeOrNotAtAll() throws IOException {
        Path csv = Files.writeString(folder.resolve("garden.csv"), "azimuth;altitude\n0;8\n95;tree\n");
        CommandRun.Outcome outcome = person.run("horizon", "--csv", csv.toString());
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.complaint())
                .endsWith("garden.csv: line 3: '95;tree' is not a skyline corner. Write"
                        + " azimuth,altitude in degrees, azimuth from north through east; for example 95,22.5.");
        assertThat(person.events()).isEqualTo(1);
        Files.writeString(csv, "azimuth;altitude\n0;8\n95;20\n");
        person.good("horizon", "--csv", csv.toString());
        assertThat(person.good("horizon", "--json").out())
                .isEqualTo("{\"skyline\":[{\"az_deg\":0.0,\"alt_deg\":8.0},{\"az_deg\":95.0,\"alt_deg\":20.0}]}\n");
    }

    @Test
    void picture_isDrawnInBothPalettes() throws IOException {
        Path light = folder.resolve("light.svg");
        Path dark = folder.resolve("dark.svg");
        person.good("horizon", "0,8", "90,5", "90,30", "120,30", "120,6", "--picture", light.toString());
        person.good("horizon", "--picture", dark.toString(), "--dark");
        assertThat(Files.readString(light))
                .contains("<polygon")
                .contains(">pole<")
                .contains(">lowest, 10°<");
        assertThat(Files.readString(dark)).contains("fill=\"#000000\"");
    }

    @Test
    void conflictingOptions_areRefused() {
        assertThat(person.run("horizon", "0,8", "--open").complaint())
                .isEqualTo("polewright horizon: the skyline is given twice. Give corners, --csv or --open, only one of"
                        + " them.");
    }
}
