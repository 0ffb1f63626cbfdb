## recipe/mod.rs

the-goods-weigh-0-g = the goods weigh 0 g, so there is nothing to dye; weigh them dry, an adult T-shirt is usually 130 to 200 g

## recipe/read.rs

there-is-no-water-give-water-liquor = there is no water: give [water] liquor_ratio = "20:1" or volume, or a [pot] to fill
give-either-the-liquor-ratio = give either the liquor ratio or the volume of the water, for one follows from the other
recipe = recipe
the-has-no-name-give = the { $kind } has no name; give it one
has-no-name-give = { $kind } { $k } has no name; give it one, or leave it out
the-goods-have-pieces-but-the-arms = the goods have { $n } pieces, but the arms have { $of_arms } in all
there-has-to-be-at-least = there has to be at least one piece, and not more than a million
give-the-goods-either-a-weight = give the goods either a weight, as in weight = "250 g", or typical = "T-shirt" and pieces
all-pieces = all pieces
arm-has-no-pieces = arm "{ $name }" has no pieces
the-pot-holds-nothing-its-capacity = the pot holds nothing; its capacity has to be above 0
a-headroom-of-cant-be-25 = a headroom of { $headroom_percent } % can't be; 25 % is usual, so that the bath doesn't boil over
a-heater-of-kw-cant = a heater of { $kw } kW can't be; a kitchen stove's plate has 1 to 3 kW
is-either-a-stock-solution = { $place } is either a stock solution or a liquid from a bottle; leave one out
has-no-water = { $place } has no water
is-for-no-arm-leave-it-out = { $place } is for no arm; leave it out
a-ph-of-cant-be-it-goes = a pH of { $ph } can't be; it goes from 0 to 14

## recipe/written.rs

the-recipe = the recipe
the-recipe-cant-be-written-as-toml = the recipe can't be written as TOML: { $e }

## recipe/read/prices.rs

the-price-is-in-another-currency = this price is in { $own } and the recipe's prices are in { $named }; write it in { $named } (sums of several currencies are not mixed, and nothing is converted)
the-price-names-no-currency = the price "{ $price }" names no currency while another one of the recipe is in { $named }; name it here too, or say once for the recipe what its prices are in
