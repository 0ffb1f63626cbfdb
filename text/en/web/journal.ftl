## journal/show.html

journal = Journal
where-you = Where you are
trials = Trials
studio = Studio
every-change-of-this-trial = Every change of this trial
every-change-of-the-bench = Every change of the bench
newest-first-nothing-here-is-ever-taken = newest first. Nothing here is ever taken out.
times-are-utc = Times are UTC.
nothing-has-happened-yet = Nothing has happened yet.
nothing-older = Nothing older.
see-the-run = See the run
see-the-revision = See this revision
of = of
older-changes = Older changes
newest-changes = Newest changes

## pages/journal/show.rs

there-is-no-such-place = There is no such place in the journal. Begin at its newest page.
