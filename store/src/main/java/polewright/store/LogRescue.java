package polewright.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import polewright.session.event.EventOrder;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.InputRefused;
import polewright.sky.fields.BodyNames;

/**
 * Reads what is still readable in a log that may be damaged. Its file is not changed, except that SQLite rolls back an
 * append interrupted by a power cut.
 */
public final class LogRescue {
    private LogRescue() {}

    /**
     * What was found.
     *
     * @param nights nights that still have their beginning, by their number in the log; each can be imported as is
     * @param loose events that cannot be imported: the beginning of their night, or the event that they withdraw or
     *     correct, is lost, or they are notes longer than can be logged now
     * @param missing numbers missing between others, such as {@code #4 and #7 to #9 of night 3}
     */
    public record Found(NavigableMap<Long, List<LoggedEvent>> nights, List<LoggedEvent> loose, List<String> missing) {
        public Found {
            loose = List.copyOf(loose);
            missing = List.copyOf(missing);
        }
    }

    /**
     * Reads each page of the file on its own.
     *
     * @throws IOException if the file cannot be read at all
     */
    public static Found read(Path log) throws IOException {
        rollBackUnfinished(log);
        NavigableMap<Long, NavigableMap<Long, LoggedEvent>> found = new TreeMap<>();
        for (LogPages.Row row : new LogPages(Files.readAllBytes(log)).rows()) {
            event(row)
                    .ifPresent(event -> found.computeIfAbsent(row.night(), night -> new TreeMap<>())
                            .put(event.seq(), event));
        }
        NavigableMap<Long, List<LoggedEvent>> nights = new TreeMap<>();
        List<LoggedEvent> loose = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        found.forEach((number, events) -> {
            List<LoggedEvent> night = standing(events.values(), loose);
            if (!night.isEmpty()) {
                nights.put(number, night);
            }
            missing.addAll(gaps(number, events));
        });
        return new Found(nights, loose, missing);
    }

    /** Copies of a log from before its last few nights, newest first. */
    public static List<Path> copies(Path log) throws IOException {
        return new LogCopies(log).newestFirst();
    }

    /**
     * SQLite rolls back an append interrupted by a power cut when it next reads the file, as far as it can. The file is
     * not opened as a log, which might be refused.
     */
    private static void rollBackUnfinished(Path log) {
        if (!Files.exists(log.resolveSibling(log.getFileName() + "-journal"))) {
            return;
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log.toAbsolutePath());
                Statement statement = connection.createStatement()) {
            statement.execute("SELECT count(*) FROM sqlite_schema");
        } catch (SQLException damaged) {
            // Then the pages are read as they are.
        }
    }

    /** Empty if it only looks like an event: the line must contain the same number. */
    private static Optional<LoggedEvent> event(LogPages.Row row) {
        try {
            return Optional.of(JsonLines.readLine(row.line(), 0, BodyNames.NONE))
                    .filter(event -> event.seq() == row.seq() && row.night() > 0);
        } catch (InputRefused unreadable) {
            return Optional.empty();
        }
    }

    private static List<LoggedEvent> standing(Iterable<LoggedEvent> events, List<LoggedEvent> loose) {
        List<LoggedEvent> night = new ArrayList<>();
        TreeSet<Long> seqs = new TreeSet<>();
        for (LoggedEvent event : events) {
            try {
                if (event.event() instanceof NightEvent.Noted noted) {
                    noted.requireShortEnough();
                }
                EventOrder.checkNext(event, seqs.isEmpty() ? 0 : seqs.last(), seqs::contains);
                night.add(event);
                seqs.add(event.seq());
            } catch (InputRefused cannotStand) {
                loose.add(event);
            }
        }
        return night;
    }

    private static List<String> gaps(long night, NavigableMap<Long, LoggedEvent> events) {
        List<String> gaps = new ArrayList<>();
        long expected = 1;
        for (long seq : events.keySet()) {
            if (seq > expected) {
                gaps.add("#" + expected + (seq - 1 > expected ? " to #" + (seq - 1) : "") + " of night " + night);
            }
            expected = seq + 1;
        }
        return gaps;
    }
}
