-- The log of nights. Rows are added and never changed: whatever is shown is worked out again from them.
-- 'Pole' in ASCII, so that a log is told from any other database.
PRAGMA application_id = 1349479525;

CREATE TABLE night (
    id INTEGER PRIMARY KEY,
    -- ISO 8601, UTC, always nine decimals: text order is time order.
    begun_at TEXT NOT NULL,
    -- 1 for a night that came in whole from a file: it is never the one under way.
    imported INTEGER NOT NULL CHECK (imported IN (0, 1))
) STRICT;

CREATE TABLE event (
    night_id INTEGER NOT NULL REFERENCES night (id),
    -- 1 for the beginning of the night, rising.
    seq INTEGER NOT NULL CHECK (seq >= 1),
    -- The word of docs/events.md.
    kind TEXT NOT NULL,
    -- When it was entered; as begun_at.
    at TEXT NOT NULL,
    -- The whole event as docs/events.md has it: number, time and kind once more, so that it can be read without this table.
    line TEXT NOT NULL CHECK (json_valid(line)),
    PRIMARY KEY (night_id, seq)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER night_is_never_changed BEFORE UPDATE ON night
BEGIN
    SELECT RAISE(ABORT, 'a night in the log is never changed');
END;

CREATE TRIGGER night_is_never_removed BEFORE DELETE ON night
BEGIN
    SELECT RAISE(ABORT, 'a night in the log is never removed');
END;

-- INSERT OR REPLACE removes without asking the trigger above.
CREATE TRIGGER night_is_never_replaced BEFORE INSERT ON night
WHEN EXISTS (SELECT 1 FROM night WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a night in the log is never replaced');
END;

CREATE TRIGGER event_is_never_changed BEFORE UPDATE ON event
BEGIN
    SELECT RAISE(ABORT, 'an event in the log is never changed');
END;

CREATE TRIGGER event_is_never_removed BEFORE DELETE ON event
BEGIN
    SELECT RAISE(ABORT, 'an event in the log is never removed');
END;

CREATE TRIGGER event_comes_last BEFORE INSERT ON event
WHEN NEW.seq <= (SELECT COALESCE(MAX(seq), 0) FROM event WHERE night_id = NEW.night_id)
BEGIN
    SELECT RAISE(ABORT, 'an event is only ever added after the last');
END;
