package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/** The commands on the Work page, and those of the first night in the README, run as printed. */
@Tag("slow")
class WorkPageTest {
    private static final Path PAGE = Path.of("..", "docs", "work.md");
    private static final Path README = Path.of("..", "README.md");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TempDir
    private Path folder;

    private static List<String> commands(Path page) throws IOException {
        return Files.readAllLines(page).stream()
                .map(line -> line.startsWith("./") ? line.substring(2) : line)
                .filter(line -> line.startsWith("polewright "))
                .toList();
    }

    private String[] typed(String line) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(line);
        while (word.find()) {
            words.add(word.group(1) != null ? word.group(1) : word.group(2));
        }
        words.remove(0);
        words.replaceAll(w -> w.endsWith(".svg") ? folder.resolve(w).toString() : w);
        return words.toArray(String[]::new);
    }

    @Test
    void everyCommand_runs() throws IOException {
        CommandRun person = new CommandRun(folder, "2026-11-25T19:20:00Z");
        List<String> commands = commands(PAGE);
        assertThat(commands).hasSizeGreaterThan(12);
        commands.forEach(command -> assertThat(person.run(typed(command)))
                .as(command)
                .satisfies(result -> {
                    assertThat(result.err()).isEmpty();
                    assertThat(result.status()).isZero();
                }));
        assertThat(Files.readString(folder.resolve("zone.svg"))).startsWith("<svg");
        assertThat(Files.readString(folder.resolve("wedge.svg"))).startsWith("<svg");
    }

    @Test
    void readmeFirstNight_runs() throws IOException {
        CommandRun person = new CommandRun(folder, "2026-11-25T19:20:00Z");
        List<String> commands = commands(README).stream()
                .map(line -> line.replaceFirst(" +#.*", ""))
                .filter(line -> line.matches("polewright (ground|begin|allow|sight|next|turn|clamp|tonight).*"))
                .toList();
        assertThat(commands).hasSize(10);
        commands.forEach(command -> person.good(typed(command)));
    }

    /** The options explained on the page are the ones that exist. */
    @Test
    void namedOptions_exist() throws IOException {
        CommandRun person = new CommandRun(folder, "2026-11-25T19:20:00Z");
        String help = person.good("allow", "--help").out()
                + person.good("allow", "look", "--help").out()
                + person.good("allow", "shot", "--help").out()
                + person.good("advise", "--help").out();
        Matcher option = Pattern.compile("`(--[a-z-]+)").matcher(Files.readString(PAGE));
        while (option.find()) {
            assertThat(help).contains(option.group(1));
        }
    }
}
