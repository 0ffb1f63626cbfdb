//! How far two colours lie apart, by four published formulas.
//!
//! CIE94 and CMC are not symmetric: the first colour is the reference
//! (standard), the second the test (batch).

mod cie76;
mod cie94;
mod ciede2000;
mod cmc;

pub use cie76::cie76;
pub use cie94::cie94_textile;
pub use ciede2000::{ciede2000, ciede2000_metric};
pub use cmc::cmc;

use crate::Lab;

/// Squared metric hue difference of two colours, never below zero.
fn hue_difference_squared(reference: Lab, test: Lab) -> f64 {
    // From the chord between the two hues, which stays exact where subtracting
    // the other parts from the whole difference would lose its digits.
    let half_angle = (test.hue_deg() - reference.hue_deg()).to_radians() / 2.0;
    let chord = 2.0 * (reference.chroma() * test.chroma()).sqrt() * libm::sin(half_angle);
    chord * chord
}
