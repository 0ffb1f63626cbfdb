-- The pale and the deep part of a piece that a photo shows resist-dyed. Each stands
-- beside the reading of the whole piece, whose stage, view and photo it shares.
-- Pieces that were read before have none until their photo is read again.

CREATE TABLE part (
    reading_id INTEGER NOT NULL REFERENCES reading (id),
    part       TEXT    NOT NULL CHECK (part IN ('pale', 'deep')),
    cielab_l   REAL    NOT NULL,
    cielab_a   REAL    NOT NULL,
    cielab_b   REAL    NOT NULL,
    causes     TEXT    NOT NULL, -- JSON, covariance by cause, CIELAB units squared
    share      REAL    NOT NULL CHECK (share BETWEEN 0 AND 1), -- of the piece's area
    pixels     INTEGER NOT NULL CHECK (pixels >= 0),
    PRIMARY KEY (reading_id, part)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER part_stays_as_it_is BEFORE UPDATE ON part
BEGIN SELECT RAISE(ABORT, 'readings are never changed: read the photo again'); END;
CREATE TRIGGER part_stays BEFORE DELETE ON part
BEGIN SELECT RAISE(ABORT, 'readings are never deleted'); END;
