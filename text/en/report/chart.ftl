## chart/balance.rs

on-the-goods = on the goods
where-the-dye-went = Where the dye went: { $said }

## chart/change.rs

lines-of-ciede2000-from-the-start = Lines of CIEDE2000 from the start against rounds. { $points }.

## chart/fade.rs

strength-of-left-mean-of-its-pieces = Strength of { $arm } left, mean of its pieces: { $means }. The curve is followed to round { $last_round }.

## chart/grades.rs

difference-of-and-in-grades-interval = Difference of { $a } and { $b } in grades: { $seen }, interval { $low } to { $high }; the margin is { $margin }

## chart/margin.rs

difference-of-and-the-margin-is-margin = Difference of { $a } and { $b }: { $high }; the margin is { $margin_de00 }

## chart/power.rs

pieces-of-100 = { $pieces } pieces { $shows_margin } of 100
how-often-the-margin-is-shown = How often the margin is shown, by test pieces per arm: { $said }

## chart/programme.rs

temperature-of-the-bath-over-time = Temperature of the bath over time: { $corners }
at-min = { $degrees } { $scale } at { $minute } min
