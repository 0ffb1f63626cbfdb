## command/bath.rs

is-not-text-in-utf-8 = { $display } is not text in UTF-8
a-guess-not-weighed = { " " }(a guess, not weighed)
look-at-this-first = Look at this first
from-the-sample-to-this-lot = From the sample to this lot
to-each-bath = { $each } to each bath
until-done = until done
min = { $m } min
no-currency-named = no currency named

## command/board.rs

a-boards-corner-codes-carry-a-trials = a board's corner codes carry a trial's short name of a-z, 0-9 and hyphens, 60 characters at most; give that, or leave --trial out

## command/decide.rs

no-interval = no interval

## command/demo.rs

photographing = photographing "{ $arm }" { $stage } …{ " " }

## command/grade_by_eye.rs

there-is-no-piece-in-this-trial = there is no piece "{ $code }" in this trial; its pieces are { $codes }

## command/mod.rs

cant-be-opened = { $display } can't be opened: { $e }
cant-be-written = { $display } can't be written: { $e }

## command/plan.rs

this-is-no-text-in-utf-8 = { $name }: this is no text in UTF-8, so it can't be a plan.
compared-with = , compared with
would-show = { "  " }would show
then = , then{ " " }

## command/power.rs

pieces-in-each-arm-are-more = { $pieces } pieces in each arm are more than any trial needs; give { $most_pieces } at most.
a-trial-compares-2-to-50-arms = A trial compares 2 to 50 arms.
one-piece-tells-nothing-of-how-much = One piece tells nothing of how much equal pieces differ: give each arm 2 at least.
the-margin-has-to-be-above-0 = The margin has to be above 0.
equal-pieces-never-read-alike = Equal pieces never read alike to the last digit: the standard deviation has to be above 0.
each-against-a-control-held-to-account = each against a control, held to account together
every-pair-held-to-account-together = every pair, held to account together
out-of-reach = out of reach

## command/publish.rs

there-is-no-trial-on-it-yet = there is no trial on it yet
its-trials = its trials are { $known }
there-is-no-trial-on-this-bench = there is no trial "{ $slug }" on this bench; { $known }

## command/serve.rs

cant-start-the-servers-threads = can't start the server's threads
port-cant-be-used-is-woadstone-running = port { $port } can't be used ({ $e }); is Woadstone running already? Try --port 0
the-server-stopped = the server stopped

## command/setup_check.rs

within-a-photo = within a photo
from-photo-to-photo = from photo to photo

## command/bath/balance.rs

of-unknown-weight = of unknown weight
washed-out = washed out
on-the-goods = on the goods

## command/read/grey.rs

a-grey-card-is-marked = a grey card is marked on one photo: give one photo at a time

## command/read/mod.rs

is-not-a-list-of-areas-like = { $display } is not a list of areas like [{ "{" }"id":"P1","polygon":[[x,y],[x,y],[x,y]]{ "}" }]: { $e }

## command/read/photos.rs

the-folder-holds-no-photo-that-ends = The folder { $display } holds no photo that ends in .jpg, .jpeg or .png.
