-- What the readings of one marking have in common: their covariances with each
-- other, by cause, and how the chart was missed.

CREATE TABLE doubt (
    marking_id INTEGER PRIMARY KEY REFERENCES outcome (marking_id),
    together   TEXT NOT NULL -- JSON of trial::Doubt
) STRICT;

CREATE TRIGGER doubt_stays_as_it_is BEFORE UPDATE ON doubt
BEGIN SELECT RAISE(ABORT, 'what was read is never changed: read the photo again'); END;
CREATE TRIGGER doubt_stays BEFORE DELETE ON doubt
BEGIN SELECT RAISE(ABORT, 'what was read is never deleted'); END;
