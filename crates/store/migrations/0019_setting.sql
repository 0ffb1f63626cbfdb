-- How the person wants measures, money, days and times written; the newest row counts.
CREATE TABLE setting (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    locale  TEXT NOT NULL, -- JSON; what is missing stands as it did before anyone chose
    made_at TEXT NOT NULL
) STRICT;

CREATE TRIGGER setting_stays_as_it_is BEFORE UPDATE ON setting
BEGIN SELECT RAISE(ABORT, 'settings are never changed: the newest counts'); END;
CREATE TRIGGER setting_stays BEFORE DELETE ON setting
BEGIN SELECT RAISE(ABORT, 'settings are never deleted: the newest counts'); END;

-- What a lot's price is in, by its code, so that another setting doesn't relabel it; empty: not said.
ALTER TABLE lot ADD COLUMN currency TEXT NOT NULL DEFAULT '';
