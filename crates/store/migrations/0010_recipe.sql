-- Recipes with every revision, what each is for, and the runs by which they were dyed.

CREATE TABLE recipe (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    slug    TEXT NOT NULL UNIQUE,
    made_at TEXT NOT NULL
) STRICT;

CREATE TABLE recipe_revision (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    recipe_id INTEGER NOT NULL REFERENCES recipe (id),
    number    INTEGER NOT NULL CHECK (number >= 1), -- from 1, the newest counts
    content   TEXT    NOT NULL, -- the recipe as TOML, as it was written
    change    TEXT    NOT NULL, -- what is new in it, for a person
    made_at   TEXT    NOT NULL,
    UNIQUE (recipe_id, number)
) STRICT;

-- The plan or the trial a recipe is for; the newest row counts, one with neither takes it off.
CREATE TABLE recipe_aim (
    id        INTEGER PRIMARY KEY AUTOINCREMENT,
    recipe_id INTEGER NOT NULL REFERENCES recipe (id),
    plan_id   INTEGER REFERENCES plan (id),
    trial_id  INTEGER REFERENCES trial (id),
    made_at   TEXT NOT NULL,
    CHECK (plan_id IS NULL OR trial_id IS NULL)
) STRICT;
CREATE INDEX recipe_aim_of_recipe ON recipe_aim (recipe_id);

CREATE TABLE run (
    id          INTEGER PRIMARY KEY AUTOINCREMENT,
    revision_id INTEGER NOT NULL REFERENCES recipe_revision (id),
    trial_id    INTEGER REFERENCES trial (id),
    title       TEXT NOT NULL,
    sheet       TEXT NOT NULL, -- the run sheet as it stood when the run began, JSON
    begun_at    TEXT NOT NULL
) STRICT;
CREATE INDEX run_of_revision ON run (revision_id);
CREATE INDEX run_of_trial ON run (trial_id);

-- What happened in a run. A correction is one more event; clocks follow from the instants.
CREATE TABLE run_event (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    run_id   INTEGER NOT NULL REFERENCES run (id),
    number   INTEGER NOT NULL CHECK (number >= 1), -- from 1 in its run
    step     INTEGER, -- none: the run as a whole
    kind     TEXT    NOT NULL CHECK (kind IN
        ('started', 'stopped', 'temperature', 'departed', 'remarked', 'finished', 'withdrawn')),
    temperature_c REAL,
    words    TEXT,
    of_event INTEGER, -- number of the earlier event that it corrects or withdraws
    at_s     INTEGER NOT NULL, -- when it happened, s since 1970
    noted_s  INTEGER NOT NULL, -- when it was noted, s since 1970
    UNIQUE (run_id, number),
    CHECK ((kind = 'temperature') = (temperature_c IS NOT NULL)),
    CHECK ((kind IN ('departed', 'remarked', 'withdrawn')) = (words IS NOT NULL))
) STRICT;

CREATE TRIGGER recipe_stays_as_it_is BEFORE UPDATE ON recipe
BEGIN SELECT RAISE(ABORT, 'recipes are never changed: a revision is added'); END;
CREATE TRIGGER recipe_stays BEFORE DELETE ON recipe
BEGIN SELECT RAISE(ABORT, 'recipes are never deleted'); END;

CREATE TRIGGER recipe_revision_stays_as_it_is BEFORE UPDATE ON recipe_revision
BEGIN SELECT RAISE(ABORT, 'revisions of a recipe are never changed: another one is added'); END;
CREATE TRIGGER recipe_revision_stays BEFORE DELETE ON recipe_revision
BEGIN SELECT RAISE(ABORT, 'revisions of a recipe are never deleted'); END;

CREATE TRIGGER recipe_aim_stays_as_it_is BEFORE UPDATE ON recipe_aim
BEGIN SELECT RAISE(ABORT, 'what a recipe is for is never changed: another row is added'); END;
CREATE TRIGGER recipe_aim_stays BEFORE DELETE ON recipe_aim
BEGIN SELECT RAISE(ABORT, 'what a recipe was for is never deleted'); END;

CREATE TRIGGER run_stays_as_it_is BEFORE UPDATE ON run
BEGIN SELECT RAISE(ABORT, 'runs are never changed: events are added'); END;
CREATE TRIGGER run_stays BEFORE DELETE ON run
BEGIN SELECT RAISE(ABORT, 'runs are never deleted'); END;

CREATE TRIGGER run_event_stays_as_it_is BEFORE UPDATE ON run_event
BEGIN SELECT RAISE(ABORT, 'events of a run are never changed: a correction is added'); END;
CREATE TRIGGER run_event_stays BEFORE DELETE ON run_event
BEGIN SELECT RAISE(ABORT, 'events of a run are never deleted'); END;
