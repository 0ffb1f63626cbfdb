## fault/show.html

to-the-list-of-trials = To the list of trials
