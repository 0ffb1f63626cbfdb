-- What was to be said of a photo when it was added, such as a tag of another trial.

CREATE TABLE notice (
    photo_id INTEGER NOT NULL REFERENCES photo (id),
    place    INTEGER NOT NULL, -- order in which it is said, from 0
    sentence TEXT    NOT NULL,
    PRIMARY KEY (photo_id, place)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER notice_stays_as_it_is BEFORE UPDATE ON notice
BEGIN SELECT RAISE(ABORT, 'what was said of a photo is never changed'); END;
CREATE TRIGGER notice_stays BEFORE DELETE ON notice
BEGIN SELECT RAISE(ABORT, 'what was said of a photo is never deleted'); END;
