# What isn't there, or can't be understood.
recipe = recipe
chart = chart
session = session
judge = judge
grade = grade
covariance-of-a-photos-readings = covariance of a photo's readings
map-of-a-photo = map of a photo
covariance-of-a-part = covariance of a part
fit-of-a-chart = fit of a chart
set-up-check = set-up check
setting = setting
spectrum = spectrum
place-of-a-chart = place of a chart
marked-area = marked area
covariance-of-a-reading = covariance of a reading
note = note
session-of-judging = session of judging
person-who-judged = person who judged
order-of-judging = order of judging
photo = photo
material = material
trial = trial
plan = plan
reading = reading
run-sheet = run sheet
event-of-a-run = event of a run
run = run
note-of-something-taken = note of something taken
lot = lot
reading-of-a-water = reading of a water

## withdrawals.rs

reading-from-elsewhere = reading from elsewhere
grade-by-eye = grade by eye

## near/walk.rs

node-of-the-index-of-colours = node { $node } of the index of colours is cut short
