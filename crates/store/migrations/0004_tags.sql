-- Each piece has a tag for photos on a board: a short code that no other piece of
-- the bench has. Pieces that are there already get theirs by the program.

ALTER TABLE piece ADD COLUMN tag TEXT;
CREATE UNIQUE INDEX piece_by_tag ON piece (tag);
