package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.mount.AxisOffset;
import polewright.operations.CommandRun;
import polewright.operations.PierNights;

/** Nights compared for a pier that moves 1.5′ east and 2′ down each month, and was bumped once. */
class SeasonsCommandsTest {
    private static final AxisOffset A_MONTH = AxisOffset.ofArcminutes(1.5, -2);
    private static final int NIGHTS = 9;
    private static final int BUMPED_AFTER = 5;

    @TempDir
    private static Path folder;

    private static CommandRun person;

    @BeforeAll
    static void seasons() {
        person = new CommandRun(folder, "2025-10-01T20:00:00Z");
        PierNights.written(folder, NIGHTS, 30, A_MONTH, BUMPED_AFTER)
                .forEach(file -> person.good("log", "import", file.toString()));
    }

    private static String output(CommandRun.Outcome outcome) {
        return outcome.out().replaceAll("\\s+", " ");
    }

    @Test
    void motion_isReported_withUncertaintyCorrectionAndBump() {
        CommandRun.Outcome result = person.good("log", "seasons", "--night", "1");
        String output = output(result);

        assertThat(result.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        assertThat(result.lines().stream().filter(line -> line.matches(" +\\d  2025-.*")))
                .hasSize(NIGHTS);
        assertThat(output)
                .containsPattern("by 7 drifts, pier and wedge moved the axis 1\\.\\d′ east a month ± 0\\.\\d′,"
                        + " and (1\\.[89]|2\\.[0-2])′ down a month ± 0\\.\\d′\\.")
                .containsPattern("To undo one month of that: azimuth screw \\S+ turn counter-clockwise, altitude screw"
                        + " \\S+ turn clockwise\\.")
                .containsPattern("NOTE Not used: from night 5 to night 6 it moved 8\\.\\d′ west and [45]\\.\\d′ up");
    }

    @Test
    void json_hasTheSame() {
        JsonNode result =
                person.good("log", "seasons", "--night", "1", "--json").json();

        assertThat(result.get("nights")).hasSize(NIGHTS);
        assertThat(result.get("between")).hasSize(NIGHTS - 1);
        assertThat(result.at("/motion/status").asText()).isEqualTo("line");
        double sigma = result.at("/motion/east/sigma_arcmin_per_month").asDouble();
        assertThat(sigma).isBetween(0.01, 0.2);
        // The fit uses months of 30.44 days; the nights are 30 days apart.
        assertThat(result.at("/motion/east/arcmin_per_month").asDouble())
                .isCloseTo(1.5 * 30.44 / 30, within(4 * sigma));
        assertThat(result.at("/motion/up/arcmin_per_month").asDouble())
                .isCloseTo(
                        -2 * 30.44 / 30,
                        within(4
                                * result.at("/motion/up/sigma_arcmin_per_month").asDouble()));
        assertThat(result.at("/motion/set_aside/0/from_night").asInt()).isEqualTo(BUMPED_AFTER);
        assertThat(result.at("/nights/0/stopped").asBoolean()).isTrue();
    }

    @Test
    void motion_isDrawnInBothPalettes() throws IOException {
        Path light = folder.resolve("light.svg");
        Path dark = folder.resolve("dark.svg");
        assertThat(person.good("log", "seasons", "--night", "1", "--picture", light.toString())
                        .out())
                .endsWith("Drawn: " + light + "\n");
        person.good("log", "seasons", "--night", "1", "--dark", "--picture", dark.toString());

        String svg = Files.readString(dark);
        assertThat(svg).startsWith("<svg").contains("class=\"east\"", "class=\"up\"");
        // Each strip has a bar for every significant drift and a dot at each end of the sequence of nights.
        assertThat(count("class=\"sigma\"", svg)).isEqualTo(2 * 7);
        assertThat(count("<circle ", svg)).isEqualTo(2 * NIGHTS);
        assertThat(count("<polyline ", svg)).isEqualTo(2);
        Matcher colour = Pattern.compile("#[0-9a-f]{6}").matcher(svg);
        while (colour.find()) {
            int rgb = Integer.parseInt(colour.group().substring(1), 16);
            assertThat(rgb & 0xff).as(colour.group()).isLessThan(0x40);
        }
        assertThat(count("class=\"sigma\"", Files.readString(light))).isEqualTo(2 * 7);
    }

    private static int count(String part, String text) {
        return (text.length() - text.replace(part, "").length()) / part.length();
    }

    @Test
    void twoNights_areComparedSideBySide_inEitherOrder() {
        CommandRun.Outcome result = person.good("log", "compare", "3", "4");

        assertThat(result.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        assertThat(output(result))
                .contains("night 3 night 4", "begun 11 Mar 2025, 20:00 UTC 10 Apr 2025, 20:00 UTC", "to 'stop'")
                .containsPattern("Between them, in 30 days, the axis moved 1\\.\\d′ east and \\d\\.\\d′ down"
                        + " \\(±0\\.\\d′\\), more than the sightings' uncertainty");
        assertThat(person.good("log", "compare", "4", "3").out()).isEqualTo(result.out());
        assertThat(output(person.good("log", "compare", "1", "6")))
                .contains("is not known. The mount was worked on between them, on night 2.");
        JsonNode json = person.good("log", "compare", "3", "4", "--json").json();
        assertThat(json.at("/between/status").asText()).isEqualTo("drifted");
        assertThat(json.at("/nights/1/night").asInt()).isEqualTo(4);
    }

    @Test
    void copyOfANight_countsAsTheSameNight() {
        CommandRun other = new CommandRun(folder.resolve("copies"), "2025-10-01T20:00:00Z");
        assertThat(folder.resolve("copies").toFile().mkdirs()).isTrue();
        for (int i : new int[] {1, 2, 1}) {
            other.good(
                    "log",
                    "import",
                    folder.resolve("pier-night-" + i + ".jsonl").toString());
        }

        assertThat(other.good("log", "seasons", "--site", "54.60,-2.90", "--json")
                        .json()
                        .get("nights"))
                .hasSize(2);
    }

    @Test
    void incomparableNights_areReported_withWhatToDo() {
        assertThat(person.run("log", "compare", "3", "3"))
                .satisfies(result -> assertThat(result.status()).isEqualTo(2))
                .satisfies(result -> assertThat(result.complaint())
                        .isEqualTo("polewright log compare: night 3 is given twice. Give two different nights."));
        assertThat(person.run("log", "compare", "3", "99"))
                .satisfies(result -> assertThat(result.status()).isEqualTo(1))
                .satisfies(result -> assertThat(result.complaint().replace('\n', ' '))
                        .contains("there is no night 99", "List the nights"));
        assertThat(person.run("log", "seasons", "--site", "-43.95,170.40")
                        .complaint()
                        .replaceAll("\\s+", " "))
                .contains("no night in the log was at that site");
    }

    @Test
    void oneNight_isNotEnough() throws IOException {
        CommandRun other = new CommandRun(Files.createDirectory(folder.resolve("one")), "2025-10-01T20:00:00Z");
        other.good("begin", "--site", "-43.95,170.40,710", "--name", "Tussock Flat");
        Path picture = folder.resolve("none.svg");

        assertThat(output(other.good("log", "seasons", "--picture", picture.toString())))
                .contains(
                        "Two nights with a fix are needed, at one site with one rig; there is" + " none.",
                        "No drawing: there is nothing to compare yet.");
        assertThat(picture).doesNotExist();
        assertThat(List.of(other.good("log", "seasons", "--json")
                        .json()
                        .at("/motion/status")
                        .asText()))
                .containsExactly("not_yet");
    }
}
