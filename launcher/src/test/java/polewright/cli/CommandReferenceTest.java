package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import polewright.launcher.Main;
import polewright.operations.Pause;
import polewright.operations.Workbench;

/**
 * The page of all commands, docs/reference.md, matches the command line. Run with {@code -Dpolewright.draw=true} to regenerate it.
 */
class CommandReferenceTest {
    private static final Path PAGE = DocumentedNames.DOCS.resolve("reference.md");

    private final CommandLine root = Main.commands(new Workbench(
            Clock.systemUTC(),
            Map.of(),
            new PrintWriter(new StringWriter()),
            new PrintWriter(new StringWriter()),
            false,
            Pause.REAL));

    @Test
    void page_isWhatTheCommandLineSays() throws IOException {
        String written = CommandReference.page(root);
        if (Boolean.getBoolean("polewright.draw")) {
            Files.writeString(PAGE, written);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(written);
    }

    @Test
    void everyCommand_hasAPlace() {
        assertThat(CommandReference.placed())
                .containsExactlyInAnyOrderElementsOf(root.getSubcommands().keySet());
    }

    @Test
    void everyCommandAndOption_isOnThePage() {
        String page = CommandReference.page(root);
        List<String> missing = new ArrayList<>();
        root.getSubcommands().forEach((name, command) -> collectMissing(page, name, command, missing));
        assertThat(missing).isEmpty();
    }

    private static void collectMissing(String page, String words, CommandLine command, List<String> missing) {
        int start = page.indexOf("\n### " + words + "\n");
        if (start < 0) {
            missing.add(words);
            return;
        }
        int next = page.indexOf("\n##", start + 1);
        String section = page.substring(start, next);
        CommandReference.shown(command.getCommandSpec()).stream()
                .filter(option -> !section.contains("`" + option.longestName()))
                .forEach(option -> missing.add(words + " " + option.longestName()));
        command.getSubcommands().forEach((name, sub) -> collectMissing(page, words + " " + name, sub, missing));
    }
}
