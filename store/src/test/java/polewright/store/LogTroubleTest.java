package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import polewright.session.NightId;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

/** The complete messages for files that cannot be used. */
@Tag("slow")
class LogTroubleTest {
    private static final Instant AT = Instant.parse("2026-01-15T21:00:00Z");

    @TempDir
    private Path folder;

    private static void assertRefused(Path file, String message) {
        assertThatThrownBy(() -> NightLog.open(file))
                .isInstanceOf(InputRefused.class)
                .hasMessage(message);
    }

    private static void execute(Path file, String sql) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void textFile_isLeftUnchanged() throws Exception {
        Path file = folder.resolve("notes.txt");
        Files.writeString(file, "Remember the dew heater. ".repeat(200));
        byte[] before = Files.readAllBytes(file);
        assertRefused(file, file + " is not a Polewright log. Name another file; this one was not changed.");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void otherDatabase_isLeftUnchanged() throws Exception {
        Path file = folder.resolve("recipes.db");
        execute(file, "CREATE TABLE soup (name TEXT)");
        byte[] before = Files.readAllBytes(file);
        assertRefused(file, file + " is not a Polewright log. Name another file; this one was not changed.");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void logOfANewerProgram_isLeftUnchanged() throws Exception {
        Path file = folder.resolve("nights.db");
        NightLog.open(file).close();
        execute(file, "PRAGMA user_version = 7");
        byte[] before = Files.readAllBytes(file);
        assertRefused(
                file,
                file + " was written by a newer Polewright (log version 7, this one knows 2). Use the newer program, or"
                        + " name another file; this one was not changed.");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void logWithInterruptedFirstOpening_isCompleted() throws Exception {
        // After the tables, before their version was written.
        Path file = folder.resolve("nights.db");
        NightLog.open(file).close();
        execute(file, "PRAGMA user_version = 0");
        try (NightLog log = NightLog.open(file)) {
            assertThat(log.nights()).isEmpty();
        }
        // Before the tables, after the migration tool's own.
        Path barely = folder.resolve("barely.db");
        execute(
                barely,
                "CREATE TABLE flyway_schema_history (installed_rank INT NOT NULL PRIMARY KEY, version VARCHAR(50),"
                        + " description VARCHAR(200) NOT NULL, type VARCHAR(20) NOT NULL, script VARCHAR(1000) NOT"
                        + " NULL,"
                        + " checksum INT, installed_by VARCHAR(100) NOT NULL,"
                        + " installed_on TEXT NOT NULL DEFAULT (strftime('%Y-%m-%d %H:%M:%f','now')),"
                        + " execution_time INT NOT NULL, success BOOLEAN NOT NULL)");
        try (NightLog log = NightLog.open(barely)) {
            assertThat(log.begin((NightEvent.Begun) new RandomEvents(1).event(EventKind.BEGIN, 1), AT))
                    .isEqualTo(new NightId(1));
        }
        // An empty file.
        Path empty = Files.createFile(folder.resolve("empty.db"));
        try (NightLog log = NightLog.open(empty)) {
            assertThat(log.nights()).isEmpty();
        }
    }

    @Test
    void folderInPlaceOfTheFile_isRefused() {
        assertRefused(
                folder, folder + " cannot be opened as a log. Name a file in a folder that you may write" + " to.");
    }

    @Test
    void folderThatCannotBeCreated_isRefused() throws Exception {
        Path inTheWay = Files.createFile(folder.resolve("file"));
        Path file = inTheWay.resolve("nights.db");
        assertRefused(
                file,
                "the folder " + inTheWay
                        + " for the log cannot be made. Name a file in a folder that you may write to.");
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void readOnlyFolder_isRefused() {
        // No file can be created here, not even by root, to whom permissions do not apply.
        Path file = Path.of("/proc/nights.db");
        assertRefused(file, file + " cannot be opened as a log. Name a file in a folder that you may write to.");
    }

    @Test
    void fullDisk_losesNothingLogged() throws Exception {
        Path file = folder.resolve("nights.db");
        NightEvent.Begun begun = (NightEvent.Begun) new RandomEvents(1).event(EventKind.BEGIN, 1);
        NightId id;
        try (NightLog log = NightLog.open(file)) {
            id = log.begin(begun, AT);
        }
        Connection narrow = LogFile.open(file);
        try (var statement = narrow.createStatement()) {
            // SQLite's own substitute for a full disk: the file may not grow from here on.
            statement.execute("PRAGMA max_page_count = 1");
        }
        try (NightLog log = new NightLog(file, narrow, Optional.empty())) {
            NightEvent longNote = new NightEvent.Noted("cold ".repeat(800));
            assertThatThrownBy(() -> log.append(id, longNote, AT))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("the disk with " + file
                            + " is full, so this was not logged; what was there is safe. Free some space and enter it"
                            + " again.");
            assertThat(log.events(id)).hasSize(1);
        }
    }

    @Test
    void logLockedTooLongByAnotherProgram_isRefused() throws Exception {
        Path file = folder.resolve("nights.db");
        NightEvent.Begun begun = (NightEvent.Begun) new RandomEvents(1).event(EventKind.BEGIN, 1);
        try (NightLog log = NightLog.open(file);
                var other = DriverManager.getConnection("jdbc:sqlite:" + file);
                var statement = other.createStatement()) {
            statement.execute("BEGIN EXCLUSIVE");
            assertThatThrownBy(() -> log.begin(begun, AT))
                    .isInstanceOf(InputRefused.class)
                    .hasMessage("another program has locked " + file
                            + " for too long, so nothing was logged. Close it and enter this again.");
            statement.execute("ROLLBACK");
            assertThat(log.begin(begun, AT)).isEqualTo(new NightId(1));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        SQLITE_READONLY | F is not writable, so nothing was logged. Allow writing to it and to its folder, or name another file.
        SQLITE_READONLY_DIRECTORY | F is not writable, so nothing was logged. Allow writing to it and to its folder, or name another file.
        SQLITE_IOERR_FSYNC | the disk with F failed, so this was not logged. Check the disk or card, copy the log to another, and enter it again there.
        SQLITE_CORRUPT_INDEX | F is damaged (its pages are inconsistent), so nothing was logged. Leave it as it is, rescue what can be read into a new file, and use another log tonight.
        SQLITE_CANTOPEN_ISDIR | F cannot be opened as a log. Name a file in a folder that you may write to.
        """)
    void diskFailure_isExplained(SQLiteErrorCode code, String message) {
        RuntimeException wrapped = new IllegalStateException(new SQLiteException("raw", code));
        assertThat(LogTrouble.of(Path.of("F"), wrapped))
                .isInstanceOf(InputRefused.class)
                .hasMessage(message);
    }

    @Test
    void bug_isNotTurnedIntoARefusal() {
        RuntimeException bug =
                new IllegalStateException(new SQLiteException("no such column", SQLiteErrorCode.SQLITE_ERROR));
        assertThat(LogTrouble.of(Path.of("F"), bug)).isSameAs(bug);
    }
}
