//! How sure the colours of one photo are, all of them together.

use photo::{Parts, covariance_of_difference};
use serde::{Deserialize, Serialize};

use crate::PieceId;

/// What the readings of one photo have in common, kept beside them: two pieces
/// of a photo differ by less than their own plus-or-minus makes believe.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Doubt {
    /// The pieces that were read, in the order of the lists below.
    pub pieces: Vec<PieceId>,
    /// Each reading's covariance by cause.
    pub parts: Vec<Parts>,
    /// Covariance of L*, a*, b* of reading i with that of reading j.
    pub together: Vec<Vec<[[f64; 3]; 3]>>,
    /// By how much the chart's patches are missed when left out of the fit in
    /// turn, in Lab; none for patches that could not be used. Two photos whose
    /// charts are missed alike miss cloth alike.
    pub misses: Vec<Option<[f64; 3]>>,
}

impl Doubt {
    /// Covariance of the difference of two pieces of the photo, or none where one
    /// of them was not read on it.
    pub fn of_difference(&self, a: PieceId, b: PieceId) -> Option<[[f64; 3]; 3]> {
        let at = |piece| self.pieces.iter().position(|p| *p == piece);
        let (i, j) = (at(a)?, at(b)?);
        let together = &self.together;
        Some(covariance_of_difference(
            &together[i][i],
            &together[j][j],
            &together[i][j],
        ))
    }
}
