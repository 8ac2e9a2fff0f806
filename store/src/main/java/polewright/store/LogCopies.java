package polewright.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import polewright.sky.InputRefused;
import polewright.store.disk.NotWritten;

/**
 * Copies of the log from before each of the last few nights: {@code nights-copies/before-night-12.sqlite} next to
 * {@code nights.sqlite}. Each is a complete log.
 */
final class LogCopies {
    /** The number of copies kept, the newest ones. */
    static final int KEPT = 5;

    private static final Pattern NAME = Pattern.compile("before-night-(\\d{1,18})\\.sqlite");

    private final Path log;
    private final Path folder;

    LogCopies(Path log) {
        this.log = log;
        String name = log.getFileName().toString();
        int dot = name.lastIndexOf('.');
        folder = log.toAbsolutePath().resolveSibling((dot <= 0 ? name : name.substring(0, dot)) + "-copies");
    }

    /**
     * Stores one more copy, atomically, and deletes the oldest.
     *
     * @param night the number of the night about to begin
     * @throws InputRefused if it cannot be stored; the log itself is unchanged
     */
    void keep(Connection connection, long night) {
        Path copy = folder.resolve("before-night-" + night + ".sqlite");
        Path part = folder.resolve(copy.getFileName() + ".part");
        try {
            Files.createDirectories(folder);
            try {
                Files.deleteIfExists(part);
                try (PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
                    vacuum.setString(1, part.toString());
                    vacuum.execute();
                }
                // SQLite leaves it to the operating system when this reaches the disk.
                try (FileChannel written = FileChannel.open(part, StandardOpenOption.WRITE)) {
                    written.force(true);
                }
                Files.move(part, copy, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(part);
            }
            for (Path old : newestFirst().stream().skip(KEPT).toList()) {
                Files.deleteIfExists(old);
            }
        } catch (SQLException | IOException e) {
            NotWritten why = NotWritten.why(copy, bytes(log));
            throw new InputRefused(
                    "no copy of the log was kept in " + folder + ": " + why.what(),
                    why.remedy() + "; the night continues without a copy");
        }
    }

    private static long bytes(Path file) {
        try {
            return Files.size(file);
        } catch (IOException unreadable) {
            return 0;
        }
    }

    /** The existing copies. */
    List<Path> newestFirst() throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> night(file) > 0)
                    .sorted(Comparator.comparingLong(LogCopies::night).reversed())
                    .toList();
        }
    }

    private static long night(Path file) {
        Matcher name = NAME.matcher(file.getFileName().toString());
        return name.matches() ? Long.parseLong(name.group(1)) : 0;
    }
}
