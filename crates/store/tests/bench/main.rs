//! The bench as its users see it: folders, files and rows through the public interface.

#![allow(clippy::unwrap_used, reason = "helpers of tests fail with the test")]

mod bin;
mod charts;
mod desk;
mod devices;
mod elsewhere;
mod eye_sessions;
mod handles;
mod journal;
mod marking;
mod materials;
mod parts;
mod photographs;
mod photos;
mod plans;
mod queue;
mod recipes;
mod requeue;
mod search;
mod settings;
mod setup_checks;
mod stages;
mod trials;
mod waters;
