package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.operations.CommandRun;

/** Output that a tired person can read on a small screen in the dark. */
@Tag("slow")
class ReadableOutputTest {
    private static final int WIDTH = 80;
    private static final String ESCAPE = "\u001b[";

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void begin() {
        person = new CommandRun(folder, "2026-01-15T12:30:00Z");
        person.good("begin", "--site", "-43.95,170.40,710", "--name", "Tussock Flat", "--at", "2026-01-15T08:00Z");
    }

    private List<String> outputOfANight(String... more) {
        List<String> lines = new ArrayList<>();
        for (String words : new String[] {
            "sight compass 140",
            "sight scale 38",
            "sight altitude jupiter 30 --at 2026-01-15T12:00Z",
            "sight still sigoct --distance 0.2 --toward 5.5 --with finder --at 2026-01-15T11:00Z",
            "sight drift rigel --minutes 5 --moved 1 --toward 4 --with reticle --at 2026-01-15T10:00Z",
            "turn --azimuth 1.0625 --altitude -0.3125",
            "sight drift achernar --minutes 10 --moved 9 --toward s --with reticle --at 2026-01-15T10:30Z",
            "clamp",
            "unclamp",
            "knock",
            "undo",
            "fix",
            "advise",
            "next",
            "allow --for planets",
            "allow shot pictures --exposure 60 --focal-length 900 --pixel 3.76",
            "allow",
            "allow --draw",
            "advise --draw",
            "log",
            "log nights",
            "ground",
            "ground --mount german",
            "ground --mount tracker --site 70,25",
            "where moon",
            "where sun",
            "where m31",
            "stars",
            "stars --at 2026-01-15T01:00Z",
            "stars --at 2026-01-15T01:00Z --from sun",
        }) {
            List<String> typed = new ArrayList<>(List.of(words.split(" ", -1)));
            typed.addAll(List.of(more));
            lines.addAll(person.good(typed.toArray(String[]::new)).lines());
        }
        return lines;
    }

    @Test
    void lines_fitTheScreen_andHaveNoTabs() {
        assertThat(outputOfANight())
                .allSatisfy(line -> assertThat(line)
                        .hasSizeLessThanOrEqualTo(WIDTH)
                        .doesNotContain("\t")
                        .doesNotContain("\u00a0"));
    }

    @Test
    void output_isPlainByDefault() {
        assertThat(outputOfANight()).noneMatch(line -> line.contains("\u001b"));
    }

    @Test
    void redOption_makesOutputDimRed() {
        assertThat(outputOfANight("--red"))
                .allMatch(
                        line -> line.isEmpty() || (line.startsWith(ESCAPE + "2;31m") && line.endsWith(ESCAPE + "0m")));
    }

    @Test
    void error_isRedToo() {
        assertThat(person.run("where", "vegq", "--red").err())
                .startsWith(ESCAPE + "2;31mpolewright where BODY: nothing");
    }

    @Test
    void suggestedCommands_runAsPrinted() {
        assertThat(outputOfANight())
                .contains("THEN  polewright sight scale ALTITUDE")
                .containsSequence(
                        "THEN  log it; N in divisions, WAY is north or south (nudge the tube toward the",
                        "      pole: stars move north in the view):",
                        "  polewright sight drift achernar --minutes 1 --moved N --toward WAY \\",
                        "      --with reticle");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--help",
                "ground --help",
                "begin --help",
                "sight --help",
                "sight compass --help",
                "sight scale -h",
                "sight shadow --help",
                "sight bearing --help",
                "sight altitude --help",
                "sight still --help",
                "sight drift --help",
                "turn --help",
                "undo --help",
                "log --help",
                "log export --help",
                "replay --help",
                "allow --help",
                "allow look --help",
                "allow shot --help",
                "allow drop --help",
                "next --help",
                "advise --help",
                "where --help",
                "rig --help",
                "demo --help",
                "attitude --help",
                "axis --help",
                "sight frames --help",
                "sight drift-frames --help",
                "watch --help",
            })
    void everyCommand_listsItsOptions(String typed) {
        CommandRun.Outcome help = person.good(typed.split(" ", -1));
        assertThat(help.lines()).first().asString().startsWith("Usage: polewright");
        assertThat(help.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(WIDTH));
    }

    @Test
    void programWithoutCommand_showsHelp() {
        assertThat(person.good().out()).isEqualTo(person.good("--help").out());
    }

    @Test
    void nearTheSun_aCautionIsGiven() {
        assertThat(person.good("where", "sun", "--site", "54.6,-2.9").out().replaceAll("\\s+", " "))
                .contains("CARE Never look at the Sun, or point tube or finder at it, without a proper solar filter.");
        // Mercury is always near the Sun; here both are up.
        assertThat(person.good("where", "mercury", "--site", "54.6,-2.9", "--at", "2026-03-07T12:00Z")
                        .out()
                        .replaceAll("\\s+", " "))
                .contains("from the Sun, which is up. Do not point there without a proper solar filter.");
    }
}
