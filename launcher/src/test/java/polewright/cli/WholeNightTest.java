package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.operations.CommandRun;

/** A night at the invented site Larkfell, typed command by command. */
class WholeNightTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void beginTheNight() {
        person = new CommandRun(folder, "2026-01-15T17:30:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
    }

    private void wholeNight() {
        type("sight", "compass", "3");
        type("sight", "scale", "54", "--sigma", "0.5");
        type("sight", "still", "polaris", "--distance", "0.02", "--toward", "4.5", "--with", "finder");
        type("sight", "drift", "rigel", "--minutes", "5", "--moved", "0.4", "--toward", "s", "--with", "reticle");
        type("turn", "--azimuth", "1/4 ccw");
        type(
                "sight",
                "drift",
                "procyon",
                "--minutes",
                "10",
                "--moved",
                "4",
                "--unit",
                "arcsec",
                "--toward",
                "north",
                "--at",
                "2026-01-15T19:30Z");
        type("note", "thin cloud");
        type("clamp");
        type("sight", "drift", "rigel", "--minutes", "10", "--moved", "3", "--unit", "arcsec", "--toward", "south");
    }

    private CommandRun.Outcome type(String... words) {
        person.waitMinutes(12);
        return person.good(words);
    }

    @Test
    void everyCommandOfANight_succeeds() {
        wholeNight();
        assertThat(person.good("fix").out()).startsWith("Axis: ");
        assertThat(person.good("advise").out()).containsPattern("(?m)^(STOP|SIGHT|TURN|CLAMP|MOVE|LOOSEN) ");
        assertThat(person.good("log").lines().stream().filter(line -> line.startsWith("#")))
                .hasSize(10);
        assertThat(person.events()).isEqualTo(10);
    }

    @Test
    void lateEntry_keepsTheTimeOfTheAction() {
        person.waitMinutes(300);
        person.good("sight", "scale", "54", "--at", "2026-01-15T18:00Z");
        person.good("turn", "--altitude", "1/4", "--at", "2026-01-15T18:20Z");
        CommandRun.Outcome clamped = person.good("clamp", "--at", "2026-01-15T18:05Z");
        assertThat(clamped.lines())
                .contains(
                        "NOTE  Treated as done after #3 (2026-01-15T18:20:00Z), because it was logged",
                        "      later, although its time is earlier.");
        assertThat(person.good("log").lines())
                .contains("#3   18:20 UTC  turned altitude 1/4 turn clockwise", "#4   18:05 UTC  clamped");
    }

    @Test
    void log_listsTheNightInOrder() {
        wholeNight();
        assertThat(person.good("log").lines())
                .startsWith(
                        "#1   17:30 UTC  begun at Larkfell with fork, allowed within 5′ of the pole",
                        "#2   17:42 UTC  compass 3.0°, declination -0.2°",
                        "#3   17:54 UTC  level and scale 54.0°")
                .contains("#6   18:30 UTC  turned azimuth 1/4 turn counter-clockwise", "#9   19:06 UTC  clamped");
    }

    @Test
    void exportedNight_replaysToTheSameFix() {
        wholeNight();
        Path file = person.file("night.jsonl");
        assertThat(person.good("log", "export", file.toString()).out())
                .isEqualTo("Written: 10 events to " + file + "\n");
        JsonNode replayed = person.good("replay", file.toString(), "--json").json();
        JsonNode fix = person.good("fix", "--json").json();
        JsonNode last = replayed.get(replayed.size() - 1);
        assertThat(replayed).hasSize(10);
        for (String key : List.of("east_arcmin", "up_arcmin")) {
            assertThat(last.get(key).doubleValue()).isCloseTo(fix.get(key).doubleValue(), within(1e-9));
        }
        assertThat(last.get("cov_arcmin2")).isEqualTo(fix.get("cov_arcmin2"));
    }

    @Test
    void importedNight_isTheSameNight() {
        wholeNight();
        Path file = person.file("night.jsonl");
        String before = person.good("log", "--json").out();
        person.good("log", "export", file.toString());
        assertThat(person.good("log", "import", file.toString()).out()).isEqualTo("Added: 10 events as night 2.\n");
        assertThat(person.good("log", "--night", "2", "--json").out()).isEqualTo(before);
        assertThat(person.good("log", "nights").lines())
                .containsExactlyInAnyOrder(
                        "night 1  2026-01-15T17:30:00Z  Larkfell, 10 events",
                        "night 2  2026-01-15T17:30:00Z  Larkfell, 10 events");
    }

