## error.rs

this-page-is-from-before-woadstone = This page is from before Woadstone was last started, so nothing was changed. Go back, reload the page and send it again.
something-went-wrong-inside-woadstone = Something went wrong inside Woadstone; nothing you entered before was harmed. The log calls it { $id }.
this-request-cant-be-read-start-again = This request can’t be read. Start again from the list of trials.
this-page-would-be-too-long = This page would be too long to be shown, more than 64 MB. Nothing is lost: show less of it at once, or fetch the data instead.
nothing-here = Nothing here
not-done = Not done
something-is-wrong = Something is wrong
this-cant-be-taken = This can’t be taken
