## baths.rs

a-guess-not-weighed = { " " }(a guess, not weighed)
not-dyed-yet = not dyed yet
dyed-once = dyed once
dyed-times = dyed { $runs } times
to-fill-up = to fill up
without-a-price-so-not-counted = Without a price, so not counted: { $unpriced }.
after-treatment-2 = { $name }, after-treatment of { $arms } in { $shown } at { $temperature } for { $time }
recipe-revision-on-of-liquor-2 = Recipe revision { $revision }, { $followed }: { $class } on { $mass }{ $guess }, { $shown } of liquor, { $ratio }.
for-each-piece-2 = { $arm }: { $sum } for each piece.