    @Test
    void replay_printsTheDocumentedResultAfterEachEvent() {
        wholeNight();
        Path file = person.file("night.jsonl");
        person.good("log", "export", file.toString());
        long seq = 1;
        for (JsonNode event : person.good("replay", file.toString(), "--json").json()) {
            assertThat(event.get("seq").longValue()).isEqualTo(seq++);
            assertThat(event.get("east_arcmin").isNumber()).isTrue();
            assertThat(event.get("up_arcmin").isNumber()).isTrue();
            JsonNode covariance = event.get("cov_arcmin2");
            assertThat(covariance).hasSize(2);
            assertThat(covariance.get(0).get(1)).isEqualTo(covariance.get(1).get(0));
            assertThat(covariance.get(0).get(0).doubleValue()).isPositive();
            assertThat(event.get("contradictory").isBoolean()).isTrue();
            assertThat(event.get("advice").get("do").textValue()).isIn("sight", "turn", "move", "clamp", "stop");
        }
    }

    @Test
    void replay_logsNothing() {
        wholeNight();
        Path file = person.file("night.jsonl");
        person.good("log", "export", file.toString());
        person.good("replay", file.toString());
        assertThat(person.good("log", "nights").lines()).hasSize(1);
        assertThat(person.events()).isEqualTo(10);
    }

    @Test
    void siteNameAndRig_areRememberedForTheNextNight() {
        Path rig = person.file("rig.json");
        writeRig(rig);
        person.good("begin", "--site", "-43.95,170.40,710", "--name", "Tussock Flat", "--rig", rig.toString());
        person.waitMinutes(1440);
        assertThat(person.good("begin").out())
                .startsWith("Begun: Tussock Flat (43.95° S, 170.40° E, 710 m), old fork (fork on a wedge),\nallowed"
                        + " within 5′ of the pole.\n");
        assertThat(person.good("where", "sun", "--json").json().get("az_deg").isNumber())
                .isTrue();
        assertThat(person.good("rig").out()).contains("\"old fork\"");
        assertThat(person.good("begin", "--site", "54.60,-2.90").out())
                .startsWith("Begun: a new site (54.60° N, 2.90° W, 0 m), old fork");
    }

    private void writeRig(Path file) {
        try {
            java.nio.file.Files.writeString(file, person.good("rig").out().replace("\"fork\"", "\"old fork\""));
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Each way to give distance and direction; all of them are 30″ south, for a star near the meridian. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--moved 30 --unit arcsec --toward south",
                "--moved 30 --toward S --unit arcsec",
                "--moved 2 --toward south --with reticle",
                "--moved 2 --toward south --unit divisions --per 15",
                "--moved 25 --toward south --unit pixels --per 1.2",
                "--moved 0.01041666667 --toward south --unit fields --field 0.8",
                "--moved 0.0208333333333 --toward south --unit fields --with reticle",
                "--moved 30 --unit arcsec --toward 6 --view erect",
                "--moved 30 --unit arcsec --toward 12 --view inverted",
                "--moved 30 --unit arcsec --toward 6 --view mirrored",
                "--moved 30 --unit arcsec --toward 6 --view erect --west 3",
                "--moved 30 --unit arcsec --toward 12 --view erect --west 9",
                "--moved 30 --unit arcsec --toward 6 --view mirrored --west 9",
            })
    void everyNotationOfADrift_givesTheSameDrift(String options) {
        // Rigel is on the meridian at 21:47 UTC.
        person.waitMinutes(4 * 60 + 20);
        drift("--moved 30 --unit arcsec --toward south --sigma 3");
        JsonNode plain = person.good("fix", "--json").json();
        person.good("undo");
        boolean inArcseconds = options.startsWith("--moved 30");
        double sigma = inArcseconds ? 3 : 3 * Double.parseDouble(options.split(" ", -1)[1]) / 30;
        drift(options + " --sigma "
                + new java.math.BigDecimal(sigma)
                        .setScale(12, java.math.RoundingMode.HALF_UP)
                        .toPlainString());
        JsonNode output = person.good("fix", "--json").json();
        // The edge of the view is not quite parallel to the star's diurnal circle: 1 % of the drift.
        assertThat(output.get("east_arcmin").doubleValue())
                .isCloseTo(plain.get("east_arcmin").doubleValue(), within(0.3));
        assertThat(output.get("east_arcmin").doubleValue()).isPositive();
    }

    private void drift(String options) {
        List<String> words = new java.util.ArrayList<>(List.of("sight", "drift", "rigel", "--minutes", "5"));
        words.addAll(List.of(options.split(" ", -1)));
        person.good(words.toArray(String[]::new));
    }

    @Test
    void doubtfulFix_isReported_alsoByNext() {
        type("sight", "compass", "0");
        type("sight", "scale", "54.6");
        person.waitMinutes(4 * 60);
        drift("--moved 30 --unit arcsec --toward south");
        drift("--moved 30 --unit arcsec --toward north");
        for (String command : List.of("next", "advise", "fix")) {
            assertThat(person.good(command).lines())
                    .as(command)
                    .anyMatch(line -> line.startsWith("DOUBT "))
                    .anyMatch(line -> line.startsWith("CONTRADICTS #4 "))
                    .anyMatch(line -> line.startsWith("CONTRADICTS #5 "));
        }
    }

