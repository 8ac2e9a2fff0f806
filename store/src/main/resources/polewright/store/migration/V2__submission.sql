-- What was sent once is logged once: a phone that hears no answer sends again, and is answered with what was logged.
CREATE TABLE submission (
    -- Chosen by whoever sends.
    key TEXT NOT NULL PRIMARY KEY,
    night_id INTEGER NOT NULL REFERENCES night (id),
    -- The event that it became; the first, when it became several.
    seq INTEGER NOT NULL,
    FOREIGN KEY (night_id, seq) REFERENCES event (night_id, seq)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER submission_is_never_changed BEFORE UPDATE ON submission
BEGIN
    SELECT RAISE(ABORT, 'a submission in the log is never changed');
END;

CREATE TRIGGER submission_is_never_removed BEFORE DELETE ON submission
BEGIN
    SELECT RAISE(ABORT, 'a submission in the log is never removed');
END;

CREATE TRIGGER submission_is_never_replaced BEFORE INSERT ON submission
WHEN EXISTS (SELECT 1 FROM submission WHERE key = NEW.key)
BEGIN
    SELECT RAISE(ABORT, 'a submission in the log is never replaced');
END;
