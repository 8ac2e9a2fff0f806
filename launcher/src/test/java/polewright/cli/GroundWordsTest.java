package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun;

class GroundWordsTest {
    private static final String NORTH = "54.60,-2.90,240";
    private static final String SOUTH = "-43.95,170.40,710";

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void setUp() {
        person = new CommandRun(folder, "2026-11-25T13:00:00Z");
    }

    @Test
    void northernSite_describesTheNorth() {
        assertThat(person.good("ground", "--site", NORTH).lines())
                .contains(
                        "COMPASS 0.0° is true north (declination 0.0° ± 0.4°; nearby iron can add more).",
                        "WEDGE   scale at 54.6° (a scale that counts from the zenith: 35.4°).",
                        "SHADOW  a plumb line's shadow points to 14.7° true at 2026-11-25 13:00 UTC; the",
                        "        axis must be 14.7° counter-clockwise of it, seen from above.",
                        "CARE    Do not look at the Sun; cap tube and finder by day.",
                        "STAR    Polaris is 37.3′ from the true pole at 2026-11-25 13:00 UTC. Direction",
                        "HOME    fork on a wedge:",
                        "  4. Turn the wedge so that its plate faces up toward true north.");
    }

    @Test
    void southernSite_describesTheSouth() {
        assertThat(person.good("ground", "--site", SOUTH).lines())
                .contains(
                        "COMPASS 155.3° is true south (declination 24.7° east ± 0.4°; nearby iron can add",
                        "WEDGE   scale at 44.0° (a scale that counts from the zenith: 46.0°).",
                        "SHADOW  none: the Sun is down.",
                        "STAR    Sigma Octantis is 69.1′ from the true pole at 2026-11-25 13:00 UTC.",
                        "  4. Turn the wedge so that its plate faces up toward true south.");
        assertThat(person.good("ground", "--site", SOUTH).out()).doesNotContain("Polaris", "true north");
    }

    @ParameterizedTest
    @ValueSource(strings = {"fork_on_wedge", "fork_upright", "german", "tracker", "FORK-ON-WEDGE", "fork upright"})
    void everyMount_hasAHomePositionAndCautions(String mount) {
        String out = person.good("ground", "--site", NORTH, "--mount", mount).out();
        assertThat(out)
                .contains("HOME    ")
                .contains("CARE: never near the Sun without a proper filter")
                .contains("CARE: mains and dew can kill: a battery is safest.");
    }

    @Test
    void uprightFork_facesNorthInBothHemispheres_withoutAWedge() {
        String out = person.good("ground", "--site", SOUTH, "--mount", "fork_upright")
                .out();
        assertThat(out).contains("COMPASS 335.3° is true north").doesNotContain("WEDGE");
    }

    @Test
    void nearTheMagneticPole_compassIsReportedAsUseless() {
        assertThat(person.good("ground", "--site", "86,140").out())
                .contains("COMPASS of no use here. Find north by the Sun or a star.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"fork_on_wedge", "fork_upright", "german", "tracker"})
    void drawing_isSvg(String mount) throws Exception {
        Path file = person.file("home.svg");
        assertThat(person.good("ground", "--site", NORTH, "--mount", mount, "--drawing", file.toString())
                        .lines())
                .contains("Drawn: " + file);
        var root = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(file.toFile())
                .getDocumentElement();
        assertThat(root.getTagName()).isEqualTo("svg");
    }

    @Test
    void darkDrawing_differs() throws IOException {
        person.good(
                "ground", "--site", NORTH, "--drawing", person.file("light.svg").toString());
        person.good(
                "ground",
                "--site",
                NORTH,
                "--dark",
                "--json",
                "--drawing",
                person.file("dark.svg").toString());
        assertThat(Files.readString(person.file("dark.svg"))).isNotEqualTo(Files.readString(person.file("light.svg")));
    }

    @Test
    void unwritableDrawing_isReported() {
        var outcome = person.run(
                "ground",
                "--site",
                NORTH,
                "--drawing",
                folder.resolve("no/such.svg").toString());
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err())
                .isEqualTo("polewright ground: " + folder.resolve("no/such.svg")
                        + " cannot be written: there is no folder " + folder.resolve("no")
                        + ". Create it, or name a file in an existing folder.\n");
    }
}
