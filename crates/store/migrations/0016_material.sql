-- What stands on the studio's shelves: materials, their lots, and what was taken from them.

CREATE TABLE material (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    kind    TEXT NOT NULL CHECK (kind IN ('dye', 'auxiliary', 'fibre', 'yarn', 'garment')),
    name    TEXT NOT NULL,
    notes   TEXT NOT NULL,
    made_at TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX material_of_name ON material (name COLLATE NOCASE);

CREATE TABLE lot (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    material_id INTEGER NOT NULL REFERENCES material (id),
    received_on TEXT NOT NULL, -- a day as YYYY-MM-DD
    amount      REAL NOT NULL CHECK (amount > 0),
    unit        TEXT NOT NULL CHECK (unit IN ('g', 'ml', 'bottle', 'piece')),
    price       TEXT NOT NULL, -- as written, such as 9.50 per 100 g; empty: not known
    supplier    TEXT NOT NULL,
    notes       TEXT NOT NULL,
    made_at     TEXT NOT NULL
) STRICT;
CREATE INDEX lot_of_material ON lot (material_id);

-- What was taken from a lot. Taking back is one more row; what is left follows from all rows.
CREATE TABLE stock_event (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    lot_id   INTEGER NOT NULL REFERENCES lot (id),
    run_id   INTEGER REFERENCES run (id), -- the run that took it
    kind     TEXT    NOT NULL CHECK (kind IN ('used', 'used_up', 'taken_back')),
    amount   REAL    CHECK (amount > 0), -- in the lot's unit
    of_event INTEGER REFERENCES stock_event (id), -- the earlier row that doesn't count
    words    TEXT    NOT NULL,
    made_at  TEXT    NOT NULL,
    CHECK ((kind = 'used') = (amount IS NOT NULL)),
    CHECK ((kind = 'taken_back') = (of_event IS NOT NULL))
) STRICT;
CREATE INDEX stock_event_of_lot ON stock_event (lot_id);
CREATE INDEX stock_event_of_run ON stock_event (run_id);
CREATE INDEX stock_event_taken_back ON stock_event (of_event);

CREATE TRIGGER material_stays_as_it_is BEFORE UPDATE ON material
BEGIN SELECT RAISE(ABORT, 'materials are never changed'); END;
CREATE TRIGGER material_stays BEFORE DELETE ON material
BEGIN SELECT RAISE(ABORT, 'materials are never deleted'); END;

CREATE TRIGGER lot_stays_as_it_is BEFORE UPDATE ON lot
BEGIN SELECT RAISE(ABORT, 'lots are never changed: what was taken from them is added'); END;
CREATE TRIGGER lot_stays BEFORE DELETE ON lot
BEGIN SELECT RAISE(ABORT, 'lots are never deleted'); END;

CREATE TRIGGER stock_event_stays_as_it_is BEFORE UPDATE ON stock_event
BEGIN SELECT RAISE(ABORT, 'what was taken from a lot is never changed: taking back is added'); END;
CREATE TRIGGER stock_event_stays BEFORE DELETE ON stock_event
BEGIN SELECT RAISE(ABORT, 'what was taken from a lot is never deleted'); END;
