-- What was read of the spent bath and the rinse waters of a run, to tell where the dye went.

CREATE TABLE water_reading (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    run_id   INTEGER NOT NULL REFERENCES run (id),
    number   INTEGER NOT NULL CHECK (number >= 1), -- from 1 in its run
    content  TEXT    NOT NULL, -- a reading, standards or a withdrawal as written, JSON
    of_event INTEGER, -- number of the earlier one that it corrects or withdraws
    noted_s  INTEGER NOT NULL, -- when it was noted, s since 1970
    UNIQUE (run_id, number)
) STRICT;

CREATE TRIGGER water_reading_stays_as_it_is BEFORE UPDATE ON water_reading
BEGIN SELECT RAISE(ABORT, 'readings of waters are never changed: a correction is added'); END;
CREATE TRIGGER water_reading_stays BEFORE DELETE ON water_reading
BEGIN SELECT RAISE(ABORT, 'readings of waters are never deleted'); END;
