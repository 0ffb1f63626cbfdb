//! The app as a browser meets it, over a bench of its own for each test.

#![allow(
    clippy::unwrap_used,
    reason = "a test that can't go on should stop where it stands"
)]

mod batches;
mod bin;
mod boards;
mod charts;
mod compare;
mod desk;
mod elsewhere;
mod eyes;
mod guard;
mod materials;
mod parts;
mod phones;
mod photos;
mod plans;
mod progress;
mod recipe_runs;
mod recipes;
mod rinse;
mod search;
mod setup;
mod trials;
mod way;
