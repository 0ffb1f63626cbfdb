//! What a perfect reader of the photo would find.

/// The truth about a rendered photo. Pixels are those of the upright photo, x to
/// the right and y downwards, the first pixel's middle at 0.5, 0.5.
#[derive(Debug, Clone, PartialEq)]
pub struct Truth {
    /// Width of the upright photo, px.
    pub width: u32,
    /// Height of the upright photo, px.
    pub height: u32,
    /// The outer corners of the patch grid at the brown, bluish green, black and
    /// white patch, px; all 0 where the photo has no chart.
    pub chart_corners: [[f64; 2]; 4],
    /// The pieces, in the order of the scene.
    pub pieces: Vec<PieceTruth>,
}

/// The truth about one piece.
#[derive(Debug, Clone, PartialEq)]
pub struct PieceTruth {
    /// Its code.
    pub id: String,
    /// An area well inside the piece, px.
    pub polygon: Vec<[f64; 2]>,
    /// Its colour: CIELAB under D65, 10 degree observer.
    pub lab_d65_10: [f64; 3],
}
