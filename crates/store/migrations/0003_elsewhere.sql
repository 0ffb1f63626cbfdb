-- Readings from elsewhere and grades judged by eye; what was added is withdrawn, never changed.

-- One act of adding readings: a file, or values as they were typed.
CREATE TABLE delivery (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    trial_id    INTEGER NOT NULL REFERENCES trial (id),
    file_name   TEXT    NOT NULL, -- empty where typed
    content     BLOB    NOT NULL, -- the file as it came, or the typed text
    by_whom     TEXT    NOT NULL,
    measured_on TEXT    NOT NULL, -- as the person wrote it
    instrument  TEXT    NOT NULL,
    added_at    TEXT    NOT NULL
) STRICT;
CREATE INDEX delivery_of_trial ON delivery (trial_id);

CREATE TABLE delivered (
    reading_id  INTEGER PRIMARY KEY REFERENCES reading (id),
    delivery_id INTEGER NOT NULL REFERENCES delivery (id),
    spectrum    TEXT -- JSON {"start_nm","step_nm","values"}; null where only Lab is known
) STRICT;

CREATE TABLE eye_grade (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    piece_id    INTEGER NOT NULL REFERENCES piece (id),
    stage       INTEGER NOT NULL CHECK (stage >= 0), -- rounds done
    scale       TEXT    NOT NULL CHECK (scale IN ('change', 'staining')),
    grade       TEXT    NOT NULL, -- 5, 4-5, 4, ... 1
    against_id  INTEGER REFERENCES piece (id), -- null: the piece's own original
    by_whom     TEXT    NOT NULL,
    light       TEXT    NOT NULL,
    judged_on   TEXT    NOT NULL, -- as the person wrote it
    remark      TEXT    NOT NULL,
    made_at     TEXT    NOT NULL
) STRICT;
CREATE INDEX eye_grade_of_piece ON eye_grade (piece_id);

-- What no longer counts, and why.
CREATE TABLE withdrawal (
    id           INTEGER PRIMARY KEY AUTOINCREMENT,
    reading_id   INTEGER UNIQUE REFERENCES delivered (reading_id),
    eye_grade_id INTEGER UNIQUE REFERENCES eye_grade (id),
    reason       TEXT    NOT NULL,
    made_at      TEXT    NOT NULL,
    CHECK ((reading_id IS NULL) <> (eye_grade_id IS NULL))
) STRICT;

CREATE TRIGGER delivery_stays_as_it_is BEFORE UPDATE ON delivery
BEGIN SELECT RAISE(ABORT, 'deliveries are never changed'); END;
CREATE TRIGGER delivery_stays BEFORE DELETE ON delivery
BEGIN SELECT RAISE(ABORT, 'deliveries are never deleted'); END;

CREATE TRIGGER delivered_stays_as_it_is BEFORE UPDATE ON delivered
BEGIN SELECT RAISE(ABORT, 'readings are never changed: withdraw it and add a new one'); END;
CREATE TRIGGER delivered_stays BEFORE DELETE ON delivered
BEGIN SELECT RAISE(ABORT, 'readings are never deleted'); END;

CREATE TRIGGER eye_grade_stays_as_it_is BEFORE UPDATE ON eye_grade
BEGIN SELECT RAISE(ABORT, 'grades are never changed: withdraw it and add a new one'); END;
CREATE TRIGGER eye_grade_stays BEFORE DELETE ON eye_grade
BEGIN SELECT RAISE(ABORT, 'grades are never deleted'); END;

CREATE TRIGGER withdrawal_stays_as_it_is BEFORE UPDATE ON withdrawal
BEGIN SELECT RAISE(ABORT, 'withdrawals are never changed'); END;
CREATE TRIGGER withdrawal_stays BEFORE DELETE ON withdrawal
BEGIN SELECT RAISE(ABORT, 'withdrawals are never deleted'); END;
