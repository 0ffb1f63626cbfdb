//! What is asked of a photo.

use colour::View;
use serde::{Deserialize, Serialize};

use crate::ChartReference;

/// A place on the upright photo, pixels: x to the right, y down; the middle of
/// the first pixel is at 0.5, 0.5.
pub type Point = [f64; 2];

/// An area of the photo to be read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Area {
    /// The caller's name for it, given back with its reading.
    pub id: String,
    /// Its corners in order, three or more.
    pub polygon: Vec<Point>,
}

/// What to read from a photo, and how.
#[derive(Debug, Clone)]
pub struct Request {
    /// The areas to read; none reads the chart alone.
    pub areas: Vec<Area>,
    /// The outer corners of the patch grid at the first patch, the end of the first
    /// row, the last patch and the start of the last row (brown, bluish green, black
    /// and white on the usual chart); none lets the chart be found.
    pub corners: Option<[Point; 4]>,
    /// What the chart's patches truly are.
    pub chart: ChartReference,
    /// Light and observer of the answer.
    pub view: View,
    /// Outlines on the photo that show bare ground of one colour, from which the
    /// light is read; empty lets the ground be found.
    pub ground: Vec<Vec<Point>>,
    /// Covariance of Lab from what changes between two photos of one thing:
    /// re-laying, flare, the lens's fall-off. A set-up check measures it.
    pub photo_to_photo: [[f64; 3]; 3],
}

impl Request {
    /// What photos of one studio usually differ by, before a set-up check tells
    /// better: a standard deviation of 0.15 in each of L*, a* and b*.
    pub const USUAL_PHOTO_TO_PHOTO: [[f64; 3]; 3] = {
        const VARIANCE: f64 = 0.15 * 0.15;
        [
            [VARIANCE, 0.0, 0.0],
            [0.0, VARIANCE, 0.0],
            [0.0, 0.0, VARIANCE],
        ]
    };
}

impl Default for Request {
    /// No areas, the chart to be found and taken as the published average, D65/10.
    fn default() -> Self {
        Self {
            areas: Vec::new(),
            corners: None,
            chart: ChartReference::published(),
            view: View::D65_10,
            ground: Vec::new(),
            photo_to_photo: Self::USUAL_PHOTO_TO_PHOTO,
        }
    }
}
