## parts.rs

of-the-piece = { $share } % of the piece
its-start = its start
no-start-to-compare = no start to compare with
change = change { $range }
the-pale-part-is-where-another-pieces = The pale part is where another piece’s dye shows: what runs in the wash lands first where cloth has little dye of its own.
