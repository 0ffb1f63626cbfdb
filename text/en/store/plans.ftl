## plans.rs

there-is-no-such-plan = There is no such plan.
this-trial-was-started-without-a-plan = This trial was started without a plan, so it has no blind codes.
