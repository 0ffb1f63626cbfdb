//! Any two colours of a trial set side by side, with how sure their difference is.

use crate::{Doubt, PhotoId, PieceId, Reading, Source, part_change::average, rows::current};
use colour::{Lab, View, difference::ciede2000, grade};
use photo::{SeenColour, covariance_of_difference, covariance_of_errors_across, de00_interval};
use std::collections::{BTreeMap, BTreeSet};

/// A piece as it was seen at a stage.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Sight {
    /// After how many rounds.
    pub stage: u32,
    /// The piece.
    pub piece: PieceId,
}

/// What the two colours have in common.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Together {
    /// They lie on the same photo, of which most errors drop out of the difference.
    OnePhoto,
    /// They lie on different photos.
    Photos,
    /// An instrument measured both, or a person typed both.
    Elsewhere,
}

/// Two colours side by side.
#[derive(Debug, Clone, PartialEq)]
pub struct SideBySide {
    /// Where the colours come from.
    pub source: Source,
    /// Their light and observer, such as `D65/10`.
    pub view: String,
    /// The two colours.
    pub labs: [Lab; 2],
    /// Their difference, CIEDE2000.
    pub de00: f64,
    /// Both ends of its 95 % interval; the lower is 0 where no difference is shown.
    pub interval: [f64; 2],
    /// What they have in common.
    pub together: Together,
    /// The change from the first to the second on the grey scale (ISO 105-A05): decimal
    /// and reported grade. None for another view than D65/10, for which the
    /// scale is made.
    pub grade: Option<(f64, grade::Grade)>,
}

/// Everything that was seen, by stage.
pub fn sights(readings: &[Reading]) -> BTreeSet<Sight> {
    let sight = |reading: &Reading| Sight {
        stage: reading.stage,
        piece: reading.piece,
    };
    readings.iter().map(sight).collect()
}

impl SideBySide {
    /// Sets two sights side by side by one kind of reading: by spectra before Lab before
    /// photos. None where no kind shows both. Where photos show both, only these count.
    ///
    /// `doubts` are what the readings of each photo have in common. Several photos of one
    /// sight count as erring alike, so that more of them don't feign sureness; measurements
    /// of an instrument each count for themselves.
    pub fn of(
        readings: &[Reading],
        doubts: &BTreeMap<PhotoId, Doubt>,
        [a, b]: [Sight; 2],
    ) -> Option<Self> {
        let chosen = Chosen::of(readings, [a, b])?;
        let labs = chosen.labs();
        let Chosen {
            source,
            view,
            of: [of_a, of_b],
            both,
        } = chosen;
        let (together, cov) = if source != Source::Photo {
            (
                Together::Elsewhere,
                plus(own(&of_a, true), own(&of_b, true)),
            )
        } else if both.is_empty() {
            (Together::Photos, across(&of_a, &of_b, doubts))
        } else {
            let known = both
                .iter()
                .map(|photo| doubts.get(photo)?.of_difference(a.piece, b.piece));
            let cov = match known.collect::<Option<Vec<_>>>() {
                Some(known) => average(known.into_iter()),
                None => plus(own(&of_a, false), own(&of_b, false)),
            };
            (Together::OnePhoto, cov)
        };
        let [first, second] = labs;
        let (de00, interval) = match a == b {
            // One and the same: there is nothing to be unsure of.
            true => (0.0, [0.0, 0.0]),
            false => {
                let (_, low, high) = de00_interval(first, second, &cov);
                (ciede2000(first, second), [low, high])
            }
        };
        let fits = view == View::D65_10.to_string();
        Some(Self {
            source,
            labs,
            de00,
            interval,
            together,
            grade: fits.then(|| {
                let found = grade::fade(first, second);
                (found.value, found.grade)
            }),
            view,
        })
    }
}

/// The two colours alone, chosen as [`SideBySide::of`] does.
pub(crate) fn labs(readings: &[Reading], sights: [Sight; 2]) -> Option<[Lab; 2]> {
    Some(Chosen::of(readings, sights)?.labs())
}

