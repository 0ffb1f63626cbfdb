### What is told of the classes of dye in crates/dyeing/data/classes.toml, looked up by the class's key.
### KEY: its name. KEY-about: what it is good for. KEY-wash and KEY-light: how well it lasts. KEY-salt and other
### helpers: why it is there, as the end of a sentence. KEY-stage-2-add: how what goes in is stirred in, after a
### colon. KEY-stage-2-rise, -hold: what to do while going to the stage's temperature, and while staying there;
### -rest: before that, where something went in. KEY-wash-off-1: a rinse or a wash.
### KEY-after-…: an after-treatment that is met, and what it is worth.

## direct

direct = direct dye
direct-about = Dyes cellulose from a salted, neutral, hot bath; simple, with poor to moderate fastness to washing.
direct-wash = poor to moderate
direct-light = varies widely, poor to very good
direct-salt = salt drives direct dye from the water onto the fibre
direct-alkali = a little soda keeps direct dye level
direct-stage-1-hold = Move the goods without pause, so that they take up dye evenly.
direct-stage-2-rise = Go slowly and keep the goods moving; most dye is taken up on the way.
direct-stage-2-hold = Turn the goods now and then.
direct-stage-3-add = a third now, and the other two thirds a few minutes apart; lift the goods out each time.
direct-stage-3-rest = Add the other two thirds a few minutes apart.
direct-stage-3-hold = Turn the goods now and then.
direct-wash-off-1 = Rinse in lukewarm, then in cold water until it runs clear; hot water takes direct dye off.
direct-after-fixative = A cationic fixative raises fastness to washing by about half a grade to a grade and a half of staining; it lowers fastness to light and shifts the hue somewhat.
direct-after-copper = Copper salts raise fastness to light of dyes made for them; they change the shade, and the bath must not go down every drain.

## reactive-cold

reactive-cold = cold reactive dye
reactive-cold-about = Binds to cellulose for good in soda at room temperature; washes well once loose dye is off.
reactive-cold-wash = good to very good after hot washing-off
reactive-cold-light = moderate to good
reactive-cold-salt = salt drives reactive dye onto the fibre before the soda binds it
reactive-cold-alkali = without alkali a reactive dye doesn't bind to the fibre and washes out
reactive-cold-stage-1-hold = Move the goods without pause, so that they take up dye evenly.
reactive-cold-stage-2-add = a third now, and the other two thirds five minutes apart; lift the goods out each time.
reactive-cold-stage-2-rest = Add the other two thirds five minutes apart.
reactive-cold-stage-2-hold = Keep the goods moving.
reactive-cold-stage-3-add = dissolve it first, lift the goods out, pour it in slowly while you stir, and put them back.
reactive-cold-stage-3-hold = Turn the goods often in the first quarter of an hour, then now and then.
reactive-cold-wash-off-1 = Rinse cold until salt and soda are out.
reactive-cold-wash-off-2 = Rinse warm.
reactive-cold-wash-off-3 = Soap hot, and again until the water stays clear.
reactive-cold-after-bleeding = Bleeding is usually loose, spent dye that was not washed off: wash hot again before any fixative.
reactive-cold-after-fixative = A cationic fixative on badly washed goods hides the fault until it wears off.

## reactive-warm

reactive-warm = warm reactive dye
reactive-warm-about = Binds to cellulose for good in soda at about 60 °C; washes well once loose dye is off.
reactive-warm-wash = good to very good after hot washing-off
reactive-warm-light = moderate to good
reactive-warm-salt = salt drives reactive dye onto the fibre before the soda binds it
reactive-warm-alkali = without alkali a reactive dye doesn't bind to the fibre and washes out
reactive-warm-stage-1-hold = Move the goods without pause, so that they take up dye evenly.
reactive-warm-stage-2-add = a third now, and the other two thirds five minutes apart; lift the goods out each time.
reactive-warm-stage-2-rest = Add the other two thirds five minutes apart.
reactive-warm-stage-2-hold = Keep the goods moving.
reactive-warm-stage-3-rise = Go slowly, and keep the goods moving.
reactive-warm-stage-3-hold = Turn the goods now and then, until the heat has gone through them.
reactive-warm-stage-4-add = dissolve it first, lift the goods out, pour it in slowly while you stir, and put them back.
reactive-warm-stage-4-hold = Turn the goods often in the first quarter of an hour, then now and then.
reactive-warm-wash-off-1 = Rinse cold until salt and soda are out.
reactive-warm-wash-off-2 = Rinse warm.
reactive-warm-wash-off-3 = Soap hot, and again until the water stays clear.
reactive-warm-after-bleeding = Bleeding is usually loose, spent dye that was not washed off: wash hot again before any fixative.

## acid-levelling

acid-levelling = levelling acid dye
acid-levelling-about = Dyes wool, silk and nylon evenly from a strongly acid bath; bright, with poor to moderate fastness to washing.
acid-levelling-wash = poor to moderate
acid-levelling-light = fair to good
acid-levelling-salt = Glauber's salt holds levelling dyes back, so that they go on evenly
acid-levelling-acid = without acid the fibre takes up little acid dye
acid-levelling-stage-1-hold = Move the goods gently; wool felts where it is rubbed.
acid-levelling-stage-2-rise = Go slowly.
acid-levelling-stage-2-hold = Keep it just below bubbling, and move the goods gently now and then.
acid-levelling-wash-off-1 = Let the goods cool in the bath, then rinse lukewarm until the water runs clear.
acid-levelling-after-syntan = An after-treatment with a syntan is usual on nylon; on wool a faster class of dye serves better.

