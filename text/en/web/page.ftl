## _bin.html

this-lies-in-the-bin = This { $kind } lies in the bin.
take-this-back = Take this { $kind } back
move-this-to-the-bin = Move this { $kind } to the bin

## _parts.html

pale-and-deep-parts = Pale and deep parts
pale-and-deep-parts-by-stage = Pale and deep parts by stage
part = Part
not-in-two-parts = not in two parts
each-change-is-against-the-parts-own = Each change is against the part’s own start, CIEDE2000 with its 95 % interval. Verdicts compare whole pieces.

## _problem.html

this-cant-be-taken-yet = This can’t be taken yet.

## _way.html

the-way-through = The way through
this = this
a-what = a
trial = trial
next = Next:

## base.html

skip-to-the-content = Skip to the content
main = Main
ask-a-question = Ask a question
recipes = Recipes
search = Search
studio = Studio
measures-currency-days = Measures, currency, days
everything-stays-on-this-computer = Everything stays on this computer. Swatches on screen only approximate a colour: the numbers beside them are the result.
