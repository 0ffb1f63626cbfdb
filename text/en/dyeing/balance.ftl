## balance/mod.rs

there-are-readings-of-waters-1 = there are readings of { $count } waters; 1 to { $most_waters } are wanted

## balance/onward.rs

share-below-which-a-rinse-counts = share below which a rinse counts as clear
above-0-and-below-1 = above 0 and below 1

## balance/strength.rs

how-many-grams-of-dye-went-into = how many grams of dye went into the bath isn't known (a bottle of unknown strength), so grams per litre can't be set against it; compare jars with a dilution ladder of the bath instead, as in 1:50
sample-diluted = , sample diluted { $trim }
this-water-would-be-stronger = this water would be stronger than the bath at its start ({ $middle } times as strong); check the dilution and the unit
no-water-at-all-holds-no-dye = no water at all holds no dye; leave the reading out, or give its volume, as in 5 L
looks-like-2 = looks like { $trim }
an-absorbance-says-nothing-without = an absorbance says nothing without standards; give three or more of known concentration, as in 2 mg/L = 0.083
absorbance = absorbance { $mean }
stated-as = stated as { $trim }
say-how-strong-it-is-the-step = say how strong it is: the step of the ladder it looks like, an absorbance, or a concentration
say-how-strong = say how strong it is in one way only: the step of the ladder, an absorbance, or a concentration; another way is another reading
a-step-of-the-ladder-is-wanted = a step of the ladder is wanted here, as in 1:50, one part of the bath in fifty parts of the whole
a-dilution-is-one-part = a dilution is one part in the whole, so its second number is the larger, as in 1:50; 1:1 is undiluted
a-unit-is-wanted-here-mg-l = a unit is wanted here: mg/L, g/L, or a dilution of the bath as in 1:50
a-concentration-is-by-litre = a concentration is by litre, as in mg/L or g/L
a-spread-is-in-percent = a spread is in percent, as in 20 %
has-no-write-a-concentration = "{ $value }" has no =; write a concentration and its absorbance, as in 2 mg/L = 0.083
is-no-absorbance-write-a-number = "{ $absorbs }" is no absorbance; write a number, as in 2 mg/L = 0.083
an-absorbance-of-isnt-possible-measure = an absorbance of { $mean } isn't possible; measure the blank again, with the same water
the-absorbance-is-above = the absorbance { $mean } is above that of the strongest standard, { $most }; dilute the sample and say how far, or measure a stronger standard
the-absorbance-is-below = the absorbance { $mean } is below that of the weakest standard, { $least }; dilute the sample less, or add a weaker standard or plain water, 0 mg/L
spread = spread
n-0-to-900 = 0 to 900

## balance/words.rs

the-spent-bath-wasnt-read = The spent bath wasn't read, so what stayed on the goods isn't known; take a jar of it next time, after the goods are out.
the-sample-of-was-dark-above = The sample of { $name } was dark: above an absorbance of { $dark } readings are less sure than they look; dilute it.
check-volumes-dilutions-and-the-ladder = check volumes, dilutions and the ladder, and whether more dye went in than the recipe says
the-balance-doesnt-close-the-waters-hold = The balance doesn't close: the waters hold { $percent } of the dye put in, more than there was; { $mend }.
the-waters-seem-to-hold = The waters seem to hold { $percent } of the dye put in; the balance closes only because the readings are so unsure. As good as nothing seems to have stayed; if the cloth is dyed, { $mend }.
the = the { $name }
is-stronger-than-the-spent-bath-hot = { $name } is stronger than the spent bath. Hot soaping can do that to a bath that gave up nearly all its dye; otherwise jars or dilutions were mixed up.
the-goods-took-of-the-dye-out = The goods took { $percent } of the dye out of the bath; { $class }.
washed-out = { $rinses ->
    [one] 1 rinse
   *[other] { $rinses } rinses
  } washed out { $percent }.
of-the-dye = { "," } { $fixed } of { $dye }
what-is-missing-from-the-waters = What is missing from the waters is on the goods: { $percent }{ $grams }; { $class }.
of-what-the-goods-took-up-stayed = Of what the goods took up, { $percent } stayed through these rinses.
read-two-rinses-at-least = Read two rinses at least to be told what more of them would do.
the-to-usual = the { $low } to { $high } % usual for a { $class } at this liquor ratio
less-than = less than { $usual }
more-than = more than { $usual }
within = within { $usual }
perhaps-within-perhaps-not-the-readings = perhaps within { $usual }, perhaps not: the readings are too unsure to tell
the-last-rinse-held-less = The last rinse held less than { $below } of the dye: it was clear.
the-last-rinse-took-out-no-less = The last rinse took out no less than the one before, so there is no telling how many more it takes: dye still lets go of the cloth. Wash hotter, or with soap, as the class is washed off.
to-by-the-readings-spread = { " " }({ $least } to { $most } by the readings' spread)
at-least-by-the-readings-spread = { " " }({ $least } at least; by the readings' spread they may not get weaker at all)
all-rinses-to-come-would-take-out = { " " }All rinses to come would take out another { $share } of the dye.
the-last-rinse-took-out = The last rinse took out { $ratio } of what the one before did. Going on so, { $more ->
    [one] 1 more rinse
   *[other] { $more } more rinses
  }{ $range } would bring a rinse below { $below } of the dye; cloth lets go more and more slowly, so count on more.{ $still }

## balance/written.rs

the-readings = the readings

## balance/words.rs

of-the-liquor-is-missing-2 = { $shown } of the liquor is missing from the spent bath. What the goods carried along of it, up to { $share } of the dye, counts as washed out, so the bath seems to have given up that much more; what is fixed doesn't change.

## balance/estimate.rs

to = { $middle } % ({ $low } to { $high } %)
