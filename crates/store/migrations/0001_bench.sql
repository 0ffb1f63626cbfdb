-- The bench: trials, their photos, and what was read from them.
--
-- Photos, markings, outcomes, readings and the journal are only ever added to;
-- the triggers at the end hold that. Times are RFC 3339 text.

CREATE TABLE trial (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    slug        TEXT    NOT NULL UNIQUE,
    title       TEXT    NOT NULL,
    question    TEXT    NOT NULL,
    margin_de00 REAL    NOT NULL CHECK (margin_de00 > 0),
    rounds      INTEGER NOT NULL CHECK (rounds >= 1),
    invented    INTEGER NOT NULL CHECK (invented IN (0, 1)),
    method      TEXT    NOT NULL,
    made_at     TEXT    NOT NULL
) STRICT;

CREATE TABLE arm (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    trial_id  INTEGER NOT NULL REFERENCES trial (id),
    name      TEXT    NOT NULL,
    treatment TEXT    NOT NULL,
    UNIQUE (trial_id, name),
    UNIQUE (trial_id, id)
) STRICT;

CREATE TABLE piece (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    trial_id INTEGER NOT NULL,
    arm_id   INTEGER NOT NULL,
    code     TEXT    NOT NULL,
    role     TEXT    NOT NULL CHECK (role IN ('test', 'keeper', 'witness')),
    load     TEXT,
    UNIQUE (trial_id, code),
    FOREIGN KEY (trial_id, arm_id) REFERENCES arm (trial_id, id)
) STRICT;
CREATE INDEX piece_of_arm ON piece (trial_id, arm_id);

CREATE TABLE photo (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    trial_id   INTEGER NOT NULL REFERENCES trial (id),
    stage      INTEGER NOT NULL CHECK (stage >= 0), -- rounds done
    name       TEXT    NOT NULL,
    sha256     TEXT    NOT NULL CHECK (length(sha256) = 64), -- its address in the vault
    file_bytes INTEGER NOT NULL CHECK (file_bytes >= 0),
    width_px   INTEGER NOT NULL CHECK (width_px > 0),
    height_px  INTEGER NOT NULL CHECK (height_px > 0),
    corners_px TEXT, -- JSON [[x,y] x 4] on the upright photo; null where not found
    added_at   TEXT    NOT NULL
) STRICT;
CREATE INDEX photo_by_stage ON photo (trial_id, stage);
CREATE INDEX photo_by_content ON photo (sha256);

-- One act of marking where the pieces lie on a photo. The newest counts.
CREATE TABLE marking (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    photo_id  INTEGER NOT NULL REFERENCES photo (id),
    marked_at TEXT    NOT NULL
) STRICT;
CREATE INDEX marking_of_photo ON marking (photo_id);

CREATE TABLE area (
    marking_id INTEGER NOT NULL REFERENCES marking (id),
    place      INTEGER NOT NULL, -- order in which it was marked, from 0
    piece_id   INTEGER NOT NULL REFERENCES piece (id),
    polygon_px TEXT    NOT NULL, -- JSON [[x,y], ...] on the upright photo
    PRIMARY KEY (marking_id, place),
    UNIQUE (marking_id, piece_id)
) STRICT, WITHOUT ROWID;

-- The queue: photos that wait to be read, by their newest marking, oldest first.
CREATE TABLE waiting (
    marking_id INTEGER PRIMARY KEY REFERENCES marking (id),
    photo_id   INTEGER NOT NULL UNIQUE REFERENCES photo (id)
) STRICT;

-- What came of reading a photo as marked: a fit of its chart, or a refusal.
CREATE TABLE outcome (
    marking_id      INTEGER PRIMARY KEY REFERENCES marking (id),
    model           TEXT,
    loo_de00_median REAL,
    refusal_code    TEXT,
    refusal_message TEXT,
    notes           TEXT NOT NULL, -- JSON [{"code","message"}, ...]
    made_at         TEXT NOT NULL,
    CHECK ((model IS NULL) = (loo_de00_median IS NULL)),
    CHECK ((refusal_code IS NULL) = (refusal_message IS NULL)),
    CHECK ((model IS NULL) <> (refusal_code IS NULL))
) STRICT;

CREATE TABLE reading (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    piece_id   INTEGER NOT NULL REFERENCES piece (id),
    marking_id INTEGER REFERENCES marking (id), -- null where no photo was read
    stage      INTEGER NOT NULL CHECK (stage >= 0), -- rounds done
    cielab_l   REAL    NOT NULL,
    cielab_a   REAL    NOT NULL,
    cielab_b   REAL    NOT NULL,
    covariance TEXT    NOT NULL, -- JSON 3 x 3, CIELAB units squared
    pixels     INTEGER NOT NULL CHECK (pixels >= 0),
    view       TEXT    NOT NULL, -- light and observer, such as D65/10
    source     TEXT    NOT NULL,
    notes      TEXT    NOT NULL, -- JSON [{"code","message"}, ...]
    made_at    TEXT    NOT NULL,
    CHECK ((source = 'photo') = (marking_id IS NOT NULL)),
    UNIQUE (marking_id, piece_id)
) STRICT;
CREATE INDEX reading_of_piece ON reading (piece_id);

CREATE TABLE journal (
    id     INTEGER PRIMARY KEY AUTOINCREMENT,
    at     TEXT NOT NULL,
    what   TEXT NOT NULL,
    detail TEXT NOT NULL
) STRICT;

CREATE TRIGGER photo_stays_as_it_is BEFORE UPDATE ON photo
BEGIN SELECT RAISE(ABORT, 'photos are never changed'); END;
CREATE TRIGGER photo_stays BEFORE DELETE ON photo
BEGIN SELECT RAISE(ABORT, 'photos are never deleted'); END;

CREATE TRIGGER marking_stays_as_it_is BEFORE UPDATE ON marking
BEGIN SELECT RAISE(ABORT, 'markings are never changed: mark the photo again'); END;
CREATE TRIGGER marking_stays BEFORE DELETE ON marking
BEGIN SELECT RAISE(ABORT, 'markings are never deleted'); END;

CREATE TRIGGER area_stays_as_it_is BEFORE UPDATE ON area
BEGIN SELECT RAISE(ABORT, 'areas are never changed: mark the photo again'); END;
CREATE TRIGGER area_stays BEFORE DELETE ON area
BEGIN SELECT RAISE(ABORT, 'areas are never deleted'); END;

CREATE TRIGGER outcome_stays_as_it_is BEFORE UPDATE ON outcome
BEGIN SELECT RAISE(ABORT, 'outcomes are never changed: read the photo again'); END;
CREATE TRIGGER outcome_stays BEFORE DELETE ON outcome
BEGIN SELECT RAISE(ABORT, 'outcomes are never deleted'); END;

CREATE TRIGGER reading_stays_as_it_is BEFORE UPDATE ON reading
BEGIN SELECT RAISE(ABORT, 'readings are never changed: add a new one'); END;
CREATE TRIGGER reading_stays BEFORE DELETE ON reading
BEGIN SELECT RAISE(ABORT, 'readings are never deleted'); END;

CREATE TRIGGER journal_stays_as_it_is BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is never changed'); END;
CREATE TRIGGER journal_stays BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is never shortened'); END;
