## command/bath.rs

is-not-text-in-utf-8 = { $display } is not text in UTF-8
a-guess-not-weighed = { " " }(a guess, not weighed)
look-at-this-first = Look at this first
from-the-sample-to-this-lot = From the sample to this lot
to-each-bath = { $each } to each bath
until-done = until done
min = { $m } min
no-currency-named = no currency named
liquor-ratio = { $guess }, { $pieces }, liquor ratio { $ratio }
usual-fastness-to-washing-to-light = Usual fastness: to washing { $wash }; to light { $light }.
wrong = wrong
doubtful = doubtful
note-2 = note
dye-bath-of-liquor = Dye bath: { $metric } of liquor ({ $kitchen })
baths-of-with-of-goods = { $count } baths of { $each_liquor } with { $each_goods } of goods each
water-to-top-up = water to top up
after-treatment-for-of-water = After-treatment for { $join }: { $liquor } of water ({ $kitchen }), { $temperature }, { $time }
or = or { $measure }: { $off }
or-2 = or { $measure }
min-2 = { $minute } min  { $celsius }
add = add { $join }
run-sheet = Run sheet
cost = Cost, { $currency }
for-each = { $arm }: { $money } for { $pieces }, { $per_piece } each
without-a-price = without a price: { $join }
pieces = { $count ->
    [one] 1 piece
   *[other] { $count } pieces
  }
class-on-goods = { $class } on { $goods }
where-the-dye-goes = Where the dye goes
cautions = Cautions
temperature = Temperature
step-at = { $number }. at { $begins } min, { $time }: { $title }{ $arms }
together = together

## command/board.rs

a-boards-corner-codes-carry-a-trials = a board's corner codes carry a trial's short name of a-z, 0-9 and hyphens, 60 characters at most; give that, or leave --trial out

## command/decide.rs

no-interval = no interval
mean-grade-of-each-arm-judged = Mean grade of each arm, judged by eye (5 is none, 1 the most)
stage-pieces-judges = stage { $stage }  { $arm } { $grade }  { $scale }, { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }, { $judges ->
    [one] 1 judge
   *[other] { $judges } judges
  }
staining = staining
change = change
arms-against-each-other-judged-by-eye = Arms against each other, judged by eye
how-each-arm-fades-from-round = How each arm fades from round to round
change-of-each-arm-since-its-start = Change of each arm since its start (CIEDE2000, 95 % interval)
stage-grade-from-pieces = stage { $stage }  { $arm } { $de }  ({ $high })  grade { $fade_grade }  from { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }
arms-against-each-other = Arms against each other
to = { $low } to { $high }
stage-grades = stage { $stage }  { $a } / { $b }, { $scale }: { $difference } grades ({ $low } to { $high })  { $verdict }
stage-differs = stage { $stage }  { $a } / { $b }: { $difference } ({ $interval })  { $verdict }

## command/demo.rs

photographing = photographing "{ $arm }" { $stage } …{ " " }
an-invented-trial-no-such-napkins = An invented trial: no such napkins were dyed, and its photographs are rendered.
report = Report: { $report }
read-chart-missed = { $name } read ({ $model }, chart missed by { $loo_de00_median })
refused = { $name } refused: { $message }
waits = { $name } waits
readings-cielab-d65-10-95 = Readings (CIELAB, D65/10; ± 95 %)
round-l-a-b = { $code } round { $stage }  L* { $l } ±{ $sl }  a* { $a } ±{ $sa }  b* { $b } ±{ $sb }
the-margin-the-smallest-difference = The margin, the smallest difference that matters: { $margin } CIEDE2000.

## command/grade_by_eye.rs

there-is-no-piece-in-this-trial = there is no piece "{ $code }" in this trial; its pieces are { $codes }
added-of = added: { $scale } { $grade } of { $piece }

## command/mod.rs

cant-be-opened = { $display } can't be opened: { $e }
there-is-no-such-file = There is no file { $display }. Look at its name and at the folder it lies in.
cant-be-written = { $display } can't be written: { $e }
wrote = wrote { $path }

## command/plan.rs

this-is-no-text-in-utf-8 = { $name }: this is no text in UTF-8, so it can't be a plan.
compared-with = , compared with
would-show = { "  " }would show
then = , then{ " " }
pieces-keepers = { $name } { $pieces ->
    [one] 1 piece
   *[other] { $pieces } pieces
  }, { $keepers ->
    [one] 1 keeper
   *[other] { $keepers } keepers
  }{ $control }
how-often-it-is-shown-of-100 = How often it is shown, of 100 trials ({ $origin })
margin-grade-4-alike-by-chance = margin  grade 4  alike  by chance
the-margin-by-pieces-per-arm-weakest = The margin by pieces per arm, weakest pair: { $join }
no-finding-this-plan-can-answer = No finding: this plan can answer its question.
findings = Findings: { $findings }
mend = mend: { $label }
on-purpose = On purpose: { $sentence }
where-dye-can-travel = Where dye can travel
in-what = { $from } -> { $to } in { $through }{ $shows }
random-order-from-seed = Random order from seed { $seed }
piece-arm-blind-board-window-shares = piece        arm                          blind    board window  shares
margin-and-rounds = Margin: { $margin }. { $rounds ->
    [one] 1 round
   *[other] { $rounds } rounds
  }.

