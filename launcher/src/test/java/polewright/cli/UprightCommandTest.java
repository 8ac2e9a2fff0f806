package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

class UprightCommandTest {
    @TempDir
    private Path folder;

    private CommandRun.Outcome upright(String... more) {
        String[] words = new String[more.length + 7];
        System.arraycopy(
                new String[] {"upright", "--site", "54.60,-2.90,240", "--focal-length", "1200", "--pixel", "3.76"},
                0,
                words,
                0,
                7);
        System.arraycopy(more, 0, words, 7, more.length);
        return new CommandRun(folder, "2026-11-25T20:30:00Z").run(words);
    }

    @Test
    void verdictOnTheWedge_dependsOnTheExposure() {
        assertThat(upright("--exposure", "3").lines().get(0))
                .startsWith("For exposures of 3 s the wedge gains little: ");
        assertThat(upright("--exposure", "300").out()).contains("the wedge is worthwhile: ");
        assertThat(upright().lines()).allMatch(line -> line.length() <= 80);
        assertThat(upright().out()).contains("  height   toward north   toward south");
    }

    /**
     * cos A falls to cos 80° = 0.17, so ten degrees off east allow about six times the exposure on the meridian, not
     * thirty.
     */
    @Test
    void eastAndWest_giveAnExposureThatLastsForATarget() {
        assertThat(upright().lines())
                .anyMatch(line -> line.endsWith("10° off E, W"))
                .anyMatch(line -> line.matches(" +30° .* 3\\.[0-9] minutes"));
    }

    @Test
    void impossibleEitherWay_isReported() {
        assertThat(upright("--exposure", "3600").out()).contains("the wedge alone is not enough, see below");
    }

    @Test
    void json_coversTheWholeSky() throws IOException {
        assertThat(new ObjectMapper().readTree(upright("--json").out()).get("longest"))
                .hasSize(4 * 24);
    }

    @Test
    void withoutACamera_missingValuesAreNamed() {
        assertThat(new CommandRun(folder, "2026-11-25T20:30:00Z")
                        .run("upright", "--site", "54.60,-2.90,240")
                        .complaint())
                .isEqualTo("polewright upright: the rig has no camera, and by eye field rotation does not matter. Add"
                        + " --focal-length MM --pixel MICRONS, or the camera to the rig file.");
    }
}
