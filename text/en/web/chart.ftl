## chart/list.html

your-charts-woadstone = Your charts · Woadstone
where-you = Where you are
studio = Studio
your-charts = Your charts
photos-are-read-by-the-usual-chart = Photos are read by the usual chart of 24 patches unless you choose another. Keep the values of your own chart here: measured patch by patch, or as its maker sends them.
charts-kept-here = Charts kept here
a-chart-stays-as-it-was-added = A chart stays as it was added, so that what was read by it can be read again. Has it faded or been measured anew? Add it under another name.
a-new-chart = A new chart
name-of-the-chart = Name of the chart
so-that-you-know-it-again-such = So that you know it again, such as big chart, bought in spring.
values-of-its-patches = Values of its patches
cgats-text-or-csv-with-a-row = CGATS text or CSV with a row for each patch: spectra, or L*, a* and b* with their light and observer. Columns named row and column say where each patch lies; without them 24 patches are taken as 4 rows of 6.
keep-this-chart = Keep this chart
you-choose-the-chart-when-you-add = You choose the chart when you add a photo; the next photo of the trial starts from the same one.

## pages/chart/add.rs

choose-the-file-with-the-values = Choose the file with the values of the chart’s patches.

## pages/chart/list.rs

known-by-spectra-exact-in-every-light = known by spectra, exact in every light
known-by-lab = known by Lab for { $view }
added = { $file_name }, added { $added_at }
rows-of-patches = { $rows } rows of { $columns } patches

## pages/chart/mod.rs

the-usual-24-patches = The usual 24 patches
