package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import polewright.launcher.GeneratedFile;

/**
 * The page of all commands, docs/reference.md, matches the command line. Run with {@code -Dpolewright.draw=true} to regenerate it.
 */
class CommandReferenceTest {
    private static final Path PAGE = DocumentedNames.DOCS.resolve("reference.md");

    private final CommandLine root = DocumentedNames.commands();

    @Test
    void page_isWhatTheCommandLineSays() throws IOException {
        GeneratedFile.assertIsCurrent(PAGE, CommandReference.page(root));
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
