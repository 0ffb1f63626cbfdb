## limit.rs

the-verdict-holds-for-what-was-done = The verdict holds for what was done: { $sentence }
with-alone-something-was-done-otherwise = With { $arm } alone something was done otherwise than planned, which may be the cause as well as the treatment: { $sentence }
the-difference-is-real-but-this-trial = The difference is real, but this trial can't tell whether the treatment made it or { $what }. { $found }
that-they-are-alike-is-sure-only = That they are alike is sure only of both together: { $what } may have hidden what the treatment did. { $found }
more-pieces-wont-tell-the-treatment = More pieces won't tell the treatment from { $what }. { $found }
dye-that-travelled-may-be-part = Dye that travelled may be part of it. { $found }
the-load-that-an-arm-had = the load that an arm had to itself
the-day-on-which-it-was-worked = the day on which it was worked
the-person-who-worked = the person who worked it
the-place-at-which-it-lay = the place at which it lay for the photo
the-loads-days-and-places-that-went = the loads, days and places that went with it
the-soak-in-warm-water-that-goes = the soak in warm water that goes with it
the-order-in-which-the-arms-used = the order in which the arms used a vessel
