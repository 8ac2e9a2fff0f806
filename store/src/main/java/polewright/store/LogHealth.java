package polewright.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;

/**
 * Whether the file of a log is undamaged. SQLite checks it (quick_check: every page, and the constraints of every row);
 * a file unchanged since this program last checked it is not checked again.
 */
final class LogHealth {
    private static final String WHOLE = "ok";
    private static final Map<Path, Finding> FOUND = new ConcurrentHashMap<>();

    /** Changes when the file is written to or replaced. */
    private record Stamp(@Nullable Object file, long bytes, FileTime written) {
        static Stamp of(Path file) throws IOException {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            return new Stamp(attributes.fileKey(), attributes.size(), attributes.lastModifiedTime());
        }
    }

    private record Finding(Stamp stamp, Optional<String> damage) {}

    private LogHealth() {}

    /**
     * The damage, in SQLite's words; empty if the file is undamaged.
     *
     * @throws SQLException if it cannot be read for another reason
     */
    static Optional<String> damage(Path file, Connection connection) throws SQLException {
        try {
            Path real = file.toRealPath();
            // Before the check, so that anything written during it is checked next time.
            Stamp stamp = Stamp.of(real);
            Finding known = FOUND.get(real);
            if (known != null && known.stamp().equals(stamp)) {
                return known.damage();
            }
            Optional<String> damage = check(connection);
            FOUND.put(real, new Finding(stamp, damage));
            return damage;
        } catch (IOException gone) {
            return check(connection);
        }
    }

    private static Optional<String> check(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery("PRAGMA quick_check(1)")) {
            String first = found.next() ? found.getString(1) : WHOLE;
            return first.equals(WHOLE)
                    ? Optional.empty()
                    : Optional.of(first.lines().reduce("", (before, line) -> line));
        } catch (SQLException e) {
            if (LogTrouble.is(e, SQLiteErrorCode.SQLITE_CORRUPT)) {
                return Optional.of("its pages are inconsistent");
            }
            throw e;
        }
    }
}
