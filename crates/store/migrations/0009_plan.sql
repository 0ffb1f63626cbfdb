-- Plans with every revision they went through, and the trials that were started from them.

CREATE TABLE plan (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    slug    TEXT NOT NULL UNIQUE,
    made_at TEXT NOT NULL
) STRICT;

CREATE TABLE plan_revision (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    plan_id  INTEGER NOT NULL REFERENCES plan (id),
    number   INTEGER NOT NULL CHECK (number >= 1), -- from 1, the newest counts
    content  TEXT    NOT NULL, -- the plan as TOML
    change   TEXT    NOT NULL, -- what is new in it, for a person
    made_at  TEXT    NOT NULL,
    UNIQUE (plan_id, number)
) STRICT;

CREATE TABLE planned_trial (
    trial_id    INTEGER PRIMARY KEY REFERENCES trial (id),
    revision_id INTEGER NOT NULL REFERENCES plan_revision (id)
) STRICT;
CREATE INDEX planned_trial_of_revision ON planned_trial (revision_id);

-- When the blind codes of a trial were laid open.
CREATE TABLE blind_opening (
    trial_id  INTEGER PRIMARY KEY REFERENCES planned_trial (trial_id),
    opened_at TEXT NOT NULL
) STRICT;

CREATE TRIGGER plan_stays_as_it_is BEFORE UPDATE ON plan
BEGIN SELECT RAISE(ABORT, 'plans are never changed: a revision is added'); END;
CREATE TRIGGER plan_stays BEFORE DELETE ON plan
BEGIN SELECT RAISE(ABORT, 'plans are never deleted'); END;

CREATE TRIGGER plan_revision_stays_as_it_is BEFORE UPDATE ON plan_revision
BEGIN SELECT RAISE(ABORT, 'revisions of a plan are never changed: another one is added'); END;
CREATE TRIGGER plan_revision_stays BEFORE DELETE ON plan_revision
BEGIN SELECT RAISE(ABORT, 'revisions of a plan are never deleted'); END;

CREATE TRIGGER planned_trial_stays_as_it_is BEFORE UPDATE ON planned_trial
BEGIN SELECT RAISE(ABORT, 'the plan of a trial is never changed'); END;
CREATE TRIGGER planned_trial_stays BEFORE DELETE ON planned_trial
BEGIN SELECT RAISE(ABORT, 'the plan of a trial is never deleted'); END;

CREATE TRIGGER blind_opening_stays_as_it_is BEFORE UPDATE ON blind_opening
BEGIN SELECT RAISE(ABORT, 'when codes were opened is never changed'); END;
CREATE TRIGGER blind_opening_stays BEFORE DELETE ON blind_opening
BEGIN SELECT RAISE(ABORT, 'opened codes are never closed again'); END;
