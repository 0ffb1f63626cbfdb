//! The bell curve by which likeness falls with distance.

/// How alike two things are that lie so many reaches apart: 1 at 0, 0.61 at one reach.
pub(crate) fn bell(reaches: f64) -> f64 {
    (-0.5 * reaches * reaches).exp()
}
