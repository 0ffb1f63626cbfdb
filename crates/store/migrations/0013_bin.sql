-- Things are never deleted: they are put in the bin and taken out of it. The newest act counts.

CREATE TABLE bin_act (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    kind     TEXT    NOT NULL CHECK (kind IN ('trial', 'plan', 'recipe', 'photo')),
    thing    INTEGER NOT NULL, -- its number in the table of that name
    into_bin INTEGER NOT NULL CHECK (into_bin IN (0, 1)),
    at       TEXT    NOT NULL
) STRICT;
CREATE INDEX bin_act_of_thing ON bin_act (kind, thing, id);

CREATE VIEW binned AS
    SELECT kind, thing, at, id FROM bin_act AS act
    WHERE into_bin = 1 AND id =
        (SELECT max(id) FROM bin_act WHERE kind = act.kind AND thing = act.thing);

CREATE TRIGGER bin_act_stays_as_it_is BEFORE UPDATE ON bin_act
BEGIN SELECT RAISE(ABORT, 'acts of the bin are never changed'); END;
CREATE TRIGGER bin_act_stays BEFORE DELETE ON bin_act
BEGIN SELECT RAISE(ABORT, 'acts of the bin are never deleted'); END;

-- Which trial an entry is about; null where it is about none, and in entries of older programs.
ALTER TABLE journal ADD COLUMN trial_id INTEGER REFERENCES trial (id);
CREATE INDEX journal_of_trial ON journal (trial_id, id);