    @Test
    void turnWithClampsTight_impliesLoosening_andSaysSo() {
        assertThat(type("turn", "--azimuth", "1/4").out()).doesNotContain("NOTE");
        type("clamp");
        assertThat(type("turn", "--azimuth", "1/4").out())
                .startsWith(
                        "Logged #4: turned azimuth 1/4 turn clockwise.\nNOTE  The clamps were tight; they are assumed to have been"
                                + " loosened first.\n");
        assertThat(person.good("fix", "--json").json().get("clamped").booleanValue())
                .isFalse();
    }

    /**
     * Common practice: near the meridian, south of the zenith, a star drifting south means that the axis is too far
     * east.
     */
    @Test
    void driftWithNorthAndSouthSwapped_isFlaggedWithItsCause() {
        type("sight", "compass", "0");
        type("sight", "scale", "54.6");
        type("sight", "still", "polaris", "--distance", "0.1", "--toward", "3", "--with", "finder");
        person.waitMinutes(4 * 60);
        for (int i = 0; i < 3; i++) {
            type("sight", "drift", "rigel", "--minutes", "5", "--moved", "30", "--unit", "arcsec", "--toward", "south");
        }
        CommandRun.Outcome swapped = type(
                "sight", "drift", "rigel", "--minutes", "5", "--moved", "30", "--unit", "arcsec", "--toward", "north");
        assertThat(swapped.out()).contains("CONTRADICTS #8 (star drift)").containsPattern("north and\\s+south");
        assertThat(person.good("next").lines()).anyMatch(line -> line.startsWith("CONTRADICTS #8 (star drift)"));
        person.good("undo");
        JsonNode json = type(
                        "sight",
                        "drift",
                        "rigel",
                        "--minutes",
                        "5",
                        "--moved",
                        "30",
                        "--unit",
                        "arcsec",
                        "--toward",
                        "north",
                        "--json")
                .json();
        assertThat(json.get("contradictory").booleanValue()).isTrue();
        assertThat(json.get("likely_cause").textValue()).contains("north and south");
        assertThat(person.good("fix", "--json").json().get("sightings")).hasSize(7);
    }

    @Test
    void otherSightings_areAccepted() {
        // Back to daylight; entries without --at report that the clock went back.
        person.waitMinutes(-210);
        assertThat(type("sight", "shadow", "-38", "--at", "2026-01-15T14:20Z").out())
                .startsWith("Logged #2: axis ");
        assertThat(type("sight", "bearing", "capella", "-100", "--at", "2026-01-15T18:00Z")
                        .out())
                .startsWith("Logged #3: ");
        assertThat(type("sight", "altitude", "jupiter", "-3.5", "--at", "2026-01-15T20:00Z", "--sigma", "5")
                        .out())
                .startsWith("Logged #4: ");
        type("clamp");
        String care = "CARE  Hold the fork's weight before you loosen the tilt clamp.\n";
        assertThat(type("unclamp").out()).startsWith("Logged #6: unclamped.\n").contains(care);
        assertThat(type("knock").out())
                .startsWith("Logged #7: knocked or moved.\n")
                .contains(care);
        assertThat(type("allow", "2").out()).startsWith("Logged #8: allowance set.\n");
        assertThat(person.good("fix", "--json").json().get("status").textValue())
                .isEqualTo("underdetermined");
    }

    @Test
    void json_isASingleValueFromEveryCommand() {
        assertThat(person.good("begin", "--json").json().get("seq").intValue()).isEqualTo(1);
        for (String[] words : new String[][] {
            {"sight", "compass", "3", "--json"},
            {"sight", "scale", "54", "--json"},
            {"turn", "--altitude", "1/2", "--json"},
            {"clamp", "--json"},
            {"unclamp", "--json"},
            {"note", "a remark", "--json"},
            {"allow", "3", "--json"},
            {"undo", "--json"},
            {"knock", "--json"},
        }) {
            JsonNode json = type(words).json();
            assertThat(json.fieldNames())
                    .toIterable()
                    .contains("seq", "at", "east_arcmin", "up_arcmin", "cov_arcmin2", "contradictory", "advice");
        }
        String file = person.file("n.jsonl").toString();
        assertThat(person.good("fix", "--json").json().has("status")).isTrue();
        assertThat(person.good("advise", "--json").json().has("do")).isTrue();
        assertThat(person.good("log", "--json").json()).hasSize(10);
        assertThat(person.good("log", "nights", "--json").json()).hasSize(2);
        assertThat(person.good("log", "export", file, "--json")
                        .json()
                        .get("events")
                        .intValue())
                .isEqualTo(10);
        assertThat(person.good("log", "import", file, "--json")
                        .json()
                        .get("night")
                        .intValue())
                .isEqualTo(3);
        assertThat(person.good("replay", file, "--json").json()).hasSize(10);
        assertThat(person.good("rig").json().has("azimuth_screw")).isTrue();
    }
}
