## material/_lot.html

came-on = Came on
how-much = How much
amount-2-bottles-12-pieces = { $amount }, 2 bottles, 12 pieces
price = Price
from-whom = From whom
lot-number-notes = Lot number, notes

## material/list.html

materials-woadstone = Materials · Woadstone
materials = Materials
what-stands-on-your-shelves-lots = What stands on your shelves: lots with what they cost and what is left. A run takes what its recipe needs from materials of the same names.
the-shelves-are-empty-put-the-first = The shelves are empty. Put the first dye on them below, by the name that your recipes call it.
a-table = { $heading }, a table
name = Name
stock = Stock
lots = Lots
price-of-the-newest = Price of the newest
notes = Notes
put-something-on-the-shelf = Put something on the shelf
as-your-recipes-call = As your recipes call it, so that runs find it.
it-is = It is
its-first-lot = Its first lot
leave-it-empty-if-none-has-come = Leave it empty if none has come yet.
put-it-on-the-shelf = Put it on the shelf
keep-dyes-and-chemicals-in-their-own = Keep dyes and chemicals in their own labelled containers, dry, locked away from children and apart from food; the safety data sheet of each says how.

## material/show.html

where-you = Where you are
it-is-2 = It is { $kind }.
find-it-in-the-notebook = Find it in the notebook
none-yet-put-the-first = None yet. Put the first one on the shelf below.
lot-of = Lot of { $received_on }: { $left }
came = { $amount } came
from = from { $supplier }
taken-back = taken back
by-the-run = by the run
take-back = Take back
of = { $what } of { $when }
used = Used
for-what = for
a-sample = a sample
note-it = Note it
it-is-used-up = It is used up
another-lot = Another lot

## pages/material/add.rs

give-the-day-on-which-it-came = Give the day on which it came, as in 2030-05-31.

## pages/material/list.rs

none-open = none open
n-1-open = 1 open
open = { $many } open
not-known = not known

## pages/material/mod.rs

no-lot-yet = no lot yet
used-up = used up
more-was-taken-than-there-was-count = more was taken than there was: count it
left = { $each } left

## pages/material/show.rs

more-was-taken-than-came-count = { $left }, more was taken than came: count it
left-2 = { $left } left
all-that-was-left = all that was left
dyes = Dyes
auxiliaries = Auxiliaries
fibre = Fibre
yarn = Yarn
garments-and-cloth = Garments and cloth
a-dye = a dye
salt-soda-acid-mordant-soap = salt, soda, acid, mordant, soap and the like
loose-fibre = loose fibre
yarn-2 = yarn
garments-or-cloth = garments or cloth
there-is-no-material-of-that-number = There is no material of that number on this bench. The list of materials shows those that are here.
