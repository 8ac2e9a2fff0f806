package polewright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.app.CommandRun;

class DemoTest {
    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void sitDown() {
        person = new CommandRun(folder, "2026-01-15T20:00:00Z");
    }

    private static List<String> events(CommandRun.Outcome demo) {
        return demo.lines().stream().filter(line -> line.startsWith("#")).toList();
    }

    @Test
    void itTellsTheSeedTheTruthAndWhereTheLogIs() {
        CommandRun.Outcome demo = person.good("demo");
        Path log = person.file("data/polewright/demo.sqlite");
        assertThat(demo.out())
                .contains("from seed 54.")
                .contains("\nTHE TRUTH\n  at first  ")
                .contains("The night is kept in " + log)
                .contains("./polewright log --night 1 --log " + log);
        assertThat(log).exists();
        assertThat(person.log()).doesNotExist();
    }

    @Test
    void theLogThatItNamesHoldsTheNight() {
        CommandRun.Outcome demo = person.good("demo");
        String log = person.file("data/polewright/demo.sqlite").toString();
        assertThat(person.good("log", "--night", "1", "--log", log).lines())
                .filteredOn(line -> line.startsWith("#"))
                .hasSameSizeAs(events(demo));
    }

    @Test
    void theLogReplaysToTheSameReadingsAndTheSameEnd() {
        CommandRun.Outcome demo = person.good("demo");
        String log = person.file("data/polewright/demo.sqlite").toString();
        String file = person.file("night.jsonl").toString();
        person.good("log", "export", file, "--night", "1", "--log", log);
        assertThat(demo.out()).contains(person.good("replay", file).out());
    }

    @Test
    void theSameSeedMakesTheSameReadings() {
        List<String> first = events(person.good("demo", "--seed", "7"));
        assertThat(events(person.good("demo", "--seed", "7"))).isEqualTo(first).isNotEmpty();
        assertThat(events(person.good("demo", "--seed", "8"))).isNotEqualTo(first);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2", "3", "4", "5", "6"})
    void aNightEndsInAStopOrItIsSaidThatItDidNot(String seed) {
        String out = person.good("demo", "--seed", seed).out();
        String end = out.substring(out.indexOf("THE TRUTH"));
        if (out.contains("\n  STOP  ")) {
            assertThat(end).containsPattern("Within the allowance|Outside the allowance");
        } else {
            assertThat(end).contains("Not finished: after ");
        }
    }

    @Test
    void onlyLinesWithTheLogsPlaceMayBeWiderThanAScreen() {
        CommandRun.Outcome demo = person.good("demo");
        assertThat(demo.lines())
                .filteredOn(line -> !line.contains("demo.sqlite"))
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void asJsonItIsTheNightEventByEvent() {
        assertThat(person.good("demo", "--json").json()).hasSizeGreaterThan(5);
    }
}
