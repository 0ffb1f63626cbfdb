## bin/show.html

bin-woadstone = Bin · Woadstone
where-you = Where you are
studio = Studio
bin = Bin
nothing-lies-in-the-bin = Nothing lies in the bin. What you move here leaves the lists and can be taken back at any time; nothing is ever deleted.
to-the-list-of-trials = To the list of trials
out-of-the-lists-not-deleted = Out of the lists, not deleted. The last one moved comes first.
moved-here = { $kind }, moved here on { $at }
take-it-back = Take it back

## pages/bin/act.rs

there-is-no-such-thing-to-put = There is no such thing to put in the bin. Go back and try again.
