## on_board.rs

the-board-was-printed-for-the-trial = The board was printed for the trial “{ $other }”, not for this one. Look whether the photo belongs here.
the-board-was-printed-for-photos-after = The board was printed for photos after { $printed }, this photo was added as after { $stage }. Look which is right.
no-tag-could-be-read-in-window = No tag could be read in window { $number }. Mark its piece by hand, or photograph it with its tag in the tag place.
the-tag-in-window-belongs = The tag { $tag } in window { $number } belongs to no piece of this trial, so nothing was taken from that window.
the-tag-of-lies-in-window = The tag of { $code } lies in window { $number } and in another one, so neither was taken. Mark the piece by hand.
window-has-the-tag-of-but-nothing = Window { $number } has the tag of { $code }, but nothing there differs from the paper. Mark the piece by hand if it lies there.
n-1-round = 1 round
rounds = { $n } rounds
