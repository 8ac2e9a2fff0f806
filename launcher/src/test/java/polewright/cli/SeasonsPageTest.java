package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.mount.AxisOffset;
import polewright.operations.CommandRun;
import polewright.operations.PierNights;

/** The Seasons page of the documentation runs as printed, for a pier at Larkfell that was bumped in May. */
class SeasonsPageTest {
    private static final Path PAGE = Path.of("..", "docs", "seasons.md");

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void seasons() {
        person = new CommandRun(folder, "2025-10-01T20:00:00Z");
        PierNights.written(folder, 9, 30, AxisOffset.ofArcminutes(1.5, -2), 5)
                .forEach(file -> person.good("log", "import", file.toString()));
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
    }

    @Test
    void everyCommand_runs() throws IOException {
        List<String> commands = Files.readAllLines(PAGE).stream()
                .filter(line -> line.startsWith("polewright "))
                .map(line ->
                        line.replace("seasons.svg", person.file("seasons.svg").toString()))
                .toList();
        assertThat(commands).hasSize(6);
        commands.forEach(command -> assertThat(
                        person.good(command.substring("polewright ".length()).split(" ", -1))
                                .out())
                .isNotEmpty());
        assertThat(Files.readString(person.file("seasons.svg"))).startsWith("<svg");
    }

    @Test
    void everyExample_matchesTheOutput() throws IOException {
        Matcher shown = Pattern.compile("```text\n(.*?)```", Pattern.DOTALL).matcher(Files.readString(PAGE));
        assertThat(shown.find()).isTrue();

        assertThat(person.good("log", "seasons").out()).isEqualTo(shown.group(1));
    }
}
