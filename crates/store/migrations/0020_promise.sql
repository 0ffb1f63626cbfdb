-- What plans promise, so that it is worked out once. It follows from the plan's text alone and from the
-- rules of the program, whose edition stands beside it: a row may be replaced or lost at no harm.

CREATE TABLE plan_promise (
    plan     TEXT PRIMARY KEY, -- the plan, TOML
    edition  INTEGER NOT NULL,
    promise  TEXT NOT NULL     -- JSON
) STRICT;
