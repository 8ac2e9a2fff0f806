package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/** The page about alignment stars runs and prints as shown, and further output of the command. */
class StarsPageTest {
    private static final Path PAGE = Path.of("..", "docs", "stars.md");
    private static final Pattern SHOWN =
            Pattern.compile("```\n(polewright [^\n]*)\n```\n\n```text\n(.*?)```", Pattern.DOTALL);
    private static final String LARKFELL = "54.60,-2.90,240";

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void setUp() {
        person = new CommandRun(folder, "2026-11-25T18:30:00Z");
    }

    private static String[] typed(String line) {
        return line.substring("polewright ".length()).split(" ", -1);
    }

    @Test
    void everyCommand_runs() throws IOException {
        List<String> commands = Files.readAllLines(PAGE).stream()
                .filter(line -> line.startsWith("polewright "))
                .toList();
        assertThat(commands).hasSize(4);
        commands.forEach(
                command -> assertThat(person.good(typed(command)).err()).isEmpty());
    }

    @Test
    void everyExample_matchesTheOutput() throws IOException {
        Matcher shown = SHOWN.matcher(Files.readString(PAGE));
        int count = 0;
        while (shown.find()) {
            assertThat(person.good(typed(shown.group(1))).out()).isEqualTo(shown.group(2));
            count++;
        }
        assertThat(count).isEqualTo(2);
    }

    @Test
    void siteAndSkyline_defaultToTheLastNights() {
        person.good("begin", "--site", LARKFELL, "--name", "Larkfell");
        assertThat(person.good("stars", "--json").json().get("stars")).hasSize(3);
    }

    @Test
    void json_hasFiguresWithUnits() {
        JsonNode answer = person.good("stars", "--site", LARKFELL, "--count", "2", "--json")
                .json();
        assertThat(answer.get("at").asText()).isEqualTo("2026-11-25T18:30:00Z");
        assertThat(answer.get("sun_up").asBoolean()).isFalse();
        assertThat(answer.get("goto_95_arcmin").asDouble()).isPositive();
        assertThat(answer.get("stars")).hasSize(2).allSatisfy(star -> {
            assertThat(star.get("alt_apparent_deg").asDouble()).isBetween(20.0, 75.0);
            assertThat(star.get("by_eye").asBoolean()).isTrue();
            assertThat(star.get("move").get("order").asText()).isEqualTo("both_together");
        });
    }

    @Test
    void byDay_cautionPrecedesTheStars() {
        List<String> lines = person.good("stars", "--site", LARKFELL, "--at", "2026-11-25T12:00Z")
                .lines();
        assertThat(lines.get(1)).startsWith("CARE  The Sun is up. Cap the finder.");
    }

    @Test
    void smallApertureByDay_isToldWhenStarsAppear() {
        assertThat(person.good("stars", "--site", LARKFELL, "--at", "2026-06-21T12:00Z", "--aperture", "20")
                        .lines())
                .contains(
                        "No star can be used at 12:00 UTC: the sky is too bright, even through 20 mm of",
                        "Enough stars are visible to the naked eye from 21:31 UTC on.");
    }

    @Test
    void tubePointingAtTheSun_isMovedByHand() {
        assertThat(String.join(
                        " ",
                        person.good("stars", "--site", LARKFELL, "--at", "2026-06-21T12:00Z", "--from", "sun")
                                .lines()))
                .contains("every simple move there passes near the Sun. Cap the tube,");
    }

    @Test
    void invalidFigures_areRefusedInOneLine() {
        assertThat(person.run("stars", "--site", LARKFELL, "--aperture", "8").complaint())
                .isEqualTo("polewright stars: an aperture of 8 mm is outside 10 to 2000. Give the aperture in"
                        + " millimetres.");
        assertThat(person.run("stars", "--site", LARKFELL, "--count", "9").status())
                .isEqualTo(2);
        assertThat(person.run("stars", "--site", LARKFELL, "--zone", "Mars").status())
                .isEqualTo(2);
    }
}
