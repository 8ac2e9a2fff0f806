package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** A program writing to the log is killed (SIGKILL) at arbitrary moments, including its first opening of a new log. */
@Tag("slow")
class KilledTest {
    private static final int KILLS_WHILE_ADDING = 12;
    private static final int KILLS_WHILE_OPENING = 6;

    @TempDir
    private Path folder;

    private final List<String> acknowledged = new ArrayList<>();

    @Test
    void everyAcknowledgedEventIsThere_plusAtMostTheOneBeingWritten() throws Exception {
        Path file = folder.resolve("nights.db");
        Random random = new Random(20260115);
        for (int kill = 0; kill < KILLS_WHILE_ADDING; kill++) {
            runAndKill(file, "run" + kill, 1 + random.nextInt(40), random.nextInt(20_000));
            assertWhole(file, 1);
        }
        assertThat(acknowledged).hasSizeGreaterThan(KILLS_WHILE_ADDING);
    }

    @Test
    void logKilledDuringCreation_isCompletedByTheNextOpening() throws Exception {
        Random random = new Random(20260116);
        for (int kill = 0; kill < KILLS_WHILE_OPENING; kill++) {
            acknowledged.clear();
            Path file = folder.resolve("new" + kill + ".db");
            // Waits for zero lines: the pause begins with the program, and creating the log takes most of a second.
            runAndKill(file, "first", 0, 100_000 + random.nextInt(900_000));
            runAndKill(file, "second", 3, random.nextInt(5_000));
            assertWhole(file, 2);
        }
    }

    /**
     * Waits for a number of acknowledgements and then of microseconds, kills, and records what had been acknowledged.
     */
    private void runAndKill(Path file, String mark, int lines, int micros) throws Exception {
        Process process = EndlessWriter.start(file, mark, 0);
        try (BufferedReader output = process.inputReader()) {
            assertThat(output.readLine()).isEqualTo("started");
            for (int i = 0; i < lines; i++) {
                keep(output.readLine());
            }
            TimeUnit.MICROSECONDS.sleep(micros);
            // Not Process.destroyForcibly, which closes the pipe with acknowledgements still in it.
            process.toHandle().destroyForcibly();
            assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
            // 137 is 128 + SIGKILL: it did not exit by itself.
            assertThat(process.exitValue()).isEqualTo(137);
            for (String line = output.readLine(); line != null; line = output.readLine()) {
                keep(line);
            }
        } finally {
            process.destroyForcibly();
        }
    }

    private void keep(String line) {
        assertThat(line).as("an acknowledgement").isNotNull().matches("\\d+ \\w+ \\d+");
        acknowledged.add(line);
    }

    /** @param kills since the last call: each may have come between an event and its acknowledgement */
    private void assertWhole(Path file, int kills) throws Exception {
        try (NightLog log = NightLog.open(file)) {
            List<LoggedEvent> events = log.events(log.latest().orElseThrow());
            List<String> logged = new ArrayList<>();
            for (int i = 0; i < events.size(); i++) {
                assertThat(events.get(i).seq()).isEqualTo(i + 1);
                if (events.get(i).event() instanceof NightEvent.Noted note) {
                    logged.add(events.get(i).seq() + " " + note.text());
                }
            }
            List<String> beside = new ArrayList<>(logged);
            beside.removeAll(acknowledged);
            assertThat(beside).hasSizeLessThanOrEqualTo(kills);
            List<String> known = new ArrayList<>(logged);
            known.removeAll(beside);
            assertThat(known).isEqualTo(acknowledged);
            // Events logged but not yet acknowledged at the kill count from now on.
            acknowledged.clear();
            acknowledged.addAll(logged);
        }
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var result = connection.createStatement().executeQuery("PRAGMA integrity_check")) {
            assertThat(result.getString(1)).isEqualTo("ok");
        }
    }
}
