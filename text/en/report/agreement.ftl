## _agreement.html

agreement-session = Agreement, { $title }, session { $number }
agreement = Agreement
who = Who
pairs = Pairs
figures-95-interval = Figures (95 % interval)
meaning = Meaning

## agreement.rs

people-with-each-other = people with each other
n-1-person = 1 person
people = { $count } people
with-themself = with themself
same-grade-of-to-same-interval2 = same grade { $same } of { $pairs } ({ $same_interval } to { $same_interval2 })
of-within-a-half-step-one-look = { $near } of { $pairs } within a half-step; one look scatters by { $sd } of a grade.
pairs-without-a-difference = pairs without a difference
seen-in-of-to-interval2 = seen in { $seen } of { $pairs } ({ $interval } to { $interval2 })
saw-none-where-there-was-none = Saw none where there was none.
lowest-grade-near-what-an-eye-does = Lowest grade { $lowest }: near what an eye does at its limit.
lowest-grade-sees-differences-where = Lowest grade { $lowest }: sees differences where there are none.
with-readings-staining = with readings, staining
with-readings-change = with readings, change
eye-less-readings-grades = { $kappa }; eye less readings { $mean } grades{ $interval }
stricter-than-the-formula = Stricter than the formula. { $plain }
milder-than-the-formula = Milder than the formula. { $plain }
nobody-graded-a-pair = Nobody graded a pair.
one-person-judged = One person judged.
people-judged = { $count } people judged { $in_words }.
no-figure = no figure
agreement-is-1-where-people-always-give = Agreement is 1 where people always give the same grade and 0 where they agree no more than chance would bring; two half-steps apart count four times as bad as one. Intervals hold at 95 % and are rough from fewer than 20 pairs.
