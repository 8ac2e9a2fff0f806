package polewright.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.ColonPrefixSqlParser;
import org.jdbi.v3.core.statement.SqlParser;
import org.jdbi.v3.core.statement.SqlStatements;
import polewright.session.NightId;
import polewright.session.NightSummary;
import polewright.session.event.EventOrder;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.InputRefused;
import polewright.sky.fields.BodyNames;

/**
 * The log of nights: one append-only SQLite file in which nothing is ever changed or removed.
 *
 * <p>When a method that adds events returns, they are on the disk; if it throws, or the program dies in it, the log is
 * unchanged. Several programs and threads may use a log at once. Failures that a person can fix (a full disk, a
 * read-only file, an event out of order) are reported as {@link InputRefused}.
 */
public final class NightLog implements AutoCloseable {
    // It caches what it has parsed: a log is opened often, always with the same statements.
    private static final SqlParser SQL = new ColonPrefixSqlParser();

    private final Path file;
    private final Connection connection;
    private final Jdbi jdbi;
    private final Optional<String> damage;

    NightLog(Path file, Connection connection, Optional<String> damage) {
        this.file = file;
        this.connection = connection;
        this.jdbi = Jdbi.create(connection);
        jdbi.getConfig(SqlStatements.class).setSqlParser(SQL);
        this.damage = damage;
    }

    /** Opens a log, creating it and its folder if necessary. A damaged one is opened for reading only. */
    public static NightLog open(Path file) {
        Connection connection = LogFile.open(file);
        try {
            return new NightLog(file, connection, LogHealth.damage(file, connection));
        } catch (SQLException e) {
            RuntimeException trouble = LogTrouble.of(file, e);
            try {
                connection.close();
            } catch (SQLException stays) {
                trouble.addSuppressed(stays);
            }
            throw trouble;
        }
    }

    /** The damage to the file, if any: then nothing can be added, and some of it may be unreadable. */
    public Optional<String> damage() {
        return damage;
    }

    /**
     * Stores a copy of the log before another night begins, next to a few older ones. An empty log needs none.
     *
     * @throws InputRefused if none can be stored, which need not prevent the night from beginning
     */
    public void keepCopy() {
        requireWhole();
        long nights = reading(handle -> handle.createQuery("SELECT coalesce(max(id), 0) FROM night")
                .mapTo(Long.class)
                .one());
        if (nights > 0) {
            keepCopy(nights + 1);
        }
    }

    private synchronized void keepCopy(long before) {
        new LogCopies(file).keep(connection, before);
    }

    /** Begins a night. */
    public NightId begin(NightEvent.Begun begun, Instant at) {
        return begin(begun, List.of(), at, Optional.empty());
    }

    /**
     * Begins a night with initial events, atomically.
     *
     * @param initial the events after the beginning, in order
     * @param once the key that it was sent with; if that was sent before, nothing is added and the night begun then is
     *     returned
     */
    public NightId begin(NightEvent.Begun begun, List<NightEvent> initial, Instant at, Optional<SubmissionKey> once) {
        List<LoggedEvent> night = new ArrayList<>(List.of(new LoggedEvent(1, at, begun)));
        initial.forEach(event -> night.add(new LoggedEvent(night.size() + 1, at, event)));
        EventOrder.check(night);
        return inTransaction(handle -> {
            Optional<Submission> before = once.flatMap(key -> NightRows.submitted(handle, key));
            if (before.isPresent()) {
                return before.get().night();
            }
            NightId id = NightRows.insert(handle, night, false);
            once.ifPresent(key -> NightRows.insert(handle, key, id, 1));
            return id;
        });
    }

    /** Adds a whole night, each event with its number and time, atomically. */
    public NightId importNight(List<LoggedEvent> night) {
        return importNights(List.of(night), false, Optional.empty()).get(0);
    }

    /**
     * Adds whole nights, each event with its number and time, atomically.
     *
     * @param lastContinues whether the last of them becomes the current night, to which more is added; otherwise none
     *     does
     * @param once the key that they were sent with; if that was sent before, nothing is added and only the first of the
     *     nights added then is returned
     */
    public List<NightId> importNights(
            List<List<LoggedEvent>> nights, boolean lastContinues, Optional<SubmissionKey> once) {
        nights.forEach(EventOrder::check);
        return inTransaction(handle -> {
            Optional<Submission> before = once.flatMap(key -> NightRows.submitted(handle, key));
            if (before.isPresent()) {
                return List.of(before.get().night());
            }
            List<NightId> ids = new ArrayList<>();
            for (List<LoggedEvent> night : nights) {
                boolean underWay = lastContinues && ids.size() == nights.size() - 1;
                ids.add(NightRows.insert(handle, night, !underWay));
            }
            once.ifPresent(key -> NightRows.insert(handle, key, ids.get(0), 1));
            return ids;
        });
    }

    /** Adds an event at the end of its night. */
    public LoggedEvent append(NightId night, NightEvent event, Instant at) {
        return append(night, event, at, Optional.empty());
    }

    /**
     * Adds an event at the end of its night.
     *
     * @param once the key that it was sent with; if that was sent before, nothing is added and the event added then is
     *     returned
     */
    public LoggedEvent append(NightId night, NightEvent event, Instant at, Optional<SubmissionKey> once) {
        return append(night, event, at, once, KnownState.NOTHING);
    }

