package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.launcher.Main;
import polewright.operations.CommandRun;
import polewright.operations.Workbench;
import polewright.operations.camera.CameraEvening;
import polewright.operations.watch.SettableClock;

/** The commands on the Frames page of the documentation run as printed. */
class FramesPageTest {
    private static final Path PAGE = Path.of("..", "docs", "frames.md");

    @TempDir
    private Path folder;

    private static List<String> commands(Path page) throws IOException {
        return Files.readAllLines(page).stream()
                .map(line -> line.startsWith("./") ? line.substring(2) : line)
                .filter(line -> line.startsWith("polewright ") && (line.contains(".fits") || line.contains(" watch ")))
                .toList();
    }

    /** The page gives file names without folders; here they are all in one folder. */
    private String[] typed(String line) {
        List<String> words = new ArrayList<>(List.of(line.split(" +", -1)));
        words.remove(0);
        words.replaceAll(word -> word.matches("[\\w-]+\\.(fits|wcs|png)|captures")
                ? folder.resolve(word).toString()
                : word);
        return words.toArray(String[]::new);
    }

    @Test
    void everyCommand_runs() throws IOException {
        CameraEvening evening = CameraEvening.atLarkfell();
        for (String name : new String[] {"first", "second", "third"}) {
            evening.take(folder.resolve(name + ".fits"));
            evening.turnRightAscension(30);
        }
        evening.pointAt(0, 55);
        for (int i = 0; i < 4; i++) {
            evening.take(folder.resolve("drift" + i + ".fits"));
            evening.waitSeconds(60);
        }
        Files.createDirectory(folder.resolve("captures"));
        CommandRun person = new CommandRun(folder, "2026-11-25T20:20:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        everyCommand_runs(commands(PAGE), person);
        assertThat(Files.exists(folder.resolve("first.wcs"))).isTrue();
        assertThat(Files.exists(folder.resolve("first.png"))).isTrue();
    }

    private void everyCommand_runs(List<String> commands, CommandRun person) {
        assertThat(commands).hasSizeGreaterThan(2);
        for (String command : commands) {
            if (!command.contains(" watch ")) {
                assertThat(person.run(typed(command))).as(command).satisfies(result -> {
                    assertThat(result.err()).isEmpty();
                    assertThat(result.status()).isZero();
                });
            }
        }
    }

    @Test
    void watchCommand_runsAsPrinted() throws IOException {
        List<String> watches =
                commands(PAGE).stream().filter(line -> line.contains(" watch ")).toList();
        assertThat(watches).hasSize(1);
        Files.createDirectory(folder.resolve("captures"));
        CommandRun person = new CommandRun(folder, "2026-11-25T20:20:00Z");
        person.good("begin", "--site", "54.60,-2.90,240");
        StringWriter out = new StringWriter();
        SettableClock clock = new SettableClock(Instant.parse("2026-11-25T20:20:00Z"));
        Workbench bench = new Workbench(
                clock,
                Map.of("POLEWRIGHT_LOG", person.log().toString()),
                new PrintWriter(out),
                new PrintWriter(new StringWriter()),
                false,
                clock::advance);
        assertThat(Main.run(bench, typed(watches.get(0)))).isZero();
        assertThat(out.toString()).startsWith("Watching ").endsWith("The watch has ended.\n");
    }
}
