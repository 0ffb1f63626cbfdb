//! Photos of a trial and what became of them.

use crate::{ChartId, PhotoId, PieceId, TrialId};
use serde::{Deserialize, Serialize};

/// A photo of some pieces at one stage.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Photo {
    /// Its number.
    pub id: PhotoId,
    /// The trial it belongs to.
    pub trial: TrialId,
    /// After how many rounds it was taken; 0 is before the first.
    pub stage: u32,
    /// The file's name as it came.
    pub name: String,
    /// SHA-256 of the file, lower-case hexadecimal; its address in the vault.
    pub hash: String,
    /// Size of the file, bytes.
    pub bytes: u64,
    /// Width of the upright photo, pixels.
    pub width: u32,
    /// Height of the upright photo, pixels.
    pub height: u32,
    /// Outer corners of the chart at the brown, bluish-green, black and white
    /// patch, pixels of the upright photo; none if they were not found.
    pub corners: Option<[[f64; 2]; 4]>,
    /// The person's own chart that lies on it; none for the usual 24 patches.
    #[serde(default)]
    pub chart: Option<ChartId>,
    /// Where the pieces lie, as marked.
    pub areas: Vec<PhotoArea>,
    /// How far its reading has come.
    pub state: PhotoState,
    /// When it was added, RFC 3339.
    pub added_at: String,
}

/// Where a piece lies on a photo.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PhotoArea {
    /// The piece.
    pub piece: PieceId,
    /// Corners of its area, pixels of the upright photo, x right and y down.
    pub polygon: Vec<[f64; 2]>,
}

/// How far the reading of a photo has come.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "state", rename_all = "snake_case")]
pub enum PhotoState {
    /// The pieces' areas have still to be marked.
    Unmarked,
    /// Marked, and waiting to be read.
    Waiting,
    /// Marked, and taken out of the queue before it was read.
    TakenOut,
    /// Read.
    Read {
        /// The colour correction that was used.
        model: String,
        /// Median error of a chart patch left out of the fit, CIEDE2000 units.
        loo_de00_median: f64,
        /// What was noticed about the photo as a whole.
        flags: Vec<Note>,
    },
    /// Not readable; nothing was taken from it.
    Refused {
        /// Short name of the cause.
        code: String,
        /// The cause and its remedy, in a sentence.
        message: String,
    },
}

/// Something noticed about a photo or a reading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Note {
    /// Short name of what was noticed.
    pub code: String,
    /// The same in a sentence.
    pub message: String,
}
