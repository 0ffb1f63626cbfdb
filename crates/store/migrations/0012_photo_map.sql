-- Where on a photo lies what its reading found: patches, light, troubled spots.
-- Photos that were read before have none until they are read again.

CREATE TABLE photo_map (
    marking_id INTEGER PRIMARY KEY REFERENCES outcome (marking_id),
    places     TEXT NOT NULL -- JSON of photo::PhotoMap, pixels of the upright photo
) STRICT;

CREATE TRIGGER photo_map_stays_as_it_is BEFORE UPDATE ON photo_map
BEGIN SELECT RAISE(ABORT, 'what was read is never changed: read the photo again'); END;
CREATE TRIGGER photo_map_stays BEFORE DELETE ON photo_map
BEGIN SELECT RAISE(ABORT, 'what was read is never deleted'); END;
