## plan/baths.rs

there-is-neither-water-nor-a-pot = there is neither water nor a pot to fill
number-of-baths = number of baths
at-most-10-000-take-a-larger = at most 10 000; take a larger pot
that-is-more-baths = { " " }That is more baths than the { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }, so the larger pot is the only way.
pieces-of-different-baths-differ-by-more = { " " }Pieces of different baths differ by more than the dye: spread each arm over all baths.

## plan/line.rs

a-weight-of-dye-cant-be-taken = a weight of dye can't be taken from a liquid of unknown strength; write the label's proportion, as in "half a bottle to a pound", or its strength
its-strength-is-unknown-so-the-depth = Its strength is unknown, so the depth is too; another bottle may differ.
dye-powders-lie-at-very-different = Dye powders lie at very different densities: weigh it instead.
about = { $value }, about { $typical }
what-is-left-in-the-bath = what is left in the bath ({ $there }) has to be in the same kind of unit as what is taken ({ $wanted })
the-bath-holds-already-more = The bath holds { $there } already, more than the { $wanted } that is wanted: expect a deeper shade.
of-is-in-the-bath-already = { $there } of { $wanted } is in the bath already.

## plan/uptake.rs

at-the-goods-take-up-about = At { $ratio } the goods take up about { $exhaustion_percent } to { $exhaustion_percent2 } % of the dye, and { $fixation_percent } to { $fixation_percent2 } % stays for good
figures-are-industrys-moved-to-this = { "." } Figures are industry's, moved to this ratio by a simple model; small open pots usually do worse.

## plan/baths.rs

of-liquor-doesnt-fit-into-a-pot-2 = { $shown } of liquor doesn't fit into a pot of { $shown2 }, which takes { $shown3 } with { $headroom_percent } % left free; dye in { $count } baths of { $shown4 } with { $shown5 } of goods each, or take a pot of { $shown6 } or more.

## plan/line.rs

it-may-weigh-weigh = it may weigh { $most }; weigh it to be sure
about-2 = { $us_customary }, about { $pounds }

## plan/uptake.rs

of-of-dye-shown2-to-shown3-goes = : of { $shown } of dye, { $shown2 } to { $shown3 } goes down the drain
