//! The invented demo trial: its story, its photographs, and laying it out on a bench.

mod dyeing;
mod eyes;
mod lay_out;
mod picture;
mod scenario;

pub use lay_out::{Step, lay_out};
