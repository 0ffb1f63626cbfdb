## elsewhere/preview.html

readings = { $count ->
    [one] 1 reading { $when }.
   *[other] { $count } readings { $when }.
  }
readings-from = { $count ->
    [one] 1 reading { $when }, from { $file }.
   *[other] { $count } readings { $when }, from { $file }.
  }
nothing-is-added-yet = Nothing is added yet.

## elsewhere/new.html

readings-from-elsewhere = Readings from elsewhere · { $title }
where-you = Where you are
trials = Trials
readings-from-elsewhere-2 = Readings from elsewhere
spectra-or-lab-values-that-an-instrument = Spectra or Lab values that an instrument measured, and grades that someone judged by eye with a grey scale.
measured-colours = Measured colours
a-change-is-always-taken-between = A change is always taken between readings of one source: measure the keepers too, or the same pieces before the first round.
file = File
csv-or-cgats-text-up-to-1 = CSV or CGATS text, up to 1 MB: spectra, one column for each wavelength, or the columns L, a, b. The samples’ names are the pieces’ codes.
or-type-them = Or type them
a-line-for-each-piece-under = A line for each piece under the line with the names, as in: piece; L; a; b
piece-l-a-b = piece; L; a; b
rounds-the-pieces-had-been-through = Rounds the pieces had been through
n-0-is-before-the-first-wash = 0 is before the first wash. This trial plans { $rounds }.
light-and-observer-of-lab-values = Light and observer of Lab values
taken-where-the-file-doesnt-say-spectra = Taken where the file doesn’t say. Spectra need none.
who-measured = Who measured
when = When
with-what = With what
kind-of-instrument-opening-gloss = Kind of instrument, opening, gloss included or not, folds of the cloth.
repeatability-cielab = Repeatability, CIELAB
how-far-measurements-of-one-piece-laid = How far measurements of one piece, laid anew, lie from their mean. 0.3 is usual for a bench instrument on even cloth.
show-what-will-be-added = Show what will be added
a-grade-judged-by-eye = A grade judged by eye
piece = Piece
judged-against = Judged against
its-own-original = its own original
rounds-the-piece-had-been-through = Rounds the piece had been through
grey-scale = Grey scale
change-in-colour = change in colour
staining = staining
grade = Grade
n-5-is-none-1-the-most = 5 is none, 1 the most.
who-judged = Who judged
under-which-light = Under which light
north-window = north window
remark = Remark
add-the-grade = Add the grade
added-so-far = Added so far
nothing-from-elsewhere-yet = Nothing from elsewhere yet.
what-is-wrong-is-withdrawn-and-added = What is wrong is withdrawn and added anew. It stays on the bench and no longer counts.
what-was-added = What was added
stage = Stage
what = What
source = Source
withdraw = Withdraw
why-the-reading-of-is-withdrawn = Why the reading of { $code } is withdrawn
why = why
against = { $scale }: { $grade }, against { $against }
by-eye = by eye, { $judged }
why-the-grade-of-is-withdrawn = Why the grade of { $code } is withdrawn

## elsewhere/preview.html

readings-to-be-added = Readings to be added · { $title }
readings-to-be-added-2 = Readings to be added
left-out = Left out:
no-piece-of-this-trial = no piece of this trial has the code { $unknown }.
arm = Arm
from = From
colour = Colour
numbers = Numbers
light-and-observer = Light and observer
who = who
not-said = not said
when-2 = when
with-what-2 = with what
repeatability-cielab-2 = repeatability, CIELAB
add-these-readings = Add these readings
leave-it = Leave it

## pages/elsewhere/grade.rs

choose-the-piece-that-was-judged = Choose the piece that was judged.
give-the-number-of-rounds-the-piece = Give the number of rounds the piece had been through as a whole number; 0 is before the first.
choose-what-it-was-judged-against = Choose what it was judged against.

## pages/elsewhere/preview.rs

lab-values = Lab values

## pages/elsewhere/sheet.rs

the-readings-came-back-broken-go-back = The readings came back broken. Go back and send the file again.
give-the-number-of-rounds-the-pieces = Give the number of rounds the pieces had been through as a whole number; 0 is before the first.
give-the-repeatability-as-a-number-such = Give the repeatability as a number, such as { $usual_repeatability_de }.
choose-a-file-or-type-the-values = Choose a file, or type the values.
no-sample-has-the-code = No sample has the code of a piece of this trial. The table names { $collect }; the pieces are { $collect2 }. Write the pieces’ codes as names.

## pages/elsewhere/withdraw.rs

the-form-doesnt-say-what-to-withdraw = The form doesn’t say what to withdraw. Go back and try again.

## pages/elsewhere/new.rs

of = { $code }, { $role } of { $arm }
