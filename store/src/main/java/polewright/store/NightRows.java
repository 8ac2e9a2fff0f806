package polewright.store;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;
import polewright.session.NightId;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.InputRefused;
import polewright.sky.fields.BodyNames;

/** The rows of a log's tables. */
final class NightRows {
    private static final DateTimeFormatter SORTABLE =
            new DateTimeFormatterBuilder().appendInstant(9).toFormatter().withZone(ZoneOffset.UTC);

    private NightRows() {}

    /** The night begun last. */
    static Optional<NightId> latest(Handle handle) {
        return handle.createQuery("SELECT id FROM night WHERE imported = 0 ORDER BY id DESC LIMIT 1")
                .mapTo(Long.class)
                .findOne()
                .map(NightId::new);
    }

    /** The result of a key that was sent before. */
    static Optional<Submission> submitted(Handle handle, SubmissionKey key) {
        return handle.createQuery("SELECT event.night_id, event.line FROM submission"
                        + " JOIN event ON event.night_id = submission.night_id AND event.seq = submission.seq"
                        + " WHERE submission.key = :key")
                .bind("key", key.text())
                .map((row, context) -> new Submission(
                        new NightId(row.getLong("night_id")),
                        JsonLines.readLine(row.getString("line"), 0, BodyNames.NONE)))
                .findOne();
    }

    static NightId insert(Handle handle, List<LoggedEvent> night, boolean imported) {
        NightId id = insertNight(handle, night.get(0).at(), imported);
        night.forEach(event -> insert(handle, id, event));
        return id;
    }

    static void insert(Handle handle, SubmissionKey key, NightId night, long seq) {
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

    static void insert(Handle handle, NightId night, LoggedEvent event) {
        handle.createUpdate(
                        "INSERT INTO event (night_id, seq, kind, at, line) VALUES (:night, :seq, :kind, :at, :line)")
                .bind("night", night.number())
                .bind("seq", event.seq())
                .bind("kind", EventKind.of(event.event()).word())
                .bind("at", SORTABLE.format(event.at()))
                .bind("line", readableLine(event))
                .execute();
    }

    /** The event as text, after checking that the text reads back: nothing unreadable may be logged. */
    private static String readableLine(LoggedEvent event) {
        if (event.event() instanceof NightEvent.Noted noted) {
            noted.requireShortEnough();
        }
        String line = JsonLines.write(event);
        if (!StandardCharsets.UTF_8.newEncoder().canEncode(line)) {
            throw new InputRefused("a text holds half of a character", "type it again");
        }
        LoggedEvent read = JsonLines.readLine(line, 0, BodyNames.NONE);
        if (!read.equals(event)) {
            throw new IllegalStateException("an event cannot be read back: " + line);
        }
        return line;
    }

    static NavigableSet<Long> seqs(Handle handle, NightId night) {
        return new TreeSet<>(handle.createQuery("SELECT seq FROM event WHERE night_id = :night")
                .bind("night", night.number())
                .mapTo(Long.class)
                .list());
    }
}
