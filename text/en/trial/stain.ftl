## stain/words.rs

n-1-round = 1 round
rounds = { $stage } rounds
the-witness-cloth = The witness cloth { $code }
the-pale-part = The pale part of { $code }
shows-no-stain-after-beyond = { $what } shows no stain after { $rounds } beyond what its readings scatter by; if there is one, it is of grade { $worst } or better.
between-and = { " " }(between { $worst } and { $best })
its-hue-is-that-of-the-dye = ; its hue is that of the dye of { $arms }
whether-it-is-the-trials-own-dye = ; whether it is the trial’s own dye can't be told, its hue is too unsure
whose-dye-it-is-cant-be-told = ; whose dye it is can't be told: that of { $arms } is nearest in hue but may not fit
whose-dye-it-is-cant-be-told-2 = ; whose dye it is can't be told between { $arms }
its-hue-is-that-of-no-arms = ; its hue is that of no arm’s dye, so it may be something else: soil, yellowing, another load
no-arms-dye-has-a-hue = ; no arm’s dye has a hue to know it by
is-stained-to-grade-after = { $what } is stained to grade { $grade }{ $range } after { $rounds }{ $whose }.
l-a-b-de-gs-grade = ΔL* { $d_l }, Δa* { $d_a }, Δb* { $d_b }; dE_GS { $de_gs }, grade by the formula { $stain } ({ $view })
n-95-interval-to-interval2 = { $cosine } (95 % interval { $interval } to { $interval2 })
cosine-in-a-b = ; cosine in a*b* with { $arms } { $interval }
