## stages.rs

a-photo-can-be-of-round = A photo can be of round { $latest_stage } at the latest.
the-very-same-file-is-there-already = The very same file is there already as photo { $twin }, so it would count twice. Move one of the two to the bin.
photo-from-round-to-round = photo { $photo }, "{ $name }", from round { $before } to round { $stage }
