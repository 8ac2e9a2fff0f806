package polewright.night.log;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import polewright.night.event.EventKind;
import polewright.night.event.EventOrder;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.night.jsonl.BodyNames;
import polewright.night.jsonl.JsonLines;
import polewright.sky.InputRefused;

/**
 * The log of nights: one SQLite file to which events are added, and in which nothing is ever changed or removed.
 *
 * <p>When a method that adds has returned, what it added is on the disk; when it throws, or the program dies in it, the
 * log is as it was before. Several programs and threads may use a log at once. Whatever fails for a reason that a person
 * can mend (a full disk, a file that may not be written, an event out of order) is an {@link InputRefused}.
 */
public final class NightLog implements AutoCloseable {
    private static final DateTimeFormatter SORTABLE =
            new DateTimeFormatterBuilder().appendInstant(9).toFormatter().withZone(ZoneOffset.UTC);

    private final Path file;
    private final Connection connection;
    private final Jdbi jdbi;

    NightLog(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
        this.jdbi = Jdbi.create(connection);
    }

    /** Opens a log, and makes it and its folder when there is none. */
    public static NightLog open(Path file) {
        return new NightLog(file, LogFile.open(file));
    }

    /** Begins a night. */
    public NightId begin(NightEvent.Begun begun, Instant at) {
        return begin(begun, List.of(), at, Optional.empty());
    }

    /**
     * Begins a night with what is known of it at once, all or nothing.
     *
     * @param told what follows the beginning, in order
     * @param once the key that it was sent with; if that was sent before, nothing is added and the night is the one that
     *     it began then
     */
    public NightId begin(NightEvent.Begun begun, List<NightEvent> told, Instant at, Optional<SubmissionKey> once) {
        List<LoggedEvent> night = new ArrayList<>(List.of(new LoggedEvent(1, at, begun)));
        told.forEach(event -> night.add(new LoggedEvent(night.size() + 1, at, event)));
        EventOrder.check(night);
        return inTransaction(handle -> {
            Optional<Submitted> before = once.flatMap(key -> submitted(handle, key));
            if (before.isPresent()) {
                return before.get().night();
            }
            NightId id = insert(handle, night, false);
            once.ifPresent(key -> insert(handle, key, id, 1));
            return id;
        });
    }

    /** Adds a whole night, each event with its number and time, or nothing of it. */
    public NightId importNight(List<LoggedEvent> night) {
        return importNight(night, Optional.empty());
    }

    /**
     * Adds a whole night, each event with its number and time, or nothing of it.
     *
     * @param once the key that it was sent with; if that was sent before, nothing is added and the night is the one that
     *     it became then
     */
    public NightId importNight(List<LoggedEvent> night, Optional<SubmissionKey> once) {
        EventOrder.check(night);
        return inTransaction(handle -> {
            Optional<Submitted> before = once.flatMap(key -> submitted(handle, key));
            if (before.isPresent()) {
                return before.get().night();
            }
            NightId id = insert(handle, night, true);
            once.ifPresent(key -> insert(handle, key, id, 1));
            return id;
        });
    }

    /** Adds an event after the last one of its night. */
    public LoggedEvent append(NightId night, NightEvent event, Instant at) {
        return append(night, event, at, Optional.empty());
    }

    /**
     * Adds an event after the last one of its night.
     *
     * @param once the key that it was sent with; if that was sent before, nothing is added and what it became then is
     *     returned
     */
    public LoggedEvent append(NightId night, NightEvent event, Instant at, Optional<SubmissionKey> once) {
        return append(night, event, at, once, Known.NOTHING);
    }

    /**
     * The same, if the log is still as it was known; what was sent before is answered whatever came after it.
     *
     * @throws MovedOn if it is not, and the key is new
     */
    public LoggedEvent append(NightId night, NightEvent event, Instant at, Optional<SubmissionKey> once, Known known) {
        return append(night, List.of(event), at, once, known).get(0);
    }

    /**
     * Adds several events after the last one of their night, in order, all or none.
     *
     * @param events one at least
     * @param once the key that they were sent with; if that was sent before, nothing is added and the first event that it
     *     became then is returned alone
     * @throws MovedOn if the log is no longer as it was known, and the key is new
     */
    public List<LoggedEvent> append(
            NightId night, List<NightEvent> events, Instant at, Optional<SubmissionKey> once, Known known) {
        return inTransaction(handle -> {
            Optional<Submitted> before = once.flatMap(key -> submitted(handle, key));
            if (before.isPresent()) {
                return List.of(before.get().event());
            }
            NavigableSet<Long> earlier = seqs(handle, night);
            if (earlier.isEmpty()) {
                throw noSuch(night);
            }
            known.check(latest(handle).orElse(night), earlier.last());
            List<LoggedEvent> added = new ArrayList<>();
            for (NightEvent event : events) {
                LoggedEvent logged = new LoggedEvent(earlier.last() + 1, at, event);
                EventOrder.checkNext(logged, earlier.last(), earlier::contains);
                insert(handle, night, logged);
                earlier.add(logged.seq());
                added.add(logged);
            }
            once.ifPresent(key -> insert(handle, key, night, added.get(0).seq()));
            return added;
        });
    }

