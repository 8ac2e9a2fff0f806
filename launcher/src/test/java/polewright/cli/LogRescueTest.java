package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.ExitStatus;
import polewright.store.NightLog;

/** A log damaged in the middle of a night, and how to recover from it. */
class LogRescueTest {
    private static final int PAGE = 4096;

    @TempDir
    private Path folder;

    private CommandRun person;

    @BeforeEach
    void logTwoNights() {
        person = new CommandRun(folder, "2026-01-14T20:00:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell");
        person.good("sight", "scale", "54.5");
        person.waitMinutes(24 * 60);
        person.good("begin");
        person.good("sight", "compass", "1");
        person.good("note", "dew");
    }

    private void overwritePage(int page) throws IOException {
        byte[] bytes = Files.readAllBytes(person.log());
        Arrays.fill(bytes, (page - 1) * PAGE, page * PAGE, (byte) 0x5a);
        Files.write(person.log(), bytes);
    }

    @Test
    void damagedLog_isReported_refusesEvents_andIsRescued() throws IOException {
        overwritePage(3);
        byte[] before = Files.readAllBytes(person.log());
        CommandRun.Outcome read = person.run("log");
        assertThat(read.err()).startsWith(person.log() + " is damaged (").contains("polewright log rescue");
        CommandRun.Outcome refused = person.run("note", "clouds");
        assertThat(refused.status()).isEqualTo(ExitStatus.NOT_NOW);
        assertThat(refused.err()).contains("so nothing was logged. ");
        assertThat(Files.readAllBytes(person.log())).isEqualTo(before);

        Path rescued = person.file("rescued.jsonl");
        CommandRun.Outcome rescue = person.good("log", "rescue", rescued.toString());
        assertThat(rescue.lines().get(0)).startsWith("Rescued: 5 events of 2 nights, in ");
        assertThat(rescue.out().replaceAll("\\n +", " "))
                .contains("COPY  Copies of the log from before the last nights are in ")
                .contains("before-night-2.sqlite")
                .contains("polewright log import " + rescued + " --go-on");
        assertThat(Files.readAllBytes(person.log())).isEqualTo(before);

        Files.move(person.log(), person.file("damaged.sqlite"));
        assertThat(person.good("log", "import", rescued.toString(), "--go-on").lines())
                .containsExactly("Added: 5 events as nights 1 to 2.");
        person.good("note", "clouds");
        assertThat(person.events()).isEqualTo(4);
    }

    /** Suggested commands refer to the log that was named on the command line. */
    @Test
    void suggestedCommands_nameTheGivenLog() throws IOException {
        overwritePage(3);
        Path named = person.log();
        assertThat(person.run("log", "--log", named.toString()).err())
                .contains("polewright log rescue nights.jsonl --log " + named);
        Path rescued = person.file("rescued.jsonl");
        assertThat(person.good("log", "rescue", rescued.toString(), "--log", named.toString())
                        .out())
                .contains("polewright log import " + rescued + " --go-on --log " + named);
    }

    @Test
    void rescue_neverOverwrites_andRefusesAFileWithoutEvents() throws IOException {
        Path there = Files.writeString(person.file("there.jsonl"), "mine");
        assertThat(person.run("log", "rescue", there.toString()).complaint())
                .isEqualTo("polewright log rescue: " + there + " already exists. Name another file.");
        Path text = Files.writeString(person.file("notes.txt"), "Remember the dew heater. ".repeat(400));
        assertThat(person.run("log", "rescue", person.file("new.jsonl").toString(), "--log", text.toString())
                        .complaint())
                .isEqualTo("polewright log rescue: no event can be read from " + text + ".");
        assertThat(person.file("new.jsonl")).doesNotExist();
    }

    @Test
    void fileOfSeveralNights_isImportedWholeOrNotAtAll() throws IOException {
        Path rescued = person.file("rescued.jsonl");
        person.good("log", "rescue", rescued.toString());
        String lines = Files.readString(rescued);
        Path wrong = Files.writeString(
                person.file("wrong.jsonl"), lines + "{\"at\":\"2026-01-15T20:30:00Z\",\"event\":\"tea\"}\n");
        assertThat(person.run("log", "import", wrong.toString()).complaint()).contains("line 6: ");
        assertThat(person.good("log", "import", rescued.toString(), "--json")
                        .json()
                        .get("nights"))
                .hasSize(2);
        try (NightLog opened = NightLog.open(person.log())) {
            assertThat(opened.nights()).hasSize(4);
            assertThat(opened.latest().orElseThrow().number()).isEqualTo(2);
        }
        // A replay covers one night.
        assertThat(person.run("replay", rescued.toString()).complaint())
                .contains("begins a night that has already" + " begun");
    }
}
