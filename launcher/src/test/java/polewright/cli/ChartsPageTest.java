package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/** The examples in docs/charts.md match the program's output. */
class ChartsPageTest {
    private static final Pattern RUN = Pattern.compile("(?s)\\$ polewright ([^\\n]*)\\n(.*?)```");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TempDir
    private Path folder;

    @Test
    void everyExample_matchesTheOutput() throws IOException {
        String page = Files.readString(Path.of("..", "docs", "charts.md"));
        Matcher runs = RUN.matcher(page);
        int examples = 0;
        while (runs.find()) {
            examples++;
            String[] words = WORD.matcher(runs.group(1))
                    .results()
                    .map(m -> m.group(1) != null ? m.group(1) : m.group(2))
                    .toArray(String[]::new);
            assertThat(new CommandRun(folder, "2026-11-25T12:00:00Z")
                            .good(words)
                            .out())
                    .isEqualTo(runs.group(2));
        }
        assertThat(examples).isEqualTo(1);
    }
}