    /**
     * The same, if the log is still in the known state. An event sent before is returned whatever followed it.
     *
     * @throws LogChanged if it is not, and the key is new
     */
    public LoggedEvent append(
            NightId night, NightEvent event, Instant at, Optional<SubmissionKey> once, KnownState known) {
        return append(night, List.of(event), at, once, known).get(0);
    }

    /**
     * Adds several events at the end of their night, in order, atomically.
     *
     * @param events at least one
     * @param once the key that they were sent with; if that was sent before, nothing is added and only the first of the
     *     events added then is returned
     * @throws LogChanged if the log is no longer in the known state, and the key is new
     */
    public List<LoggedEvent> append(
            NightId night, List<NightEvent> events, Instant at, Optional<SubmissionKey> once, KnownState known) {
        return inTransaction(handle -> {
            Optional<Submission> before = once.flatMap(key -> NightRows.submitted(handle, key));
            if (before.isPresent()) {
                return List.of(before.get().event());
            }
            NavigableSet<Long> earlier = NightRows.seqs(handle, night);
            if (earlier.isEmpty()) {
                throw noSuch(night);
            }
            known.check(NightRows.latest(handle).orElse(night), earlier.last());
            List<LoggedEvent> added = new ArrayList<>();
            for (NightEvent event : events) {
                LoggedEvent logged = new LoggedEvent(earlier.last() + 1, at, event);
                EventOrder.checkNext(logged, earlier.last(), earlier::contains);
                NightRows.insert(handle, night, logged);
                earlier.add(logged.seq());
                added.add(logged);
            }
            once.ifPresent(
                    key -> NightRows.insert(handle, key, night, added.get(0).seq()));
            return added;
        });
    }

    /** The result of a key that was sent before; empty for a new one. */
    public Optional<Submission> submitted(SubmissionKey key) {
        return reading(handle -> NightRows.submitted(handle, key));
    }

    /** The version of the log: it changes whenever any program adds an event. */
    public long version() {
        return reading(handle -> handle.createQuery("SELECT count(*) FROM event")
                .mapTo(Long.class)
                .one());
    }

    /** All events of a night in order. */
    public List<LoggedEvent> events(NightId night) {
        List<LoggedEvent> events = events(night, 1);
        if (events.isEmpty()) {
            throw noSuch(night);
        }
        return events;
    }

    /** The events of a night from a number on, in order; empty if there are none. */
    public List<LoggedEvent> events(NightId night, long fromSeq) {
        List<String> lines = reading(handle -> handle.createQuery(
                        "SELECT line FROM event WHERE night_id = :night AND seq >= :from ORDER BY seq")
                .bind("night", night.number())
                .bind("from", fromSeq)
                .mapTo(String.class)
                .list());
        return read(lines);
    }

    /** The event of a night with a number, if there is one. */
    public Optional<LoggedEvent> event(NightId night, long seq) {
        List<String> lines =
                reading(handle -> handle.createQuery("SELECT line FROM event WHERE night_id = :night AND seq = :seq")
                        .bind("night", night.number())
                        .bind("seq", seq)
                        .mapTo(String.class)
                        .list());
        return read(lines).stream().findFirst();
    }

    private List<LoggedEvent> read(List<String> lines) {
        try {
            return lines.stream()
                    .map(line -> JsonLines.readLine(line, 0, BodyNames.NONE))
                    .toList();
        } catch (InputRefused unreadable) {
            if (damage.isPresent()) {
                throw LogTrouble.damaged(file, damage.get());
            }
            throw unreadable;
        }
    }

    /** The night begun last; imported nights do not count. */
    public Optional<NightId> latest() {
        return reading(NightRows::latest);
    }

    /** All nights, latest first. */
    public List<NightSummary> nights() {
        return reading(handle -> handle.createQuery("SELECT night.id, night.begun_at, max(event.at) AS last_at,"
                        + " min(iif(event.seq = 1, json_extract(event.line, '$.site_name'), NULL)) AS site_name,"
                        + " count(*) AS events"
                        + " FROM night JOIN event ON event.night_id = night.id"
                        + " GROUP BY night.id ORDER BY night.begun_at DESC, night.id DESC")
                .map((row, context) -> new NightSummary(
                        new NightId(row.getLong("id")),
                        Instant.parse(row.getString("begun_at")),
                        Instant.parse(row.getString("last_at")),
                        row.getString("site_name"),
                        row.getLong("events")))
                .list());
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw LogTrouble.of(file, e);
        }
    }

    private InputRefused noSuch(NightId night) {
        return new InputRefused(
                "there is no night " + night.number() + " in " + file,
                "list the nights and choose a number from there");
    }

    private void requireWhole() {
        damage.ifPresent(what -> {
            throw LogTrouble.damaged(file, what);
        });
    }

    private synchronized <T> T inTransaction(Function<Handle, T> work) {
        requireWhole();
        try {
            return jdbi.inTransaction(work::apply);
        } catch (InputRefused e) {
            throw e;
        } catch (RuntimeException e) {
            throw LogTrouble.of(file, e);
        }
    }

    private synchronized <T> T reading(Function<Handle, T> work) {
        try {
            return jdbi.withHandle(work::apply);
        } catch (RuntimeException e) {
            throw LogTrouble.of(file, e);
        }
    }
}
