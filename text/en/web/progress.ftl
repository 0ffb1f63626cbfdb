## progress.rs

being-read = being read
of-read = { $count } of { $photos } read
to-be-marked = to be marked
could-not-be-read = could not be read
taken-out-of-the-queue = taken out of the queue