## command/power.rs

pieces-in-each-arm-are-more = { $pieces } pieces in each arm are more than any trial needs; give { $most_pieces } at most.
a-trial-compares-2-to-50-arms = A trial compares 2 to 50 arms.
one-piece-tells-nothing-of-how-much = One piece tells nothing of how much equal pieces differ: give each arm 2 at least.
the-margin-has-to-be-above-0 = The margin has to be above 0.
equal-pieces-never-read-alike = Equal pieces never read alike to the last digit: the standard deviation has to be above 0.
each-against-a-control-held-to-account = each against a control, held to account together
every-pair-held-to-account-together = every pair, held to account together
out-of-reach = out of reach
times-in-100-seeded-trials = { $what }: { $share } times in 100 ({ $runs } seeded trials)
pieces-per-arm-that-two-arms-need = Pieces per arm that two arms need
times-in-100-to-show-the-difference = { $power } times in 100: { $difference } to show the difference, { $alike } to show arms alike
arms-of-pieces = { $arms } arms of { $pieces } pieces, standard deviation { $sd }, margin { $margin }
a-difference-is-shown = a difference as large as the margin is shown    { $times } times in 100
arms-are-shown-alike = arms that don't differ are shown alike          { $times } times in 100

## command/publish.rs

there-is-no-trial-on-it-yet = there is no trial on it yet
its-trials = its trials are { $known }
there-is-no-trial-on-this-bench = there is no trial "{ $slug }" on this bench; { $known }
wrote-2 = wrote { $output }

## command/serve.rs

cant-start-the-servers-threads = can't start the server's threads
port-cant-be-used-is-woadstone-running = port { $port } can't be used ({ $e }); is Woadstone running already? Try --port 0
the-server-stopped = the server stopped
open-http-stop-with-ctrl-c = Open http://{ $address }/{ $path } (stop with Ctrl-C)

## command/setup_check.rs

within-a-photo = within a photo
from-photo-to-photo = from photo to photo
photos-pieces-readings-scatter-of-a = { $photos } photos, { $pieces } pieces, { $readings } readings. Scatter of a reading (SD, CIEDE2000, 95 % interval):
to-2 = { $what } { $sd }  ({ $low } to { $high })
where-it-comes = Where it comes from:
kept-on-the-bench = Kept on the bench as "{ $name }".
not-kept-name-name-keeps = Not kept; --name NAME keeps it on the bench.
smallest-difference-shown = Smallest difference shown four times in five (CIEDE2000):
# The heads of a table's columns, in two lines.
smallest-columns = pieces   two arms'   two arms on   one arm's change,   one arm's change,
smallest-columns-below = an arm   changes     one photo     with a keeper       without

## command/bath/balance.rs

of-unknown-weight = of unknown weight
washed-out = washed out
on-the-goods = on the goods
where-the-dye-went-share = Where the dye went (share of the dye put in, 95 % bounds)
put-in = put in

## command/read/grey.rs

a-grey-card-is-marked = a grey card is marked on one photo: give one photo at a time
a-grey-card-tells-how-pieces = A grey card tells how pieces of this photo differ, roughly; it tells no piece's colour. A 24-patch chart does.
note-3 = note: { $message }
to-to = { $a } to { $b }: { $de } ({ $low } to { $high })

## command/read/mod.rs

is-not-a-list-of-areas-like = { $display } is not a list of areas like [{ "{" }"id":"P1","polygon":[[x,y],[x,y],[x,y]]{ "}" }]: { $e }
photos-were-not-read = { $some } of { $count } photos were not read:

## command/read/photos.rs

the-folder-holds-no-photo-that-ends = The folder { $display } holds no photo that ends in .jpg, .jpeg or .png.

## command/add_readings.rs

nothing-was-added-this-was-a-dry = nothing was added: this was a dry run
added-to-stage = added: { $count }, to stage { $stage }
note = note: { $note }
left-out-no-piece-has-such = left out, no piece has such a code: { $join }

## command/grade.rs

change-in-colour = change in colour: grade { $grade } ({ $value } by the formula, dE_F { $d_ef }; ISO 105-A05)
staining-of-white = staining: grade { $grade } ({ $value } by the formula, dE_GS { $d_e_gs }; ISO 105-A04)

## command/read/text.rs

across-photos = across photos
piece-across-photos = { $piece } in { $from } to { $to }: { $difference } ({ $low } to { $high })
chart-read-with = chart read with { $model }; left out in turn, its patches are missed by { $median } (median) and { $p95 } (95 of 100), CIEDE2000
board-of-windows = board of { $windows } windows on { $paper }, { $codes } of its 4 corner codes read
window-is-empty = window { $number } is empty
window-has-a-tag-alone = window { $number } has the tag { $tag } and nothing that differs from the paper
not-read = not read
pale = pale
deep = deep
