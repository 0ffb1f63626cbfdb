## studio/show.html

charts-of-your-own = { $count ->
    [0] The published values of the 24 patches serve; add your own chart’s if you have them.
   *[other] { $count } of your own.
  }
things-binned = { $count ->
    [0] Empty.
    [one] 1 thing, to be taken back at any time.
   *[other] { $count } things, to be taken back at any time.
  }
studio-woadstone = Studio · Woadstone
studio = Studio
what-serves-all-your-trials = What serves all your trials.
materials = Materials
dyes-auxiliaries-fibre-and-garments-lots = Dyes, auxiliaries, fibre and garments: lots, prices, what is left.
set-up-check = Set-up check
last = Last: { $name }, { $value }.
not-done-yet-how-small-a-difference = Not done yet: how small a difference can your phone, light and table prove?
charts = Charts
board-for-photos-6-windows-a4 = Board for photos, 6 windows, A4
a-sheet-to-print-photos = A sheet to print: photos of it are read with no marking. Boards with a trial’s own places are on its page.
phone = Phone
photos-and-runs-on-your-phone-over = Photos and runs on your phone, over your own network, when you switch that on.
settings = Settings
measures-currency-days-and-times = Measures, currency, days and times, now as in { $example }.
journal = Journal
every-change-newest-first = Every change, newest first.
bin = Bin
