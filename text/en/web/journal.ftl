## journal/show.html

journal = Journal
where-you = Where you are
trials = Trials
studio = Studio
every-change-of-this-trial = Every change of this trial
every-change-of-the-bench = Every change of the bench
newest-first-nothing-here-is-ever-taken = newest first. Nothing here is ever taken out.
times-are-utc = Times are UTC; plans and recipes that were changed are called as they are now.
nothing-has-happened-yet = Nothing has happened yet.
nothing-older = Nothing older.
trial-2 = Trial:
as-it-is-kept = As it is kept
older-changes = Older changes
newest-changes = Newest changes

## pages/journal/show.rs

see-the-photo = See the photo
see-the-plan = See the plan
see-the-recipe = See the recipe
see-the-material = See the material
see-the-run = See the run
see-the-revision = See this revision
there-is-no-such-place = There is no such place in the journal. Begin at its newest page.
