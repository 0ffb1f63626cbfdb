# Clocks of a run.
time-over = { $gone } · { $left } over
time-left = { $gone } · { $left } left
planned-time-is-over = { $title }: the planned time is over.
