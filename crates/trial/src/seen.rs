//! A piece's colour at a stage from all its readings of one kind.

use crate::{PieceId, Reading, Source, rows::current};
use colour::Lab;
use std::collections::{BTreeMap, BTreeSet};

/// What readings of one kind were got from, and for which light and observer.
pub type Kind = (Source, String);

/// The mean colour of a piece at a stage by each kind of reading there is; kinds don't
/// mix. Of several readings on one photo the newest counts.
pub fn by_kind(readings: &[Reading], piece: PieceId, stage: u32) -> BTreeMap<Kind, Lab> {
    let mut sums: BTreeMap<Kind, ([f64; 3], f64)> = BTreeMap::new();
    let own = |reading: &&Reading| reading.piece == piece && reading.stage == stage;
    for reading in current(readings).filter(own) {
        let kind = (reading.source, reading.view.clone());
        let (sum, count) = sums.entry(kind).or_default();
        for (part, value) in sum.iter_mut().zip(reading.lab) {
            *part += value;
        }
        *count += 1.0;
    }
    sums.into_iter()
        .map(|(kind, (sum, count))| (kind, Lab::from(sum.map(|part| part / count))))
        .collect()
}

/// Colours of two pieces at their stages by one kind of reading: by spectra before
/// Lab before photos. None where no kind has both.
///
/// Where photos show both, only these count: their difference is free of what befell a
/// photo.
pub fn pair(readings: &[Reading], of: [(PieceId, u32); 2]) -> Option<(Kind, [Lab; 2])> {
    let [first, second] = of.map(|(piece, stage)| by_kind(readings, piece, stage));
    let rank = |source: Source| match source {
        Source::Spectrum => 0,
        Source::Lab => 1,
        Source::Photo => 2,
    };
    let mut kinds: Vec<&Kind> = first.keys().filter(|k| second.contains_key(*k)).collect();
    kinds.sort_by_key(|kind| rank(kind.0));
    let kind = kinds.first().copied()?;
    let own = |reading: &&Reading| reading.source == kind.0 && reading.view == kind.1;
    let photos = |(piece, stage): (PieceId, u32)| -> BTreeSet<_> {
        let shown = readings.iter().filter(own);
        let shown = shown.filter(|r| r.piece == piece && r.stage == stage);
        shown.filter_map(|r| r.photo).collect()
    };
    let both: BTreeSet<_> = photos(of[0]).intersection(&photos(of[1])).copied().collect();
    if both.is_empty() {
        return Some((kind.clone(), [first[kind], second[kind]]));
    }
    let shown: Vec<Reading> = readings
        .iter()
        .filter(own)
        .filter(|r| r.photo.is_some_and(|photo| both.contains(&photo)))
        .cloned()
        .collect();
    let seen = |(piece, stage)| by_kind(&shown, piece, stage).get(kind).copied();
    Some((kind.clone(), [seen(of[0])?, seen(of[1])?]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{PhotoId, ReadingId};

    fn reading(id: i64, piece: i64, photo: Option<i64>, source: Source, l: f64) -> Reading {
        Reading {
            id: ReadingId(id),
            piece: PieceId(piece),
            photo: photo.map(PhotoId),
            stage: 5,
            lab: [l, 1.0, 2.0],
            cov: [[0.0; 3]; 3],
            pixels: 1,
            split: None,
            view: "D65/10".into(),
            source,
            origin: None,
            notes: Vec::new(),
            made_at: "2020-01-01T00:00:00Z".into(),
        }
    }

    #[test]
    fn a_photo_of_both_counts_before_photos_of_one() {
        let both = [(PieceId(1), 5), (PieceId(2), 5)];
        let mut readings = vec![
            reading(1, 1, Some(1), Source::Photo, 40.0),
            reading(2, 2, Some(2), Source::Photo, 50.0),
        ];
        let lightness = |readings: &[Reading]| {
            pair(readings, both).map(|(kind, labs)| (kind.0, labs.map(|lab| lab.l)))
        };
        assert_eq!(lightness(&readings), Some((Source::Photo, [40.0, 50.0])));
        readings.push(reading(3, 1, Some(2), Source::Photo, 46.0));
        assert_eq!(lightness(&readings), Some((Source::Photo, [46.0, 50.0])));
        // One spectrum alone is nothing to compare with.
        readings.push(reading(4, 1, None, Source::Spectrum, 41.0));
        assert_eq!(lightness(&readings), Some((Source::Photo, [46.0, 50.0])));
        readings.push(reading(5, 2, None, Source::Spectrum, 44.0));
        assert_eq!(lightness(&readings), Some((Source::Spectrum, [41.0, 44.0])));
        assert_eq!(lightness(&readings[..1]), None);
    }
}
