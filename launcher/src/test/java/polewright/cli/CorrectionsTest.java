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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;

/** A wrongly entered rig, site or sighting, corrected in the terminal in the middle of the night. */
class CorrectionsTest {
    private static final String LARKFELL = "54.60,-2.90,240";

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beginTheNight() {
        person = new CommandRun(folder, "2026-11-25T19:00:00Z");
        person.good("begin", "--site", LARKFELL, "--name", "Larkfell");
    }

    private CommandRun.Outcome type(String... words) {
        person.waitMinutes(12);
        return person.good(words);
    }

    private JsonNode fix() {
        return person.good("fix", "--json").json();
    }

    private JsonNode rig() throws IOException {
        return new ObjectMapper().readTree(person.good("rig").out());
    }

    @Test
    void correctedRig_isPrintedAndUsed_andCanBeUndone() throws IOException {
        type("sight", "compass", "4");
        type("sight", "scale", "54.5");
        type("turn", "--azimuth", "2");
        JsonNode before = fix();
        CommandRun.Outcome corrected = type(
                "rig", "correct", "--azimuth-clockwise", "left", "--altitude-gain", "0.5", "--altitude-play", "0.3");

        assertThat(corrected.out())
                .startsWith("Logged #5: rig corrected: azimuth screw clockwise moves the axis left;");
        assertThat(fix()).isNotEqualTo(before);
        JsonNode rig = rig();
        assertThat(rig.at("/azimuth_screw/clockwise").textValue()).isEqualTo("left");
        assertThat(rig.at("/altitude_screw/backlash_turns").doubleValue()).isEqualTo(0.3);
        // Half the movement per turn means an arm about twice as long.
        assertThat(rig.at("/altitude_screw/geometry/arm_mm").doubleValue()).isBetween(359.99, 360.01);
        assertThat(person.good("log").out().replaceAll("\\s+", " "))
                .contains(
                        "rig corrected: azimuth screw clockwise moves the axis left; altitude screw pitch 1.25 mm, arm"
                                + " 360 mm, backlash of 0.3 turns");

        type("undo");
        assertThat(fix()).isEqualTo(before);
        assertThat(rig().at("/azimuth_screw/clockwise").textValue()).isEqualTo("right");
    }

    @Test
    void nextNight_startsWithTheCorrectedRigAndSite() throws IOException {
        type("rig", "correct", "--azimuth-reversed");
        type("site", "correct", "--other-longitude");
        person.waitMinutes(24 * 60);
        person.good("begin");
        assertThat(rig().at("/azimuth_screw/clockwise").textValue()).isEqualTo("left");
        assertThat(person.good("site").out()).contains("2.90° E");
    }

    @Test
    void rig_canBeReplacedFromAFile() throws IOException {
        Path file = folder.resolve("rig.json");
        Files.writeString(
                file,
                person.good("rig").out().replace("\"fork\"", "\"old fork\"").replace("\"right\"", "\"left\""));
        type("rig", "correct", "--rig", file.toString());
        assertThat(rig().at("/name").textValue()).isEqualTo("old fork");
        type("undo");
        assertThat(rig().at("/name").textValue()).isEqualTo("fork");
    }

    @Test
    void rigOfAnEarlierNight_canBeChosenByName() throws IOException {
        Path file = folder.resolve("rig.json");
        Files.writeString(file, person.good("rig").out().replace("\"fork\"", "\"old fork\""));
        person.waitMinutes(24 * 60);
        person.good("begin", "--rig", file.toString());
        type("rig", "correct", "--known", "Fork");
        assertThat(rig().at("/name").textValue()).isEqualTo("fork");
        CommandRun.Outcome unknown = person.run("rig", "correct", "--known", "truss");
        assertThat(unknown.complaint())
                .isEqualTo("polewright rig correct: no night in the log had a rig called 'truss'. The rigs are fork.");
    }

    @Test
    void correctedView_reinterpretsItsSightings() {
        type("sight", "still", "polaris", "--distance", "0.2", "--toward", "4.5", "--with", "finder");
        type("rig", "correct", "--optic", "finder", "--view", "erect");
        JsonNode corrected = fix();
        type("undo");
        type("undo", "2");
        type(
                "sight",
                "still",
                "polaris",
                "--distance",
                "0.2",
                "--toward",
                "4.5",
                "--field",
                "6",
                "--view",
                "erect",
                "--at",
                "2026-11-25T19:12:00Z");
        for (String figure : new String[] {"/east_arcmin", "/up_arcmin"}) {
            assertThat(corrected.at(figure).isNumber()).as(figure).isTrue();
            assertThat(corrected.at(figure).doubleValue())
                    .isCloseTo(fix().at(figure).doubleValue(), within(1e-4));
        }
    }

