## kitchen.rs

under-1-8-weigh = under 1/8 { $one }: weigh it
it-may-hold-millilitres2-to-millilitres3 = it may hold { $millilitres } ({ $millilitres2 } to { $millilitres3 } %)
it-may-weigh-to-grams2 = it may weigh { $high } ({ $grams } to { $grams2 } %)
us-fl-oz = US fl oz
to = { $low } to { $high } { $unit }
us-gallon = US gallon
us-gallons = { $amount } { $count ->
    [one] US gallon
   *[other] US gallons
  }
cup = cup
cups = { $amount } { $count ->
    [one] cup
   *[other] cups
  }
metric-cup = metric cup
metric-cups = { $amount } { $count ->
    [one] metric cup
   *[other] metric cups
  }
imperial-gallon = imperial gallon
imperial-gallons = { $amount } { $count ->
    [one] imperial gallon
   *[other] imperial gallons
  }
imperial-pint = imperial pint
imperial-pints = { $amount } { $count ->
    [one] imperial pint
   *[other] imperial pints
  }
tablespoon = tbsp
tablespoons = { $amount } tbsp
teaspoon = tsp
teaspoons = { $amount } tsp
metric-tablespoon = metric tbsp
metric-tablespoons = { $amount } metric tbsp
metric-teaspoon = metric tsp
metric-teaspoons = { $amount } metric tsp