type Matrix = [[f64; 3]; 3];

/// The readings of two sights that are compared.
struct Chosen<'a> {
    source: Source,
    view: String,
    of: [Vec<&'a Reading>; 2],
    /// Photos that show both; where there are any, the readings are theirs.
    both: BTreeSet<PhotoId>,
}

impl<'a> Chosen<'a> {
    fn of(readings: &'a [Reading], sights: [Sight; 2]) -> Option<Self> {
        let [a, b] = sights.map(|sight| -> Vec<&Reading> {
            let own = |r: &&Reading| r.piece == sight.piece && r.stage == sight.stage;
            current(readings).filter(own).collect()
        });
        let (source, view) = kind(&a, &b)?;
        let of = [a, b].map(|own| -> Vec<&Reading> {
            let fits = |r: &&Reading| r.source == source && r.view == view;
            own.into_iter().filter(fits).collect()
        });
        let [in_a, in_b] = [0, 1].map(|k| -> BTreeSet<PhotoId> {
            of[k].iter().filter_map(|reading| reading.photo).collect()
        });
        let both: BTreeSet<PhotoId> = in_a.intersection(&in_b).copied().collect();
        let on_both = |r: &&Reading| both.is_empty() || r.photo.is_some_and(|p| both.contains(&p));
        let of = of.map(|own| own.into_iter().filter(on_both).collect());
        Some(Self {
            source,
            view,
            of,
            both,
        })
    }

    fn labs(&self) -> [Lab; 2] {
        [0, 1].map(|k| {
            let own = &self.of[k];
            let sum = |part: usize| own.iter().map(|r| r.lab[part]).sum::<f64>();
            Lab::from([0, 1, 2].map(|part| sum(part) / own.len() as f64))
        })
    }
}

/// The best kind of reading that both have.
fn kind(a: &[&Reading], b: &[&Reading]) -> Option<(Source, String)> {
    let rank = |source: Source| match source {
        Source::Spectrum => 0,
        Source::Lab => 1,
        Source::Photo => 2,
    };
    let has = |own: &[&Reading], r: &Reading| {
        let mut own = own.iter();
        own.any(|other| other.source == r.source && other.view == r.view)
    };
    let mut both: Vec<&Reading> = a.iter().copied().filter(|r| has(b, r)).collect();
    both.sort_by_key(|reading| (rank(reading.source), reading.view.clone()));
    both.first().map(|r| (r.source, r.view.clone()))
}

/// Covariance of the mean of readings that err alike, or each for itself.
fn own(readings: &[&Reading], each: bool) -> Matrix {
    let share = if each {
        1.0 / readings.len() as f64
    } else {
        1.0
    };
    average(readings.iter().map(|r| r.cov)).map(|row| row.map(|v| v * share))
}

fn plus(a: Matrix, b: Matrix) -> Matrix {
    covariance_of_difference(&a, &b, &[[0.0; 3]; 3])
}

