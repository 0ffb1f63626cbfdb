## rinse/_reading.html

how-much-water = How much water
n-5-l-1-1-2-gallons = 5 L, 1 1/2 gallons
looks-like-the-step = Looks like the step
n-1-50-1-40-to-1-60 = 1:50, 1:40 to 1:60
or-absorbance = or absorbance
or-dye-by-litre = or dye by litre
n-38-9-mg-l = 38.9 mg/L
sample-diluted-how-sure = Sample diluted, how sure
sample-diluted-before = Sample diluted before
strength-give-or-take = Strength, give or take
volume-give-or-take = Volume, give or take

## rinse/show.html

where-the-dye-went-woadstone = Where the dye went · { $title } · Woadstone
where-you = Where you are
recipes = Recipes
where-the-dye-went = Where the dye went
read-the-spent-bath-and-every-rinse = Read the spent bath and every rinse: what is missing from the waters is on the goods.
the-bath-began = The bath began with
of-dye = { $dye } of dye
dye-of-unknown-strength = dye of unknown strength
in-what = in { $liquor }
for-what = for
as-data = As data
the-balance = The balance
it-doesnt-fit = It doesn’t fit.
look-at = Look at this.
shares-of-the-dye-drawn = Shares of the dye, drawn
a-bar-for-each-water = A bar for each water and one for the goods, which is by difference.
shares-of-the-dye-as-a-table = Shares of the dye, as a table
where-what = Where
share-of-the-dye-95 = Share of the dye, 95 %
dye-g = Dye, g
water = Water
how-strong = How strong
put-in = Put in
to = { $middle } ({ $low } to { $high })
not-known = not known
washed-out = Washed out
all-rinses = all rinses
on-the-goods = On the goods
what-is-missing = what is missing
a-rinse-is-clear-below = A rinse is clear below, % of the dye
count-anew = Count anew
readings = Readings
none-yet-begin-with-the-spent-bath = None yet. Begin with the spent bath, after the goods are out.
corrected = (corrected)
correct = Correct
keep-the-correction = Keep the correction
take-it-back = Take it back
add-a-reading = Add a reading
of-which-water = Of which water
rinse = rinse { $next_rinse }
the-spent-bath = the spent bath
add-the-reading = Add the reading
how-to-read-a-water = How to read a water
keep-a-jar-of-the-bath-before = Keep a jar of the bath before the goods go in, when all the dye is in it.
make-a-ladder-of-it-in-like = Make a ladder of it in like jars, each half as strong as the one before: 1:2, 1:4, 1:8 and so on to about 1:1000. 1:50 is one part of the bath in fifty parts of the whole, 20 ml made up to a litre.
of-the-spent-bath-and-of-every = Of the spent bath and of every rinse note the volume, and the step that a jar of it looks like: by eye against white beside a window, or on one photo with the ladder. Between two steps, write “1:40 to 1:60”; paler than the last, “weaker than 1:1000”.
with-several-pots-give-the-volumes = With several pots, give the volumes of all of them together.
a-step-is-taken-to-be-right = A step is taken to be right to half a doubling, a volume to 5 %, a stated concentration to 10 % (common practice, no source), unless you say otherwise. Jars of dye are no food: label them, keep them from children, and follow the safety data sheet and local rules for the drain.
with-a-photometer-standards = With a photometer: standards
standards-of-known-concentration = Standards of known concentration
a-line-for-each-three-at-least = A line for each, three at least, as in 2 mg/L = 0.083 or 1:100 = 0.21. Plain water is 0 mg/L. Same water, soap and soda as in the samples.
keep-the-standards = Keep the standards
take-them-back = Take them back
everything-that-was-noted-with = Everything that was noted, with corrections

## pages/rinse/draft.rs

is-no-absorbance-give-numbers-such = “{ $word }” is no absorbance. Give numbers, such as 0.275, with a space between several.

## pages/rinse/show.rs

give-a-share-of-the-dye = Give a share of the dye in percent, above 0 and below 100, such as 0.1.
spent-bath = Spent bath
looks-like = looks like{ " " }
sample-diluted = sample diluted{ " " }
strength-give-or-take-2 = strength give or take{ " " }
volume-give-or-take-2 = volume give or take{ " " }
spent-bath-2 = spent bath: { $reading }
rinse-2 = rinse: { $reading }
standards = standards: { $standards }
taken-back = taken back
instead-of-note = , instead of note { $of }
absorbance-before = absorbance{ " " }
rinse-numbered = Rinse { $k }
