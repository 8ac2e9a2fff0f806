package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun;

/** Control characters in a log from someone else never reach the terminal. */
class ControlCharactersTest {
    @TempDir
    private Path folder;

    private Path night() throws IOException {
        return Files.writeString(folder.resolve("theirs.jsonl"), """
                {"at":"2026-01-15T17:30:00Z","event":"begin","site_name":"Lark\\u001b[2Jfell","site":{"lat_deg":54.6,"lon_deg":-2.9}}
                {"at":"2026-01-15T17:40:00Z","event":"note","text":"dew\\u001b]0;title\\u0007 and \\u009b31m"}
                """);
    }

    @ParameterizedTest
    @ValueSource(strings = {"replay theirs.jsonl", "log --night 1", "log nights"})
    void controlCharacters_areReplacedInText(String typed) throws IOException {
        CommandRun person = new CommandRun(folder, "2026-11-25T20:05:00Z");
        person.good("log", "import", night().toString());
        String out = person.good(
                        typed.replace("theirs.jsonl", night().toString()).split(" "))
                .out();
        assertThat(out).contains("Lark\uFFFD[2Jfell");
        assertThat(out.replace("\n", "").chars()).noneMatch(Character::isISOControl);
    }

    @Test
    void controlCharacters_areEscapedInJson() throws IOException {
        CommandRun person = new CommandRun(folder, "2026-11-25T20:05:00Z");
        person.good("log", "import", night().toString());
        String out = person.good("log", "nights", "--json").out();
        assertThat(out).contains("Lark\\u001B[2Jfell");
        assertThat(out.replace("\n", "").chars()).noneMatch(c -> c < ' ');
    }
}
