//! From readings to the rows a decision is made on.

use crate::{PhotoId, PieceId, Reading, ReadingId, Source, Trial, decide::Row};
use colour::Lab;
use std::collections::HashMap;

/// The rows of a trial's current readings.
///
/// Of several readings of one piece on one photo the newest counts. Readings
/// without a photo all count, as repeat readings. Readings of pieces that are
/// not in the trial are left out. The order is that of `readings`.
pub fn rows(trial: &Trial, readings: &[Reading]) -> Vec<Row> {
    let arms: HashMap<_, _> = trial.arms.iter().map(|arm| (arm.id, arm)).collect();
    let pieces: HashMap<_, _> = trial.pieces.iter().map(|piece| (piece.id, piece)).collect();
    current(readings)
        .filter_map(|reading| {
            let piece = pieces.get(&reading.piece)?;
            let arm = arms.get(&piece.arm)?;
            Some(Row {
                arm: arm.name.clone(),
                piece: piece.code.clone(),
                role: piece.role,
                load: piece.load.clone(),
                photo: reading.photo.map(|id| id.0.to_string()),
                stated: (reading.source == Source::Photo).then_some(reading.cov),
                stage: reading.stage,
                lab: Lab::from(reading.lab),
            })
        })
        .collect()
}

/// The readings that count: of several of one piece on one photo the newest.
pub(crate) fn current(readings: &[Reading]) -> impl Iterator<Item = &Reading> {
    let mut newest: HashMap<(PieceId, u32, PhotoId), ReadingId> = HashMap::new();
    for reading in readings {
        if let Some(photo) = reading.photo {
            let id = newest
                .entry((reading.piece, reading.stage, photo))
                .or_insert(reading.id);
            *id = reading.id.max(*id);
        }
    }
    readings.iter().filter(move |reading| {
        reading.photo.is_none_or(|photo| {
            newest.get(&(reading.piece, reading.stage, photo)) == Some(&reading.id)
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Arm, ArmId, Piece, Role, TrialId};

    fn reading(id: i64, piece: i64, photo: Option<i64>, l: f64) -> Reading {
        Reading {
            id: ReadingId(id),
            piece: PieceId(piece),
            photo: photo.map(PhotoId),
            stage: 0,
            lab: [l, 0.0, 0.0],
            cov: [[0.0; 3]; 3],
            pixels: 1,
            split: None,
            view: "D65/10".into(),
            source: crate::Source::Photo,
            origin: None,
            notes: Vec::new(),
            made_at: "2020-01-01T00:00:00Z".into(),
        }
    }

    #[test]
    fn the_newest_reading_of_a_photo_counts_and_strangers_do_not() {
        let trial = Trial {
            id: TrialId(1),
            slug: "t".into(),
            title: "t".into(),
            question: "?".into(),
            margin_de00: 1.0,
            rounds: 1,
            invented: true,
            made_at: "2020-01-01T00:00:00Z".into(),
            method: String::new(),
            arms: vec![Arm {
                id: ArmId(5),
                name: "plain".into(),
                treatment: String::new(),
            }],
            pieces: vec![Piece {
                tag: photo::board::Code::from_number(1),
                id: PieceId(7),
                arm: ArmId(5),
                code: "P1".into(),
                role: Role::Test,
                load: None,
            }],
        };
        let readings = [
            reading(3, 7, Some(1), 30.0),
            reading(1, 7, Some(1), 10.0),
            reading(2, 7, Some(2), 20.0),
            reading(4, 7, None, 40.0),
            reading(5, 7, None, 50.0),
            reading(6, 8, Some(1), 60.0),
        ];
        let found: Vec<_> = rows(&trial, &readings).iter().map(|r| r.lab.l).collect();
        assert_eq!(found, [30.0, 20.0, 40.0, 50.0]);
    }
}