/// Covariance of the difference of colours of different photos, which miss like colours
/// alike where their charts do.
fn across(a: &[&Reading], b: &[&Reading], doubts: &BTreeMap<PhotoId, Doubt>) -> Matrix {
    let seen = |reading: &Reading| -> Option<SeenColour<'_>> {
        let doubt = doubts.get(&reading.photo?)?;
        let at = doubt.pieces.iter().position(|p| *p == reading.piece)?;
        Some(SeenColour {
            lab: Lab::from(reading.lab),
            causes: doubt.parts.get(at)?,
            misses: &doubt.misses,
        })
    };
    let pairs = a
        .iter()
        .flat_map(|one| b.iter().map(move |other| (one, other)));
    let shared = pairs
        .filter_map(|(one, other)| Some(covariance_of_errors_across(&seen(one)?, &seen(other)?)));
    covariance_of_difference(&own(a, false), &own(b, false), &average(shared))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ReadingId;

    const SIGHTS: [Sight; 2] = [
        Sight {
            stage: 0,
            piece: PieceId(1),
        },
        Sight {
            stage: 0,
            piece: PieceId(2),
        },
    ];

    fn reading(id: i64, piece: i64, photo: Option<i64>, source: Source, l: f64) -> Reading {
        Reading {
            id: ReadingId(id),
            piece: PieceId(piece),
            photo: photo.map(PhotoId),
            stage: 0,
            lab: [l, 1.0, 2.0],
            cov: [[0.04, 0.0, 0.0], [0.0, 0.04, 0.0], [0.0, 0.0, 0.04]],
            pixels: 1,
            split: None,
            view: "D65/10".into(),
            source,
            origin: None,
            notes: Vec::new(),
            made_at: "2020-01-01T00:00:00Z".into(),
        }
    }

    fn set(readings: &[Reading]) -> Option<SideBySide> {
        SideBySide::of(readings, &BTreeMap::new(), SIGHTS)
    }

    #[test]
    fn a_photo_of_both_counts_before_photos_of_one_and_a_spectrum_before_photos() {
        let mut readings = vec![
            reading(1, 1, Some(1), Source::Photo, 40.0),
            reading(2, 2, Some(2), Source::Photo, 50.0),
        ];
        let found = set(&readings).unwrap();
        assert_eq!(found.labs.map(|lab| lab.l), [40.0, 50.0]);
        assert_eq!(found.together, Together::Photos);
        readings.push(reading(3, 1, Some(2), Source::Photo, 46.0));
        let found = set(&readings).unwrap();
        assert_eq!(found.labs.map(|lab| lab.l), [46.0, 50.0]);
        assert_eq!(found.together, Together::OnePhoto);
        // One spectrum alone is nothing to compare with.
        readings.push(reading(4, 1, None, Source::Spectrum, 41.0));
        assert_eq!(set(&readings).unwrap().source, Source::Photo);
        readings.push(reading(5, 2, None, Source::Spectrum, 44.4));
        let found = set(&readings).unwrap();
        assert_eq!(
            (found.source, found.together),
            (Source::Spectrum, Together::Elsewhere)
        );
        // A lightness step of 3.4 is grade 3 (ISO 105-A02, published).
        assert_eq!(found.grade.unwrap().1.to_string(), "3");
        assert!(found.interval[0] < found.de00 && found.de00 < found.interval[1]);
        assert!(set(&readings[..1]).is_none());
    }

    #[test]
    fn what_one_photo_has_in_common_drops_out_of_the_difference() {
        let readings = [
            reading(1, 1, Some(1), Source::Photo, 40.0),
            reading(2, 2, Some(1), Source::Photo, 42.0),
        ];
        let alone = set(&readings).unwrap();
        let own = readings[0].cov;
        let nearly = own.map(|row| row.map(|v| 0.95 * v));
        let doubt = Doubt {
            pieces: vec![PieceId(1), PieceId(2)],
            parts: Vec::new(),
            together: vec![vec![own, nearly], vec![nearly, own]],
            misses: Vec::new(),
        };
        let doubts = BTreeMap::from([(PhotoId(1), doubt)]);
        let known = SideBySide::of(&readings, &doubts, SIGHTS).unwrap();
        let width = |found: &SideBySide| found.interval[1] - found.interval[0];
        assert!(width(&known) < 0.4 * width(&alone), "{known:?} {alone:?}");
        assert_eq!(known.de00, alone.de00);
    }

    #[test]
    fn one_and_the_same_does_not_differ() {
        let readings = [reading(1, 1, Some(1), Source::Photo, 40.0)];
        let found = SideBySide::of(&readings, &BTreeMap::new(), [SIGHTS[0]; 2]).unwrap();
        assert_eq!((found.de00, found.interval), (0.0, [0.0, 0.0]));
        assert_eq!(found.grade.unwrap().1.to_string(), "5");
        assert_eq!(sights(&readings).len(), 1);
    }
}
