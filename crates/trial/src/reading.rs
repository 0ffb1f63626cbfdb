//! A colour got from a piece.

use crate::{Note, Origin, PhotoId, PieceId, ReadingId, Source, SplitReading};
use serde::{Deserialize, Serialize};

/// One reading of a piece's colour. Readings are appended, never changed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// Its number; later readings have greater ones.
    pub id: ReadingId,
    /// The piece that was read.
    pub piece: PieceId,
    /// The photo it was read from, if it was one.
    pub photo: Option<PhotoId>,
    /// After how many rounds the piece was looked at.
    pub stage: u32,
    /// L*, a*, b* for the light and observer in `view`.
    pub lab: [f64; 3],
    /// Covariance of `lab` from everything that makes it uncertain.
    pub cov: [[f64; 3]; 3],
    /// How many pixels it rests on; 0 if it is not from a photo.
    pub pixels: u64,
    /// Its pale and its deep part, where a photo shows it resist-dyed. `lab` is then
    /// still that of the whole area, by which pieces are compared.
    #[serde(default)]
    pub split: Option<SplitReading>,
    /// Light and observer, such as `D65/10`.
    pub view: String,
    /// What it was got from.
    pub source: Source,
    /// Who measured it and how, if it is not from a photo.
    pub origin: Option<Origin>,
    /// What was noticed about it.
    pub notes: Vec<Note>,
    /// When it was made, RFC 3339.
    pub made_at: String,
}
