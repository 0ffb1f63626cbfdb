## quantity/amount.rs

a-weight-and-a-volume-cant = a weight and a volume can't be added; write them in one kind of unit
a-weight-or-a-volume-is-wanted = a weight or a volume is wanted, not a time
n-0-or-more = 0 or more
amount = amount
bottles-2 = bottles

## quantity/cursor.rs

a-range-is-no-amount-write = a range is no amount; write one number
nothing-more-is-expected-here-leave = nothing more is expected here; leave it out

## quantity/dose.rs

say-of-what-owf-is-by-weight = say of what: "% owf" is by weight of dry goods, g/L is by litre of liquor
it-has-to-be-for-more = it has to be for more than 0
a-weight-of-goods-or-a-volume = a weight of goods or a volume of water is wanted here
a-solutions-strength-is-w-v-grams = a solution's strength is "% w/v", grams in 100 ml
a-strength-is-wanted-as-in-1 = a strength is wanted, as in 1 % w/v or 10 g/L

## quantity/liquor_ratio.rs

liquor-ratio = liquor ratio
one-side-of-a-liquor-ratio = one side of a liquor ratio has to be 1, as in 20:1
n-1-to-1000-and-is-usually-10 = 1 to 1000, and is usually 10 to 40

## quantity/mass.rs

lb-oz = { $pounds } lb { $ounces } oz
under-0-01-oz = under 0.01 oz
mass = mass

## quantity/money.rs

sum-of-money = sum of money
a-price-has-two-decimals-at-most = a price has two decimals at most, as in 8.50
this-price-is-too-high = this price is too high to be one
cents = cents
n-0-to-1e13 = 0 to 1e13

## quantity/number.rs

a-number-is-missing-as-in-250 = a number is missing, as in "250 g"
an-amount-cant-be-below-0 = an amount can't be below 0
a-number-is-wanted-here = a number is wanted here, as in 2.5 or 1/3
a-number-is-wanted-before = a number is wanted before "{ $word }", as in 2.5 or 1/3
a-fraction-after-a-whole-number = a fraction after a whole number has to be below 1, as in 2 1/2
a-digit-is-wanted-after-the-decimal = a digit is wanted after the decimal mark
is-a-thousand-to-some = { $whole },{ $places } is a thousand to some and one to others; write { $whole }{ $places } or { $whole }.{ $places }
a-number-has-one-decimal-mark-write = a number has one decimal mark; write thousands without one
a-whole-number-is-wanted-after = a whole number is wanted after the stroke, as in 1/3
a-fraction-cant-have-0-below = a fraction can't have 0 below the stroke
this-number-is-too-large = this number is too large to be one

## quantity/percent.rs

above-0-and-at-most-100 = above 0 and at most 100
strength-of-the-solution = strength of the solution
share = share

## quantity/term.rs

a-weight-is-wanted-here = a weight is wanted here, as in 250 g or 1/2 lb
a-volume-is-wanted-here = a volume is wanted here, as in 1.5 L, 1/3 cup or 8 fl oz
a-time-is-wanted-here = a time is wanted here, as in 20 min or 1 h

## quantity/unit.rs

say-c-or-f = say °C or °F
measures-are-meant-level-leave-the-word = measures are meant level; leave the word out, and weigh what was heaped
ounce-or-oz-is-wanted-after-fluid = "ounce" or "oz" is wanted after "fluid"
a-percentage-is-not-wanted-here-write = a percentage is not wanted here; write an amount, as in 250 g
a-unit-is-missing-as-in-250 = a unit is missing, as in 250 g, 1.5 L or 1/3 cup
t-and-t-are-easily-mixed-up = T and t are easily mixed up; write tbsp or tsp
write-cup-or-c-for-a-temperature = write cup, or °C for a temperature
a-has-no-fixed-size-weigh = a { $s } has no fixed size; weigh it or use a spoon
this-measure-is-either-us-or-imperial = this measure is either US or imperial; say which, as in "US pint"
only-a-cup-has-a-size = only a cup has a size on US labels; write "label cup"
is-no-unit-known-here-use-g = "{ $word }" is no unit known here; use g, kg, oz, lb, ml, L, tsp, tbsp, cup, fl oz, pint, quart, gallon or bottle

## quantity/amount.rs

bottles = { $figure ->
    [one] 1 bottle
   *[other] { $figure } bottles
  }

## quantity/volume.rs

us-gal = US gal
us-fl-oz = US fl oz
us-tsp = US tsp
volume = volume

## quantity/celsius.rs

temperature = temperature
n-0-to-140-c = 0 to 140 °C

## quantity/minutes.rs

time = time

## quantity/price.rs

say-for-how-much-as-in-8 = say for how much, as in "8.50 per 250 g"
a-price-has-to-be-for-more = a price has to be for more than 0
a-price-names-its-currency-once = a price names its currency once, as in "EUR 8.50 per 250 g"
several-currencies-share-this-sign = several currencies share the sign { $sign }; write the code, as in { $first } or { $second }, before or after the sum
this-sign-is-not-known = the sign { $sign } is not known here; write the currency's code, as in EUR or USD
