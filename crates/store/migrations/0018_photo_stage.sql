-- A photo's stage said anew after it was added. The newest row counts; the photo keeps the first one.

CREATE TABLE stage_correction (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    photo_id INTEGER NOT NULL REFERENCES photo (id),
    stage    INTEGER NOT NULL CHECK (stage >= 0), -- rounds done
    made_at  TEXT    NOT NULL
) STRICT;
CREATE INDEX stage_correction_of_photo ON stage_correction (photo_id, id);

CREATE TRIGGER stage_correction_stays_as_it_is BEFORE UPDATE ON stage_correction
BEGIN SELECT RAISE(ABORT, 'corrections of a stage are never changed: another one is added'); END;
CREATE TRIGGER stage_correction_stays BEFORE DELETE ON stage_correction
BEGIN SELECT RAISE(ABORT, 'corrections of a stage are never deleted'); END;

-- Photos with a corrected stage, and the stage that counts.
CREATE VIEW corrected_stage AS
    SELECT photo_id, stage FROM stage_correction AS correction
    WHERE id = (SELECT max(id) FROM stage_correction WHERE photo_id = correction.photo_id);
