package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/** The Practice page of the documentation runs as printed. */
class PracticePageTest {
    private static final Path PAGE = Path.of("..", "docs", "practice.md");

    @TempDir
    private Path folder;

    @Test
    void everyCommand_runs() throws IOException {
        CommandRun person = new CommandRun(folder, "2026-06-21T11:00:00Z");
        List<String> commands = Files.readAllLines(PAGE).stream()
                .filter(line -> line.startsWith("polewright "))
                .map(line -> line.replace("seen.svg", person.file("seen.svg").toString()))
                .map(line -> line.replace("\"1/8 ccw\"", "1/8ccw"))
                .toList();
        assertThat(commands).hasSize(12);
        commands.forEach(command -> assertThat(
                        person.good(command.substring("polewright ".length()).split(" ", -1))
                                .out())
                .isNotEmpty());
    }
}
