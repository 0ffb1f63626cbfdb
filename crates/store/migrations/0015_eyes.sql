-- Blind sessions of judging by eye: what they show, who judged, every grade and correction.

CREATE TABLE eye_session (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    trial_id INTEGER NOT NULL REFERENCES trial (id),
    content  TEXT    NOT NULL, -- stage, way, pairs with their codes, JSON
    begun_at TEXT    NOT NULL
) STRICT;
CREATE INDEX eye_session_of_trial ON eye_session (trial_id);

-- When its grades and codes were laid open; from then on nobody judges in it.
CREATE TABLE eye_closing (
    session_id INTEGER PRIMARY KEY REFERENCES eye_session (id),
    closed_at  TEXT NOT NULL
) STRICT;

CREATE TABLE eye_sitting (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    session_id INTEGER NOT NULL REFERENCES eye_session (id),
    judge      TEXT    NOT NULL, -- name, light, colour vision, distance, JSON
    turns      TEXT    NOT NULL, -- the person's own order, JSON
    begun_at   TEXT    NOT NULL
) STRICT;
CREATE INDEX eye_sitting_of_session ON eye_sitting (session_id);

-- Of several rows of one turn the newest counts: it corrects those before.
CREATE TABLE eye_turn (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    sitting_id INTEGER NOT NULL REFERENCES eye_sitting (id),
    turn       INTEGER NOT NULL CHECK (turn >= 0),
    grade      TEXT, -- 5, 4-5, ... 1; null: could not tell
    remark     TEXT    NOT NULL,
    made_at    TEXT    NOT NULL
) STRICT;
CREATE INDEX eye_turn_of_sitting ON eye_turn (sitting_id);

CREATE TRIGGER eye_session_stays_as_it_is BEFORE UPDATE ON eye_session
BEGIN SELECT RAISE(ABORT, 'sessions of judging are never changed'); END;
CREATE TRIGGER eye_session_stays BEFORE DELETE ON eye_session
BEGIN SELECT RAISE(ABORT, 'sessions of judging are never deleted'); END;

CREATE TRIGGER eye_closing_stays_as_it_is BEFORE UPDATE ON eye_closing
BEGIN SELECT RAISE(ABORT, 'when a session was closed is never changed'); END;
CREATE TRIGGER eye_closing_stays BEFORE DELETE ON eye_closing
BEGIN SELECT RAISE(ABORT, 'closed sessions are never opened again'); END;

CREATE TRIGGER eye_sitting_stays_as_it_is BEFORE UPDATE ON eye_sitting
BEGIN SELECT RAISE(ABORT, 'who judged and in which order is never changed'); END;
CREATE TRIGGER eye_sitting_stays BEFORE DELETE ON eye_sitting
BEGIN SELECT RAISE(ABORT, 'who judged is never deleted'); END;

CREATE TRIGGER eye_turn_stays_as_it_is BEFORE UPDATE ON eye_turn
BEGIN SELECT RAISE(ABORT, 'grades are never changed: a correction is added'); END;
CREATE TRIGGER eye_turn_stays BEFORE DELETE ON eye_turn
BEGIN SELECT RAISE(ABORT, 'grades are never deleted'); END;
