## entries/mod.rs

line-of-cant-be-used = line { $line } of { $what } can't be used, at character { $column }: { $why }
the-parser-says = The parser says: { $words }

## entries/sentence.rs, of signs

quotation-marks-are-straight = quotation marks in such a file are straight, as in name = "green". Write these anew.
text-needs-quotation-marks = text needs quotation marks at both ends, as in name = "green"; a number is written in figures, as in pieces = 5.
a-unit-stands-within-the-marks = behind the second quotation mark stands more. What belongs to the text, such as a unit, stands between the marks, as in weight = "250 g"; a remark begins with #.
a-number-has-a-point = a number has a point, not a comma, as in 2.5, and no sign between its thousands.
a-minus-is-a-hyphen = a minus in such a file is the hyphen of the keyboard, as in -3.
what-begins-as-a-number-needs-quotation-marks = a number with a unit is text, and text needs quotation marks at both ends, as in weight = "250 g".
the-text-has-no-second-quotation-mark = the text has no quotation mark at its end. Put one there; a quotation mark within the text is written \".
there-is-no-value = an entry is a name, a = and a value, as in pieces = 5. One of them is missing; a remark begins with #.
a-comma-is-missing-between-entries = put a comma between two entries in {"{ }"}, as in {"{ weight = \"250 g\", pieces = 5 }"}.
a-comma-is-missing-between-values = put a comma between two values in [ ], and quotation marks around text, as in ["a", "b"]; a list ends with ].
the-heading-has-no-bracket-at-its-end = a heading stands in brackets, as in [goods] or [[dye]]. Here the closing one is missing.
the-list-has-no-bracket-at-its-end = a list that begins with [ has no ] at its end. Put one there.
the-brace-isnt-closed = entries that begin with {"{"} have no {"}"} before this. Put one at their end.
there-is-a-comma-too-many = there is a comma too many here. Take it out.
there-is-an-equals-sign-too-many = there is a = too many here. Take it out, or put text in quotation marks.
this-entry-is-there-twice = this entry is there twice. Keep one of them; a list of several things of a kind has headings in two brackets, as in [[dye]].
this-name-has-a-value-already = this name has a value already, so it can't have entries of its own too. Take one of the two out.
a-name-stands-before-the-equals-sign = a name of letters, digits, - and _ stands before the =, as in liquor_ratio = "20:1".
a-backslash-in-text-is-written-twice = a backslash in text is written twice, as in "a \\ b".
a-hidden-sign-stands-here = a sign that isn't seen stands here. Delete it, or write the line anew.
this-is-no-number = this is no number as such a file has them. Write 5 or 0.5: with a point, without zeros ahead and spaces within; what has a unit is text in quotation marks.
brackets-stand-within-too-many-brackets = brackets stand within too many other brackets. Such a file never needs that.
this-isnt-an-entry = this is no entry. Each line is a name, a = and a value, or a heading as [goods], or a remark behind #.

## entries/sentence.rs, of entries

there-is-no-entry = there is no entry { $name } here. Take it out.
there-is-no-entry-those-are = there is no entry { $name } here. Those that there are: { $known }.
there-is-no-entry-did-you-mean = there is no entry { $name } here. Did you mean { $meant }? Those that there are: { $known }.
isnt-a-word-that-does = { $word } isn't a word that can stand here. Those that can: { $known }.
isnt-a-word-did-you-mean = { $word } isn't a word that can stand here. Did you mean { $meant }? Those that can: { $known }.
an-entry-is-missing = the entry { $name } is missing. Add it.
is-given-and-is-asked-for = { $given } stands here, where the file needs { $asked }.
is-of-another-kind = this value is of another kind than the file needs here.
doesnt-fit = { $given } doesn't fit here, where the file needs { $asked }.
the-number = the number { $value }
the-date = the date or time { $value }
the-value = the value { $value }
the-text = the text { $value }
a-list = a list
entries-of-its-own = a group of entries
something-else = something else
text-in-quotation-marks = text in quotation marks
a-list-in-brackets = a list in brackets, as in ["a", "b"]
true-or-false = true or false
a-whole-number = a whole number from 0 upward, without quotation marks
a-whole-number-up-to = a whole number from 0 to { $greatest }
a-whole-number-maybe-negative = a whole number, without quotation marks
a-number-without-quotation-marks = a number, without quotation marks and unit
entries-in-braces-or-below-a-heading = entries in {"{ }"} or below a heading in brackets
something-of-another-kind = a value of another kind
