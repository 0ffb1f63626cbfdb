## run_sheet/bath.rs

to-each-bath = { " " }({ $e } to each bath)
stir-in = Stir in { $list }.
stir-in-so = Stir in { $list }: { $how }
share-it-over-the-baths-by-weight = { " " }Share it over the baths by weight of goods.
then-put-the-wet-goods = { " " }Then put the wet goods in.
raise-to = Raise to { $to_c }
cool-to = Cool to { $to_c }
from-to = From { $from_c } to { $to_c }.
keep-at = Keep at { $to_c }.
hold-at = Hold at { $to_c }
heat-off-let-the-bath-cool = Heat off; let the bath cool to { $cool_to_c } before the goods come out.
cool-to-2 = Cool to { $cool_to_c }
add = Add { $join }

## run_sheet/finish.rs

all-arms-alike = { $how }{ $arms ->
    [1] {""}
   *[other] { " " }All arms alike.
  }
after-treat = After-treat with { $name }
plain-water-same-ratio-for-moved = Plain water, same ratio, { $temperature } for { $time }, moved the same way, in a vessel of its own: what the after-treated arms went through without the agent.
matching-soak = Matching soak
rinse-until-the-water-runs-clear = Rinse until the water runs clear{ $arms ->
    [1] {""}
   *[other] ; all arms alike, arms apart
  }.
dry-the-same-way-out = Dry { $n } the same way, out of the sun{ $arms ->
    [1] {""}
   *[other] , arms apart
  }; look at them only when they are quite dry, for wet cloth looks darker.
wash = Wash
rinse = Rinse
dry = Dry

## run_sheet/prepare.rs

soak-the-goods = Soak the goods
and-set-out = , and set out: { $list }
wet-powders-to-a-paste-then-dissolve = { "." } Wet powders to a paste, then dissolve them in some hot water of the bath.
share-all-of-it-over-baths = { " " }Share all of it over { $count } baths by weight of goods.
weigh-and-dissolve = Weigh and dissolve

## run_sheet/finish.rs

the-piece = the piece
all-pieces = all { $n } pieces

## run_sheet/bath.rs

## run_sheet/finish.rs

in-shown2-of-water = { $shown } { $name } in { $shown2 } of water at { $temperature } for { $time } ({ $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }).

## run_sheet/prepare.rs

weigh-the-goods-dry-then-wet-out-2 = Weigh the goods dry, then wet { $shown } out in lukewarm water with a drop of detergent until no dry spot is left{ $arms ->
    [1] {""}
   *[other] ; all arms alike
  }.
read-the-data-sheets-measure-of-water-2 = Read the data sheets. Measure { $shown } of water for a bath of { $shown2 }
read-the-data-sheets-measure-all-of-the-water = Read the data sheets. Measure { $shown } of water
