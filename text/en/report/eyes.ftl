## eyes.rs

by-eye = By eye: { $verdict }
staining-by-eye = Staining, by eye: { $verdict }
a-session-is-open-its-grades = A session is open: its grades are shown and count once it is closed.
sessions-are-open-their-grades-are-shown = { $count } sessions are open: their grades are shown and count once they are closed.
readings-say-the-same = Readings say the same
readings-decide-this-stage = Readings decide this stage
one-piece-in-an-arm-no-interval = one piece in an arm: no interval can be given
grades-95-interval-to-margin = { $abs } grades (95 % interval { $low } to { $high }); margin { $margin_grades }
saw-a-difference-in-of-pairs-without = { $judge } saw a difference in { $seen } of { $pairs } pairs without one { $stage }, down to grade { $lowest }: take this person's grades with care. They count all the same.
grades-were-given = Grades { $stages } were given one by one and not blind: whoever judged may have known the arm.
grades-on-the-grey-scale-for-change = Grades on the grey scales for change in colour and for staining, 5 for none to 1 for the most, that people gave the cloths. They tell how far a piece has changed, or how much a witness cloth was stained, and not in which direction, and half-steps are coarse: where readings decide on a stage's change, they decide.
one-witness-cloth-says-nothing = Witness cloths judged by eye { $stages } give no verdict on staining where an arm has only one: one cloth says nothing of how much such cloths differ.
staining = staining
change = change
ciede2000 = { $agree }: { $in_words }, { $high } CIEDE2000.
and = { " " }and{ " " }