    @Test
    void correctedSite_givesTheSameResultAsBeginningThere() {
        CommandRun elsewhere = new CommandRun(folder.resolve("abroad"), "2026-11-25T19:00:00Z");
        elsewhere.good("begin", "--site", "54.60,2.90,240", "--name", "Larkfell");
        for (CommandRun each : new CommandRun[] {person, elsewhere}) {
            each.waitMinutes(12);
            each.good("sight", "compass", "4");
            each.waitMinutes(12);
            each.good(
                    "sight",
                    "drift",
                    "capella",
                    "--minutes",
                    "5",
                    "--moved",
                    "1",
                    "--toward",
                    "s",
                    "--with",
                    "reticle");
        }
        assertThat(elsewhere.good("fix", "--json").json()).isNotEqualTo(fix());
        elsewhere.good("site", "correct", "--other-longitude");
        assertThat(elsewhere.good("fix", "--json").json()).isEqualTo(fix());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        rig correct                                              | no figure of the rig is corrected. Give the figure that was wrong.
        rig correct --azimuth-clockwise raises                   | the azimuth screw of rig 'fork' raises the axis. Give whether a clockwise turn moves it right or left.
        rig correct --azimuth-clockwise left --azimuth-reversed  | which way the azimuth screw works is given twice. Give --azimuth-clockwise or --azimuth-reversed.
        rig correct --altitude-gain 0                            | --altitude-gain: 0 is outside 0.01 to 100. 1 is as entered, 0.5 is half as far.
        rig correct --optic guidescope --view erect              | the rig has no optic called 'guidescope'. Its optics are finder, eyepiece, reticle.
        rig correct --view erect                                 | the optic is missing. Give --optic.
        site correct                                             | the site is missing. Give --site as latitude, longitude and height (degrees, north and east positive; metres).
        site correct --site 54.60,-2.90,240                      | the site already has these values. Give the correct site.
        site correct --site 88,10                                | latitude 88 is beyond 84 degrees, where a wedge cannot be set by azimuth and altitude. Check that latitude comes before longitude.
        sight scale 54 --instead-of 1                            | event 1 is neither a sighting nor a centring, so nothing can replace it. Give the number of a sighting, as the log shows it.
        sight scale 54 --instead-of 7                            | there is no event 7 that counts. Give the number of a sighting, as the log shows it.
        """)
    void correctionWithoutEffect_isRefused_andNotLogged(String typed, String complaint) {
        CommandRun.Outcome refused = person.run(typed.strip().split("\\s+"));
        assertThat(refused.status()).isNotZero();
        assertThat(refused.complaint()).endsWith(complaint);
        assertThat(person.good("log", "--json").json()).hasSize(1);
    }

    @Test
    void replacedSighting_keepsTimeAndPosition_andCanBeReplacedAgain() {
        type("sight", "compass", "4");
        type("sight", "scale", "52.5");
        type("sight", "drift", "capella", "--minutes", "5", "--moved", "3", "--toward", "s", "--with", "reticle");
        type("turn", "--azimuth", "1");
        assertThat(type("sight", "scale", "54.5", "--instead-of", "3").out())
                .startsWith("Logged #6: in place of #3: level and scale 54.5°.\n");
        JsonNode replaced = person.good("log", "--json").json().get(5);
        assertThat(replaced.get("instead_of").longValue()).isEqualTo(3);
        assertThat(replaced.get("seen_at").textValue()).isEqualTo("2026-11-25T19:24:00Z");
        assertThat(person.good("log").out()).contains("level and scale 52.5° (replaced by #6)");

        // A replacement can be corrected by either number.
        type("sight", "scale", "54.3", "--instead-of", "6");
        assertThat(person.good("log", "--json").json().get(6).get("instead_of").longValue())
                .isEqualTo(3);
        type(
                "sight",
                "drift",
                "capella",
                "--minutes",
                "6",
                "--moved",
                "3",
                "--toward",
                "n",
                "--with",
                "reticle",
                "--instead-of",
                "4");
        assertThat(person.good("log", "--json").json().get(7).get("seen_at").textValue())
                .isEqualTo(person.good("log", "--json")
                        .json()
                        .get(3)
                        .get("seen_at")
                        .textValue());
    }

    @Test
    void centring_canBeReplaced() {
        type("centre", "capella", "--reads", "5h17m38s,+46d12m36s");
        type("centre", "capella", "--reads", "5h18m38s,+46d12m36s", "--instead-of", "2");
        JsonNode log = person.good("log", "--json").json();
        assertThat(log.get(2).get("instead_of").longValue()).isEqualTo(2);
        assertThat(log.get(2).get("seen_at")).isEqualTo(log.get(1).get("seen_at"));
    }

    @Test
    void begin_duringANight_namesTheCorrectionCommand() {
        type("sight", "compass", "4");
        assertThat(person.run("begin", "--site", "54.60,2.90").complaint())
                .contains("polewright rig correct", "polewright site correct");
    }
}