    /** What a key that was sent before became; empty for a new one. */
    public Optional<Submitted> submitted(SubmissionKey key) {
        return reading(handle -> submitted(handle, key));
    }

    /** Where the log stands: another figure whenever an event has been added, by whichever program. */
    public long stand() {
        return reading(handle -> handle.createQuery("SELECT count(*) FROM event")
                .mapTo(Long.class)
                .one());
    }

    /** All events of a night in their order. */
    public List<LoggedEvent> events(NightId night) {
        List<String> lines =
                reading(handle -> handle.createQuery("SELECT line FROM event WHERE night_id = :night ORDER BY seq")
                        .bind("night", night.number())
                        .mapTo(String.class)
                        .list());
        if (lines.isEmpty()) {
            throw noSuch(night);
        }
        return lines.stream()
                .map(line -> JsonLines.readLine(line, 0, BodyNames.NONE))
                .toList();
    }

    /** The night that was begun last; one that came in from a file does not count. */
    public Optional<NightId> latest() {
        return reading(NightLog::latest);
    }

    private static Optional<NightId> latest(Handle handle) {
        return handle.createQuery("SELECT id FROM night WHERE imported = 0 ORDER BY id DESC LIMIT 1")
                .mapTo(Long.class)
                .findOne()
                .map(NightId::new);
    }

    /** All nights, the latest first. */
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

    private static Optional<Submitted> submitted(Handle handle, SubmissionKey key) {
        return handle.createQuery("SELECT event.night_id, event.line FROM submission"
                        + " JOIN event ON event.night_id = submission.night_id AND event.seq = submission.seq"
                        + " WHERE submission.key = :key")
                .bind("key", key.text())
                .map((row, context) -> new Submitted(
                        new NightId(row.getLong("night_id")),
                        JsonLines.readLine(row.getString("line"), 0, BodyNames.NONE)))
                .findOne();
    }

    private static NightId insert(Handle handle, List<LoggedEvent> night, boolean imported) {
        NightId id = insertNight(handle, night.get(0).at(), imported);
        night.forEach(event -> insert(handle, id, event));
        return id;
    }

    private static void insert(Handle handle, SubmissionKey key, NightId night, long seq) {
        handle.createUpdate("INSERT INTO submission (key, night_id, seq) VALUES (:key, :night, :seq)")
                .bind("key", key.text())
                .bind("night", night.number())
                .bind("seq", seq)
                .execute();
    }

    private static NightId insertNight(Handle handle, Instant begunAt, boolean imported) {
        return handle.createUpdate("INSERT INTO night (begun_at, imported) VALUES (:begun_at, :imported)")
                .bind("begun_at", SORTABLE.format(begunAt))
                .bind("imported", imported ? 1 : 0)
                .executeAndReturnGeneratedKeys("id")
                .mapTo(Long.class)
                .map(NightId::new)
                .one();
    }

    private static void insert(Handle handle, NightId night, LoggedEvent event) {
        handle.createUpdate(
                        "INSERT INTO event (night_id, seq, kind, at, line) VALUES (:night, :seq, :kind, :at, :line)")
                .bind("night", night.number())
                .bind("seq", event.seq())
                .bind("kind", EventKind.of(event.event()).word())
                .bind("at", SORTABLE.format(event.at()))
                .bind("line", readableLine(event))
                .execute();
    }

    /** The event as text, once it is sure that the text reads back: what cannot be read must not get in. */
    private static String readableLine(LoggedEvent event) {
        String line = JsonLines.write(event);
        if (!StandardCharsets.UTF_8.newEncoder().canEncode(line)) {
            throw new InputRefused("a text holds half of a character", "type it again");
        }
        LoggedEvent read = JsonLines.readLine(line, 0, BodyNames.NONE);
        if (!read.equals(event)) {
            throw new IllegalStateException("an event does not read back: " + line);
        }
        return line;
    }

    private static NavigableSet<Long> seqs(Handle handle, NightId night) {
        return new TreeSet<>(handle.createQuery("SELECT seq FROM event WHERE night_id = :night")
                .bind("night", night.number())
                .mapTo(Long.class)
                .list());
    }

    private InputRefused noSuch(NightId night) {
        return new InputRefused(
                "there is no night " + night.number() + " in " + file, "list the nights and take a number from there");
    }

    private synchronized <T> T inTransaction(Function<Handle, T> work) {
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