## acid-milling

acid-milling = milling acid dye
acid-milling-about = Dyes wool, silk and nylon from a nearly neutral bath; needs a slow rise, with moderate to good fastness to washing.
acid-milling-wash = moderate to good
acid-milling-light = good
acid-milling-acid = without some acid the fibre takes up little acid dye
acid-milling-stage-1-hold = Move the goods gently.
acid-milling-stage-2-add = half of it may wait until the bath is hot.
acid-milling-stage-2-rise = Go slowly, for these dyes don't even out later.
acid-milling-stage-2-hold = Keep it just below bubbling, and move the goods gently now and then.
acid-milling-wash-off-1 = Let the goods cool in the bath, then rinse lukewarm until the water runs clear.

## all-purpose

all-purpose = all-purpose blend of direct and acid dyes
all-purpose-about = Holds direct dye for cellulose and acid dye for wool, silk and nylon; half of it stays in the water on any one of them.
all-purpose-wash = poor to moderate
all-purpose-light = moderate
all-purpose-salt = salt drives the direct dye in it onto cellulose
all-purpose-acid = acid drives the acid dye in it onto wool, silk and nylon
all-purpose-stage-1-add = stir well before the goods go in.
all-purpose-stage-1-hold = Move the goods without pause.
all-purpose-stage-2-rise = Keep stirring.
all-purpose-stage-2-hold = Simmer, stirring all the time; longer gives a deeper shade.
all-purpose-wash-off-1 = Rinse warm, then cooler until the water runs clear.
all-purpose-after-fixative = A cationic fixative binds the direct dye in it: less bleeding, somewhat lower fastness to light.
all-purpose-after-vinegar = Vinegar or salt in the rinse doesn't set any dye.

## disperse

disperse = disperse dye
disperse-about = Dyes polyester under pressure at 125 to 130 °C, acetate and nylon below the boil.
disperse-wash = good to very good when cleared
disperse-light = good
disperse-acid = disperse dyes keep their shade at pH 5
disperse-stage-1-add = pour the dye through a cloth, and stir until it is well dispersed.
disperse-stage-1-hold = Keep the goods moving.
disperse-stage-2-rise = In a closed machine built for it.
disperse-stage-2-hold = In a closed machine built for it.
disperse-wash-off-1 = Rinse hot.
disperse-wash-off-2 = Wash with detergent.
disperse-after-clearing = Deep shades on polyester are cleared in caustic soda and hydrosulphite at 70 to 80 °C, in a machine.

## vat

vat = vat dye
vat-about = Made soluble by caustic and a reducing agent, turned back in the fibre by air; the fastest dye for cellulose.
vat-wash = very good
vat-light = very good
vat-alkali = a vat dye dissolves only in a caustic, reduced bath
vat-reducer = without a reducing agent a vat dye stays undissolved
vat-salt = some vat dyes need salt to leave the water
vat-stage-1-add = keep air out.
vat-stage-1-hold = Keep air out, and wait until the vat has changed colour and is clear. Then put the wet goods in.
vat-stage-2-add = gently, so that no air gets in.
vat-stage-2-hold = Keep the goods below the surface and move them gently.
vat-wash-off-1 = Rinse cold and hang in air until the colour has turned.
vat-wash-off-2 = Soap at a simmer; the shade becomes its own only now.

## indigo

indigo = indigo in a reduced vat
indigo-about = Short dips in a warm reduced vat with air between them; each dip deepens the blue.
indigo-wash = good, rubs off when dips were hasty
indigo-light = good
indigo-alkali = indigo dissolves only in an alkaline, reduced bath
indigo-reducer = without a reducing agent indigo stays undissolved
indigo-stage-1-add = keep air out.
indigo-stage-1-hold = Leave the vat covered; it is ready when it is clear and yellow-green below a coppery skin.
indigo-stage-2-hold = Dip wetted goods for one to five minutes without dripping, hang them in air for ten, and repeat.
indigo-wash-off-1 = Hang in air until nothing green is left.
indigo-wash-off-2 = Rinse cold with a little vinegar, then wash with mild soap.

## natural

natural = natural dye on a mordant
natural-about = Plants and insects on alum, by weight of dyestuff to weight of fibre; each has ways of its own.
natural-wash = poor to good, by dyestuff
natural-light = poor to good, by dyestuff
natural-mordant = most natural dyes hold poorly without a mordant
natural-stage-1-add = then put the wet goods in.
natural-stage-1-rise = Go slowly.
natural-stage-1-hold = Keep below a simmer and turn the goods now and then; then lift them, and use a fresh bath for the dye.
natural-stage-2-hold = Keep below a simmer, and let the goods cool in the bath.
natural-wash-off-1 = Rinse lukewarm, then wash with mild soap.
natural-after-iron = A dip in iron darkens and dulls; it is a metal mordant, and weakens protein fibres.
