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
    /// Its pale and deep areas, where it is resist-dyed; the colour above is then
    /// that of the mean light from the area.
    pub parts: Option<PieceParts>,
}

/// The truth about a resist-dyed piece, over the area of [`PieceTruth::polygon`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PieceParts {
    /// Colour where the dye was kept away: CIELAB under D65, 10 degree observer.
    pub pale_lab: [f64; 3],
    /// Colour where it was not, likewise.
    pub deep_lab: [f64; 3],
    /// Share of the area that is deep, 0 to 1; a border counts by how deep it is.
    pub deep_share: f64,
}
