//! Everything that stands before and inside the camera.

use crate::{
    Background, Camera, Chart, Difficulty, Flaws, Gradient, Jpeg, Light, Piece, Sheet, Viewpoint,
    WhiteBalance,
};

/// A photograph to be rendered.
///
/// The table's axes are in mm: x to the right, y downwards, from its middle.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Width of the upright photo, px.
    pub width_px: u32,
    /// Height of the upright photo, px.
    pub height_px: u32,
    /// The dyed pieces.
    pub pieces: Vec<Piece>,
    /// The chart, where there is one.
    pub chart: Option<Chart>,
    /// The printed sheet beneath chart and pieces, where there is one.
    pub sheet: Option<Sheet>,
    /// What they lie on.
    pub background: Background,
    /// The light.
    pub light: Light,
    /// How unevenly the light falls.
    pub gradient: Gradient,
    /// Where the camera stands.
    pub viewpoint: Viewpoint,
    /// The camera.
    pub camera: Camera,
    /// Errors of its white balance.
    pub white_balance: WhiteBalance,
    /// Exposure beside the right one, in stops: +1 doubles the light.
    pub exposure_stops: f64,
    /// The file.
    pub jpeg: Jpeg,
    /// What went wrong on purpose.
    pub flaws: Flaws,
    /// Within which bounds [`Scene::relaid`] draws anew.
    pub difficulty: Difficulty,
    /// The seed of noise, grain and yarns.
    pub seed: u64,
}

impl Default for Scene {
    /// A photo of 2000 x 1500 px in daylight, of the chart alone on grey paper.
    fn default() -> Self {
        Self {
            width_px: 2000,
            height_px: 1500,
            pieces: Vec::new(),
            chart: Some(Chart::default()),
            sheet: None,
            background: Background::Paper,
            light: Light::D65,
            gradient: Gradient {
                share: 0.06,
                towards_deg: 215.0,
            },
            viewpoint: Viewpoint::default(),
            camera: Camera::plain(),
            white_balance: WhiteBalance {
                red: 1.015,
                blue: 0.985,
            },
            exposure_stops: 0.0,
            jpeg: Jpeg::default(),
            flaws: Flaws::default(),
            difficulty: Difficulty::Medium,
            seed: 1,
        }
    }
}
