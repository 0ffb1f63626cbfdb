-- What the person's set-up scatters by: checks of it with their photos. Both are
-- only ever added to; a set-up that was changed gets a new check.

CREATE TABLE setup_check (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    name    TEXT NOT NULL, -- of the set-up, in the person's words
    view    TEXT NOT NULL, -- light and observer, such as D65/10
    result  TEXT NOT NULL, -- JSON, CIEDE2000 and CIELAB units
    made_at TEXT NOT NULL
) STRICT;

CREATE TABLE setup_photo (
    setup_check_id INTEGER NOT NULL REFERENCES setup_check (id),
    place          INTEGER NOT NULL, -- order in which it was given, from 0
    name           TEXT    NOT NULL,
    sha256         TEXT    NOT NULL CHECK (length(sha256) = 64), -- its address in the vault
    file_bytes     INTEGER NOT NULL CHECK (file_bytes >= 0),
    PRIMARY KEY (setup_check_id, place),
    UNIQUE (setup_check_id, sha256)
) STRICT, WITHOUT ROWID;
CREATE INDEX setup_photo_by_content ON setup_photo (sha256);

CREATE TRIGGER setup_check_stays_as_it_is BEFORE UPDATE ON setup_check
BEGIN SELECT RAISE(ABORT, 'checks are never changed: check the set-up again'); END;
CREATE TRIGGER setup_check_stays BEFORE DELETE ON setup_check
BEGIN SELECT RAISE(ABORT, 'checks are never deleted'); END;

CREATE TRIGGER setup_photo_stays_as_it_is BEFORE UPDATE ON setup_photo
BEGIN SELECT RAISE(ABORT, 'photos are never changed'); END;
CREATE TRIGGER setup_photo_stays BEFORE DELETE ON setup_photo
BEGIN SELECT RAISE(ABORT, 'photos are never deleted'); END;
