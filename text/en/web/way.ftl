## way.rs

left-out = left out
ask = Ask
plan = Plan
baths = Baths
run = Run
look = Look
decide = Decide
publish = Publish
