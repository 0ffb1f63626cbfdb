## way.rs

left-out = left out
