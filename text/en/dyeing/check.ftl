## check/helpers.rs

is-a-name2-and-a-name3 = "{ $name }" is a { $name2 }, and a { $name3 } is usually dyed without one.
for-owf-of-dye = { " " }for { $d } % owf of dye
of-is-usual = { $amount } { $unit } of { $material } is usual{ $depth }
there-is-no-in-the-bath = There is no { $name } in the bath: { $why }; { $helper }.
the-does-the-work = The { $name } does the work of { $found } { $unit } of { $material }, which is very { $much }: { $helper }, for { $why }.
salt = salt
alkali = alkali
acid = acid
reducing-agent = reducing agent
mordant = mordant
to = { $low } to { $high }
little = little
much = much

## check/mod.rs

goods-that-cant-move-freely-dye-unevenly = goods that can't move freely dye unevenly
more-dye-stays-in-the-water = more dye stays in the water and the shade comes out paler
the-liquor-ratio-is-to-is-usual = The liquor ratio is { $ratio }; { $low } to { $high } is usual for a { $name }: { $what }.
no-class-of-the-table-dyes = no class of the table dyes it
is-usually-dyed = { $fibre } is usually dyed with { $others }
a-doesnt-dye-it-dyes = A { $name } doesn't dye { $fibre }{ $new }; it dyes { $fibres }, and { $instead }.
the-recipe-has-no-dye-add = The recipe has no dye; add a [[dye]] with its name and amount.
the-dyes-make-owf-which-cant = The dyes make { $all } % owf, which can't be meant: { $pale } to { $deep } % owf is usual for a { $of }, and what the fibre can't hold washes out.
the-dyes-make-owf-to-owf = The dyes make { $all } % owf; { $pale } to { $deep } % owf is usual for a { $of }, and what the fibre can't hold washes out and bleeds.
the-dyes-make-owf-below-the-owf = The dyes make { $all } % owf, below the { $pale } % owf that is usual for a pale shade of a { $of }.
the-strength-of-is-unknown = The strength of "{ $name }" is unknown, so its depth of shade is too; use one bottle for all arms, and note its lot.
the-label-of-asks-for-which-cant = The label of "{ $name }" asks for { $label }, which can't be set beside { $done }: write both by weight of goods, or both by volume of water.
at-is-than-the-labels = "{ $name }" at { $done } is { $way } than the label's { $label } by a factor of { $by }; that is a departure, and belongs beside the result.
or = { " " }or{ " " }
weaker = weaker
stronger = stronger

## check/process.rs

is-too-hot-for-which-bears-about = { $hottest_of_all } is too hot for { $name }, which bears about { $limit_c }: { $above }.
is-above-the-boil-an-open-pot = { $hottest } is above the boil: an open pot doesn't get there, and a pressure cooker is not for dyeing; it takes a dyeing machine. At the boil only pale shades come out.
cooler-than-that-less-dye-is-taken = cooler than that, less dye is taken up or bound
hotter-than-that-dye-comes-off-again = hotter than that, dye comes off again or is spent in the water
the-bath-is-held-at-is-usual = The bath is held at { $hold }; { $usual } is usual for a { $name }: { $what }.
the-last-stage-is-min-is-usual = The last stage is { $time }; { $usual } min is usual for a { $name }.
the-bath-is-at-ph-ph = The bath is at pH { $ph }; pH { $low } to { $high } is usual for a { $name }.

## check/mod.rs

of-these-goods-which-stays = , { $percent } % of these goods, which stays as it is
the-weight-is-a-guess-from-typical-2 = The weight is a guess from { $pieces } typical { $name }, { $shown } to { $shown2 }: weigh them dry, for every amount by weight goes with it.

## check/process.rs

a-heater-of-kw-brings-2 = A heater of { $kw } kW brings { $shown } from { $from_c } to { $to_c } in about { $rise } min, not in the { $raising_min } min of the programme; the times on the sheet will slip.
