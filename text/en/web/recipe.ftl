## recipe/list.html

clocks-run = { $count ->
    [0] no clock runs
    [one] 1 clock runs
   *[other] { $count } clocks run
  }
runs = { $count ->
    [0] not run yet
    [one] 1 run
   *[other] { $count } runs
  }

## recipe/show.html

pieces = { $count ->
    [one] 1 piece
   *[other] { $count } pieces
  }
lot-in-baths = { $weight }, about { $pieces }: { $liquor } of liquor in { $baths ->
    [one] 1 bath
   *[other] { $baths } baths
  }.
its-runs-stay = Its runs stay.

## recipe/_amounts.html

to-each-bath = { $each } to each bath
weigh-it = weigh it
what = What
take = Take
in-the-kitchen = In the kitchen
because = Because

## recipe/edit.html

where-you = Where you are
recipes = Recipes
say-what-goes-in-you-get = Say what goes in. You get the baths in grams and in cups, what looks wrong, a run sheet with clocks, and what a piece costs.
or-start-from-an-example = Or start from an example:
goods = Goods
weigh-them-dry-every-amount-by-weight = Weigh them dry: every amount by weight goes with it. A typical weight is a guess and is marked as one.
or-guess-by-kind = Or guess, by kind
they-are-weighed = they are weighed
weight-as-youd-say-it-250-g = Weight as you’d say it: 250 g, 1 lb 4 oz. A blend: 60 % cotton, 40 % polyester.
arms-of-a-trial = Arms of a trial, if there is one
add-an-arm = Add an arm
class-of-dye = Class of dye
it-says-the-fibres-the-heat = It says the fibres, the heat, the salt and the time that are usual.
dyes = Dyes
how-much-2-owf-by-weight = How much: 2 % owf (by weight of goods), half a bottle to a pound, 30 g, 1/3 cup to a gallon.
dye = Dye { $row }
measured-as = Measured as
powder = powder
my-stock-solution = my stock solution
liquid-of-known-strength = liquid of known strength
bottle-of-unknown-strength = bottle of unknown strength
price-bottle-left-from-an-earlier-bath = Price, bottle, left from an earlier bath
add-a-dye = Add a dye
what-else-goes = What else goes in
salt-soda-vinegar-and-so-on-50 = Salt, soda, vinegar and so on: 50 g/L, 10 % owf, 2 ml/L, 1/3 cup to a gallon. Empty rows are left out.
addition = Addition { $row }
label-bottle-left-from-an-earlier-bath = Label, bottle, left from an earlier bath
add-another = Add another
water-and-pot = Water and pot
how-much-water = How much water
by-weight-of-goods-as-in-20 = by weight of goods, as in 20:1
so-much-as-in = so much, as in { $volume }
price-as-in = Price, as in { $price }
how-warm-as-in = How warm, as in { $heat }
hottest-as-in = Hottest, as in { $heat }
as-much-as-the-pot-takes = as much as the pot takes
after-treatments = After-treatments
arms-that-dont-get = Arms that don’t get one have a matching soak in plain water put on the run sheet.
after-treatment = After-treatment { $row }
add-an-after-treatment = Add an after-treatment
where-you-depart-from-what-is-usual = Where you depart from what is usual
empty-as-is-usual-for-the-class = Empty: as is usual for the class of dye.
kitchen-and-money = Kitchen and money
whose-cups-and-spoons = Whose cups and spoons
us = US
metric = metric
imperial = imperial
leave-it = Leave it
everything-can-also-be-written-as-text = Everything can also be written as text, on the recipe’s page.
the-form-writes-the-text-anew-remarks = The form writes the text anew: remarks in it stay in the earlier revision.
fibres-that-are-known = Fibres that are known: { $fibres }.
what-do-you-call = What do you call it?
as-you-will-look-for-it-later = As you will look for it later.
dry-weight-2 = Dry weight of all
pieces-3 = Pieces
fibre-or-blend = Fibre or blend
name-of-the-arm = Name of the arm
pieces-of-it-keepers-too = Pieces of it, keepers too
dye-2 = Dye
how-much = How much
strength-such-as-1 = Strength, such as 1 %
a-bottle-holds = A bottle holds
already-in-the-bath = Already in the bath
what-the-label-asks = What the label asks for
it-is-if-the-name-doesnt-say = It is (if the name doesn’t say)
ratio-or-volume = Ratio or volume
the-pot-holds-to-its-brim = The pot holds, to its brim
of-it-stays-free-25 = Of it stays free, % (25)
stove-kw = Stove, kW
product = Product
how-long-as-in-20-min = How long, as in 20 min
for-which-arms = For which arms (all)
its-water-as-the-dye-bath = Its water (as the dye bath)
price = Price
soak-before-as-in-30-min = Soak before, as in 30 min
last-stage-as-in-45-min = Last stage, as in 45 min
prices-are-in-as-in-eur = Prices are in, as in EUR

## recipe/list.html

recipes-woadstone = Recipes · Woadstone
recipes-and-runs = Recipes and runs
how-much-of-everything = How much of everything, and when?
write-down-what-goes-into-a-bath = Write down what goes into a bath. You get grams and cups, what looks wrong, clocks to dye by, and what a piece costs.
write-a-recipe = Write a recipe
or-start-from-an-invented-example = Or start from an invented example:
going-on = Going on
begun = { $clocks } · begun { $begun_at }
on-revision = { $class } on { $goods } · revision { $revisions } · { $runs }
for-a-plan = for a plan
for-what = for { $title }
runs-that-are-over = Runs that are over

