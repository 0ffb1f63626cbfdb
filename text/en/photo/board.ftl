## board/corners.rs

corner-codes-of-different-boards = Corner codes of different boards are in the photo. Photograph one board at a time, whole.
only-of-the-boards-four-corner-codes = Only { $corners } of the board's four corner codes can be read; three are needed. Take the photo again with the whole board in it, sharp, and its corners clean and uncovered.
the-board-is-of-version = The board is of version { $version }, which this Woadstone doesn't know; it reads version { $version2 }. Print the board anew, or use the Woadstone that printed it.
there-are-two-boards-in-the-photo = There are two boards in the photo. Photograph one board at a time, whole.
the-boards-corner-codes-dont-lie = The board's corner codes don't lie as on a flat sheet. Lay the board flat, without folds, and take the photo again.

## board/seen.rs

window = window { $number }

## board/code.rs

the-tag-code-has-characters-a-code = the tag code "{ $text }" has { $found } characters; a code has { $length }, such as { $example }. Copy it from the tag once more
the-tag-code-holds-which-no-code = the tag code "{ $text }" holds "{ $found }", which no code has: codes are written with { $letters }. Look at the tag again
the-tag-code-cant-be-right = the tag code "{ $text }" can't be right: a character is wrong or two have changed places. Copy it from the tag once more
