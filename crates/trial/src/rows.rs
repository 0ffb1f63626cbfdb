//! From readings to the rows a decision is made on.

use crate::{PhotoId, PieceId, Reading, ReadingId, Trial, decide::Row};
use colour::Lab;
use std::collections::HashMap;

/// The rows of a trial's current readings.
///
/// Of several readings of one piece on one photo the newest counts. Readings
/// without a photo all count, as repeat readings. Readings of pieces that are
/// not in the trial are left out. The order is that of `readings`.
pub fn rows(trial: &Trial, readings: &[Reading]) -> Vec<Row> {
    let mut newest: HashMap<(PieceId, u32, PhotoId), ReadingId> = HashMap::new();
    for reading in readings {
        if let Some(photo) = reading.photo {
            let id = newest
                .entry((reading.piece, reading.stage, photo))
                .or_insert(reading.id);
            *id = reading.id.max(*id);
        }
    }
    let arms: HashMap<_, _> = trial.arms.iter().map(|arm| (arm.id, arm)).collect();
    let pieces: HashMap<_, _> = trial.pieces.iter().map(|piece| (piece.id, piece)).collect();
    readings
        .iter()
        .filter(|reading| {
            reading.photo.is_none_or(|photo| {
                newest.get(&(reading.piece, reading.stage, photo)) == Some(&reading.id)
            })
        })
        .filter_map(|reading| {
            let piece = pieces.get(&reading.piece)?;
            let arm = arms.get(&piece.arm)?;
            Some(Row {
                arm: arm.name.clone(),
                piece: piece.code.clone(),
                role: piece.role,
                load: piece.load.clone(),
                stage: reading.stage,
                lab: Lab::from(reading.lab),
            })
        })
        .collect()
}
