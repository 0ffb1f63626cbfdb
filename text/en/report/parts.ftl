## parts.rs

of-the-piece = { $share } % of the piece
its-start = its start
no-start-to-compare = no start to compare with
change = change { $range }
