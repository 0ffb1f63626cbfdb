-- The person's own charts, each with the values of its patches as they came, and
-- which of them lies on a photo.

CREATE TABLE chart (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    name      TEXT NOT NULL UNIQUE COLLATE NOCASE, -- in the person's words
    file_name TEXT NOT NULL,
    content   BLOB NOT NULL, -- CGATS text or CSV, as it came
    added_at  TEXT NOT NULL
) STRICT;

CREATE TRIGGER chart_stays_as_it_is BEFORE UPDATE ON chart
BEGIN SELECT RAISE(ABORT, 'charts are never changed: add it under another name'); END;
CREATE TRIGGER chart_stays BEFORE DELETE ON chart
BEGIN SELECT RAISE(ABORT, 'charts are never deleted'); END;

ALTER TABLE photo ADD COLUMN chart_id INTEGER REFERENCES chart (id); -- null: the published 24 patches