## recipe/show.html

on-of-goods = { $class } on { $mass } of goods
a-guess = a guess
for-what-2 = For
you-are-looking-at-revision = You are looking at revision { $number }, which is not the newest.
see-the-newest = See the newest
go-back = Go back to this one
goods-dry = goods, dry
pieces-2 = { $count ->
    [one] piece
   *[other] pieces
  }
liquor = liquor
ratio = ratio
baths = { $count ->
    [one] bath
   *[other] baths
  }
call-this-run = Call this run
it-is-part = It is part of
no-trial = no trial
begin-a-run = Begin a run
change-it = Change it
print-the-run-sheet-a4 = Print the run sheet (A4)
print-it-on-letter = Print it on Letter
runs-2 = Runs:
going-on-2 = (going on)
look-at-this-first = Look at this first
nothing-unusual-found = Nothing unusual found for a { $class }.
the-dye-bath = The dye bath
of-liquor = { $baths } of liquor ({ $kitchen })
in-baths-of-with-of-goods = in { $count } baths of { $each_liquor } with { $each_goods } of goods each
what-goes-into-the-dye-bath = What goes into the dye bath
water = water
to-fill-up = to fill up
after-treatment-2 = After-treatment with { $name }
measures-are-level-where-a-kitchen = Measures are level. Where a kitchen measure is far off, weigh.
temperature = Temperature
plot-of-temperature-over-time = Plot of temperature over time
numbers-are-additions-the-table-says = Numbers are additions. The table says the same.
temperature-over-time = Temperature over time
after-min = After, min
addition-2 = Addition
before-you-begin = Before you begin
steps = Steps
at-min = at { $begins_min } min
for-min = for { $minutes } min
cost = Cost
no-prices-were-given-with-prices = No prices were given. With prices you see what a piece, an arm and each extra step costs.
cost-of-materials = Cost of materials
each-piece = Each piece
together = together
without-a-price-so-not-counted = Without a price, so not counted: { $unpriced }.
where-the-dye-goes = Where the dye goes
against-the-middle-of-the-usual-ratios = Against the middle of the usual ratios: { $pot }
left-in-the-spent-bath = Left in the spent bath, if it is to be used again:
usual-fastness-to-washing-to-light = { $about } Usual fastness: to washing { $wash }; to light { $light }.
for-another-weight-of-goods = For another weight of goods
dry-weight = Dry weight
work-it-out = Work it out
amounts-for-this-weight = Amounts for this weight
materials = Materials: { $cost }.
what-it = What it is for
plan-or-trial-whose-arms-it-dyes = Plan or trial whose arms it dyes
none = none
plan = Plan: { $name }
trial = Trial: { $name }
keep-this = Keep this
the-whole-recipe-as-text = The whole recipe as text
see-or-edit = See or edit it
recipe-text-toml = Recipe text (TOML)
everything-can-be-changed-here-what-cant = Everything can be changed here. What can’t be taken is said with its place.
woadstone-bath = woadstone bath
reads-the-same-text = reads the same text.
keep-this-text = Keep this text
the-same-worked-out-as-data = The same worked out, as data:
revisions = Revisions
nothing-is-lost-each-change = Nothing is lost: each change is a revision, and going back is one more. A run keeps the sheet that it began with.
shown-here = shown here
see-revision = See revision { $number }

## pages/recipe/amounts.rs

look-again = Look again
to-know = To know
wrong = Wrong
here = { $sentence } (Here: { $join }.)

## pages/recipe/create.rs

written-by-the-form = Written by the form

## pages/recipe/edit.rs

keep-as-a-new-revision = Keep as a new revision
changed-by-the-form = Changed by the form
change = Change { $name }

## pages/recipe/new.rs

bath-for = Bath for { $title }

## pages/recipe/print.rs

recipe-revision-day-and-name = Recipe revision { $number }. Day and name:

## pages/recipe/revise.rs

edited-as-text = Edited as text
back-to-revision = Back to revision { $number }

## pages/recipe/show.rs

add = add { $k }: { $what }
the-plan = the plan “{ $title }”
the-trial = the trial “{ $title }”
its-arms-arent-those = Its arms aren’t those of what it is for:
are-not-in-the-recipe = { " " }{ $missing } are not in the recipe.
are-only-in-the-recipe = { " " }{ $strange } are only in the recipe.
fine-where-arms-are-dyed-by-recipes = { " " }Fine where arms are dyed by recipes of their own; else give arms the same names.
to = { $name } { $shown } to { $shown2 }

## pages/recipe/draft/read.rs

say-how-much-water-such-as-20 = Say how much water, such as 20:1 or 5 L.
two-arms-have-this-name-give = Two arms have this name. Give each its own.
say-how-strong-it-is-such = Say how strong it is, such as 1 %. If nobody knows, choose a bottle of unknown strength.
give-a-number-such-as-or-leave = Give a number, such as { $example }, or leave it empty.
give-a-whole-number-such-as-5 = Give a whole number, such as 5.

## pages/recipe/new.rs

lot-of-2 = { $name }, lot of { $value }

## pages/recipe/show.rs

of-water-2 = { $shown } of water ({ $kitchen }), { $temperature }, { $time }, for { $arms }
there-is-no-recipe-of-that-name = There is no recipe of that name and revision on this bench. The list of recipes shows those that are here.

## pages/recipe/mod.rs

napkins-by-weight = Napkins by weight, from two stock solutions
shirts-by-the-label = Shirts by the label of a bottle, in two arms
a-silk-scarf = A silk scarf in a bath that is used again
