package polewright.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;

/**
 * Opens the file, and migrates an older one.
 *
 * <p>The journal is SQLite's rollback journal (journal_mode=DELETE) with synchronous=EXTRA: when an append returns,
 * both the event and the removal of the journal are on the disk. The alternative, a write-ahead log, would save a few
 * milliseconds, which do not matter at a telescope, but between appends it keeps the newest events in a second file: a
 * copy of the log made after a crash would lack them. It also needs shared memory, which network folders lack. Here the
 * log is one file.
 *
 * <p>Flyway does the migrations. It takes some tenths of a second to start, so it is only used if the file's
 * user_version, which is written after a migration, differs from this program's.
 */
final class LogFile {
    /** Number of the newest migration next to this class. */
    static final int SCHEMA_VERSION = 2;

    private static final int APPLICATION_ID = 0x506F6C65;
    private static final int BUSY_MILLIS = 5000;
    private static final int ATTEMPTS = 20;
    private static final int PAUSE_MILLIS = 100;

    private LogFile() {}

    static Connection open(Path file) {
        makeFolder(file);
        SQLiteDataSource source = source(file);
        try {
            Optional<Connection> current = current(file, source);
            if (current.isPresent()) {
                return current.get();
            }
            migrate(file, source);
            return synced(source.getConnection());
        } catch (SQLException e) {
            throw LogTrouble.of(file, e);
        }
    }

    /**
     * The file as is, if its version is this program's. An older one may be migrated, which requires that it is
     * undamaged.
     */
    private static Optional<Connection> current(Path file, SQLiteDataSource source) throws SQLException {
        Connection connection = source.getConnection();
        try {
            if (isCurrent(file, connection)) {
                return Optional.of(synced(connection));
            }
            requireWhole(file, connection);
        } catch (SQLException | RuntimeException e) {
            connection.close();
            throw e;
        }
        connection.close();
        return Optional.empty();
    }

    // The driver's own settings go up to FULL only.
    private static Connection synced(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA synchronous = EXTRA");
        }
        return connection;
    }

    /** Neither a damaged file nor tables of a newer version are written to. */
    private static void requireWhole(Path file, Connection connection) throws SQLException {
        LogHealth.damage(file, connection).ifPresent(damage -> {
            throw LogTrouble.damaged(file, damage);
        });
    }

    private static void makeFolder(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        try {
            if (folder != null) {
                Files.createDirectories(folder);
            }
        } catch (IOException e) {
            throw LogTrouble.cannotMakeFolder(folder);
        }
    }

    private static SQLiteDataSource source(Path file) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(JournalMode.DELETE);
        // The next event's number is read and used in one transaction, which must hold the lock from its start.
        config.setTransactionMode(TransactionMode.IMMEDIATE);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(BUSY_MILLIS);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        return source;
    }

    /** False for a new or an older log; refuses a file that is not a log, or is too new. */
    private static boolean isCurrent(Path file, Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            // Flyway's own table may be the only one, if the first opening was interrupted. This query comes before the
            // version number below, which is written with the tables: another program may be creating the log between
            // the two queries.
            boolean empty =
                    number(statement, "SELECT count(*) FROM sqlite_schema WHERE tbl_name <> 'flyway_schema_history'")
                            == 0;
            int application = number(statement, "PRAGMA application_id");
            int version = number(statement, "PRAGMA user_version");
            if (application != APPLICATION_ID && !empty) {
                throw LogTrouble.notALog(file);
            }
            if (version > SCHEMA_VERSION) {
                throw LogTrouble.newer(file, version, SCHEMA_VERSION);
            }
            return version == SCHEMA_VERSION;
        }
    }

    /** Two programs may open a new log at once: the one that loses finds it complete on the next attempt. */
    private static void migrate(Path file, SQLiteDataSource source) throws SQLException {
        FlywayException last = null;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            try {
                Flyway.configure()
                        .dataSource(source)
                        .locations("classpath:polewright/store/migration")
                        .load()
                        .migrate();
                stampVersion(source);
                return;
            } catch (FlywayException e) {
                last = e;
                pause();
                try (Connection connection = source.getConnection()) {
                    if (isCurrent(file, connection)) {
                        return;
                    }
                }
            }
        }
        throw LogTrouble.of(file, last == null ? new IllegalStateException("no attempt was made") : last);
    }

    private static void stampVersion(SQLiteDataSource source) throws SQLException {
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA user_version = " + SCHEMA_VERSION);
        }
    }

    private static int number(Statement statement, String sql) throws SQLException {
        try (ResultSet result = statement.executeQuery(sql)) {
            return result.getInt(1);
        }
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
