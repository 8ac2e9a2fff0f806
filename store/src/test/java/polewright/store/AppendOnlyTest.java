package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.session.NightId;
import polewright.session.RandomEvents;
import polewright.session.event.LoggedEvent;

/** What another program, with default pragmas, can do to a log. */
class AppendOnlyTest {
    @TempDir
    private Path folder;

    private final List<LoggedEvent> night = new RandomEvents(3).night(5);
    private Path file = Path.of("");

    @BeforeEach
    void logOneNight() {
        file = folder.resolve("nights.db");
        try (NightLog log = NightLog.open(file)) {
            log.importNight(night);
        }
    }

    private void execute(String sql) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        UPDATE event SET kind = 'note' WHERE seq = 2 | an event in the log is never changed
        DELETE FROM event WHERE seq = 6 | an event in the log is never removed
        DELETE FROM event | an event in the log is never removed
        INSERT OR REPLACE INTO event SELECT night_id, seq, kind, at, '{}' FROM event WHERE seq = 2 | an event is only ever added after the last
        INSERT INTO event SELECT night_id, 0, kind, at, line FROM event WHERE seq = 2 | an event is only ever added after the last
        UPDATE night SET begun_at = '' | a night in the log is never changed
        DELETE FROM night | a night in the log is never removed
        INSERT OR REPLACE INTO night VALUES (1, '', 0) | a night in the log is never replaced
        """)
    void change_isRefusedByTheFileItself(String sql, String message) {
        assertThatThrownBy(() -> execute(sql)).hasMessageContaining(message);
        try (NightLog log = NightLog.open(file)) {
            assertThat(log.events(new NightId(1))).isEqualTo(night);
        }
    }

    @Test
    void eventWithoutANight_isRefused_throughTheLogsOwnConnection() {
        try (var connection = LogFile.open(file);
                var statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.execute(
                            "INSERT INTO event VALUES (77, 1, 'clamp', '" + Instant.EPOCH + "', '{}')"))
                    .hasMessageContaining("FOREIGN KEY constraint failed");
        } catch (java.sql.SQLException e) {
            throw new AssertionError(e);
        }
    }
}
