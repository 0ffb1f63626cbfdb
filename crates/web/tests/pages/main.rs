//! The app as a browser meets it, over a bench of its own for each test.

mod desk;
mod guard;
mod photos;
mod trials;
