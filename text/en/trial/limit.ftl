## limit.rs

the-verdict-holds-for-what-was-done = The verdict holds for what was done: { $sentence }
with-alone-something-was-done-otherwise = With { $arm } alone something was done otherwise than planned, which may be the cause as well as the treatment: { $sentence }
the-difference-is-real-but-this-trial = The difference is real, but this trial can't tell whether the treatment made it or { $what }. { $found }
that-they-are-alike-is-sure-only = That they are alike is sure only of both together: { $what } may have hidden what the treatment did. { $found }
more-pieces-wont-tell-the-treatment = More pieces won't tell the treatment from { $what }. { $found }
dye-that-travelled-may-be-part = Dye that travelled may be part of it. { $found }
