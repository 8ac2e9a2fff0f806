package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

class ChartCommandTest {
    private static final String[] LARKFELL = {"--site", "54.60,-2.90,240"};

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void atDusk() {
        person = new CommandRun(folder, "2026-11-25T20:30:00Z");
    }

    private CommandRun.Outcome chart(String... words) {
        String[] all = new String[words.length + 3];
        all[0] = "chart";
        System.arraycopy(words, 0, all, 1, words.length);
        System.arraycopy(LARKFELL, 0, all, words.length + 1, 2);
        return person.run(all);
    }

    @Test
    void starHop_isDescribed() {
        assertThat(chart("M 31", "--optic", "eyepiece").lines())
                .containsExactly(
                        "Look south, 7½ fists up (76.8°), for M 31 (Andromeda Galaxy).",
                        "From Mirach (south-south-east, 7 fists up) go 7.7° (9.7 field widths), up and",
                        "left as seen in the eyepiece.",
                        "The eyepiece shows 48′ of sky, left and right swapped.",
                        "To draw it: --picture FILE.svg.");
    }

    @Test
    void picture_isDrawnInBothPalettes() throws IOException {
        Path light = folder.resolve("light.svg");
        Path dark = folder.resolve("dark.svg");
        chart("M 13", "--picture", light.toString());
        chart("M 13", "--picture", dark.toString(), "--dark");
        assertThat(Files.readString(light))
                .contains(">M 13 (Great Star Cluster in Hercules)<", ">finder, 6.0° wide, upside down<", ">N<", ">E<");
        assertThat(Files.readString(dark)).contains("fill=\"#000000\"");
    }

    @Test
    void json_hasStarsAndStarHop() throws IOException {
        JsonNode node = new ObjectMapper().readTree(chart("M 31", "--json").out());
        assertThat(node.get("field_deg").asDouble()).isCloseTo(6, within(1e-9));
        assertThat(node.get("guide_star").get("name").asText()).isEqualTo("Mirach");
        assertThat(node.get("stars").size()).isGreaterThan(20);
        assertThat(node.get("stars").get(0).has("right_arcmin")).isTrue();
    }

    @Test
    void sun_isRefused() {
        CommandRun.Outcome outcome = chart("sun");
        assertThat(outcome.status()).isEqualTo(2);
        assertThat(outcome.complaint())
                .isEqualTo("polewright chart: never look for the Sun through a finder: cap it. The Sun burns an eye in"
                        + " an instant; only a proper filter over the front of the tube makes it safe.");
    }

    @Test
    void targetBelowTheHorizonOrObstructed_isReported() {
        assertThat(chart("M 8").lines()).anyMatch(line -> line.contains("is below the horizon"));
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        person.good("horizon", "0,50");
        assertThat(person.good("chart", "M 57").out()).contains("NOTE  Out of reach now: behind the skyline (");
    }

    @Test
    void unknownOptic_isRefused() {
        assertThat(chart("M 13", "--optic", "binocular").complaint())
                .isEqualTo("polewright chart: the rig has no optic 'binocular'; it has finder, eyepiece, reticle.");
        assertThat(chart("M 13", "--faintest", "15").complaint())
                .isEqualTo("polewright chart: a magnitude limit of 15.0 is outside 1 to 12, the range of the atlas.");
    }

    /** Capella is 23° from the midsummer Sun. The target, 31° from it, brings no caution of its own. */
    @Test
    void byDay_noStarHopIsGiven() {
        person = new CommandRun(folder, "2026-06-15T12:30:00Z");
        CommandRun.Outcome outcome = chart("79,54");
        assertThat(outcome.out())
                .doesNotContain("Capella")
                .contains("NOTE  Too light to hop from a star. Wait for dusk, or use go-to or the setting")
                .contains("CARE  The Sun is up. Keep tube and finder capped until they have stopped moving,");
        assertThat(chart("79,54", "--json").out()).doesNotContain("guide_star").contains("The Sun is up");
    }

    @Test
    void atNight_sunIsNotMentioned() {
        assertThat(chart("M 31").out()).contains("From Mirach").doesNotContain("Sun");
    }

    @Test
    void byDay_nearTheSun_bringsACaution() {
        person = new CommandRun(folder, "2026-11-25T12:00:00Z");
        assertThat(chart("venus").out() + chart("mercury").out()).contains("CARE  Only ");
    }
}
