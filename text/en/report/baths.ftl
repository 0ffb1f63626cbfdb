## baths.rs

a-guess-not-weighed = { " " }(a guess, not weighed)
not-dyed-yet = not dyed yet
dyed-once = dyed once
dyed-times = dyed { $runs } times
to-fill-up = to fill up
after-treatment = { $name }, after-treatment of { $arms } in { $liquor } at { $temperature } for { $time }
recipe-revision-on-of-liquor = Recipe revision { $revision }, { $followed }: { $class } on { $mass }{ $guess }, { $baths } of liquor, { $ratio }.
for-each-piece = { $arm }: { $per_piece } { $currency } for each piece.
without-a-price-so-not-counted = Without a price, so not counted: { $unpriced }.
