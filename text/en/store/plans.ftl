## plans.rs

there-is-no-such-plan = There is no such plan.
the-plan-was-changed-in-the-meantime = The plan was changed in the meantime: you saw revision { $upon }, the newest is { $number }. Nothing was changed; look at the plan again and repeat your change.
this-trial-was-started-without-a-plan = This trial was started without a plan, so it has no blind codes.
