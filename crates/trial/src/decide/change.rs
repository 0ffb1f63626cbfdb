//! How far the pieces of an arm have changed at a stage.

use super::table::{Arm, Piece};
use inference::scatter::{Scatter, mean};
use nalgebra::{Matrix3, Vector3};
use std::collections::{BTreeMap, BTreeSet};

/// The changes of an arm's test pieces at one stage, in CIELAB.
#[derive(Clone)]
pub(super) struct Change<'a> {
    pub arm: &'a str,
    /// Each test piece's change with the load it was in.
    pub pieces: Vec<(Option<&'a str>, Vector3<f64>)>,
    /// Mean of them.
    pub mean: Vector3<f64>,
    /// What they are against.
    pub against: Against,
    /// Colours of the pieces at the start.
    pub starts: Vec<Vector3<f64>>,
    /// Scatter of like pieces before anything was done to them.
    pub start_scatter: Scatter,
    /// Test pieces read at this stage with nothing to compare them with.
    pub left_out: usize,
    /// The photos at the start and at this stage, if every piece was read from the same.
    pub photos: Option<[BTreeSet<&'a str>; 2]>,
    /// Without keepers: covariance of the colours at the start and now, added up, as
    /// their photos state it.
    pub stated: Option<Matrix3<f64>>,
}

/// What the changes of an arm are against.
#[derive(Clone)]
pub(super) enum Against {
    /// Each piece's own start.
    Start,
    /// The keepers as they look now, so many of them.
    Keepers(usize),
    /// Each piece's own start, less what the keepers seem to have changed, to which
    /// nothing was done: how each keeper drifted.
    Drift(Vec<Vector3<f64>>),
}

impl Against {
    /// Keepers it rests on.
    pub fn keepers(&self) -> usize {
        match self {
            Self::Start => 0,
            Self::Keepers(count) => *count,
            Self::Drift(drifts) => drifts.len(),
        }
    }
}

impl<'a> Change<'a> {
    /// None if no test piece of the arm can be compared at that stage. `drift`: what a
    /// keeper's drift is worth is known, so that pieces' own starts may be used too.
    pub fn of(arm: &'a Arm<'a>, stage: u32, drift: bool) -> Option<Self> {
        let read: Vec<_> = arm
            .tests
            .iter()
            .filter_map(|piece| Some((piece, piece.at(stage)?)))
            .collect();
        let started = |piece: &Piece| piece.at(0).is_some();
        let kept = at(&arm.keepers, stage);
        let drifts = arm.drifts(stage);
        let against = match (kept.is_empty(), drifts.is_empty()) {
            (true, _) => Against::Start,
            (false, false) if drift && read.iter().all(|(piece, _)| started(piece)) => {
                Against::Drift(drifts)
            }
            _ => Against::Keepers(kept.len()),
        };
        let of_keepers = match &against {
            Against::Start => None,
            Against::Keepers(_) => mean(&kept),
            Against::Drift(drifts) => mean(drifts),
        };
        let before = |piece: &Piece| match &against {
            Against::Start => piece.at(0),
            Against::Keepers(_) => of_keepers,
            Against::Drift(_) => Some(piece.at(0)? + of_keepers?),
        };
        let compared: Vec<_> = read
            .iter()
            .filter_map(|(piece, now)| Some((*piece, now - before(piece)?)))
            .collect();
        let changes: Vec<_> = compared.iter().map(|(_, change)| *change).collect();
        let mean = mean(&changes)?;
        let pieces: Vec<_> = compared
            .iter()
            .map(|(piece, change)| (piece.load(stage), *change))
            .collect();

        let tests_at_start = at(&arm.tests, 0);
        let kept_at_start = at(&arm.keepers, 0);
        let alike: Vec<_> = tests_at_start
            .iter()
            .chain(&kept_at_start)
            .copied()
            .collect();
        let start_scatter = Scatter::of(&alike);
        let starts = [tests_at_start, kept_at_start, kept]
            .into_iter()
            .find(|starts| !starts.is_empty())?;
        let keepers: &[Piece] = match &against {
            Against::Start => &[],
            _ => &arm.keepers,
        };
        let looked_at: Vec<_> = compared
            .iter()
            .map(|(piece, _)| *piece)
            .chain(keepers.iter().filter(|keeper| keeper.at(stage).is_some()))
            .collect();
        let stated = |(piece, _): &(&Piece, _)| Some(piece.stated(0)? + piece.stated(stage)?);
        let stated = match &against {
            Against::Start => compared.iter().map(stated).sum::<Option<Matrix3<f64>>>(),
            _ => None,
        };
        let photos = Option::zip(one_set(&looked_at, 0), one_set(&looked_at, stage));
        Some(Self {
            arm: arm.name,
            left_out: read.len() - pieces.len(),
            mean,
            against,
            starts,
            start_scatter,
            pieces,
            stated: stated.map(|sum| sum / compared.len() as f64),
            photos: photos.map(|(start, now)| [start, now]),
        })
    }

    /// Both arms' changes free of what befell their photos, where they share them
    /// and no keeper is needed to tell them apart: the drift of all their keepers
    /// is taken off both.
    pub fn in_one_photo(&self, other: &Self) -> Option<[Self; 2]> {
        self.photos
            .as_ref()
            .filter(|own| other.photos.as_ref() == Some(own))?;
        let (own, others) = (self.drift()?, other.drift()?);
        let all: Vec<_> = own.iter().chain(others).copied().collect();
        let together = mean(&all).unwrap_or_default();
        let shifted = |change: &Self, drifts: &[Vector3<f64>]| {
            let shift = mean(drifts).unwrap_or_default() - together;
            let mut shifted = change.clone();
            shifted.mean += shift;
            for (_, piece) in &mut shifted.pieces {
                *piece += shift;
            }
            shifted
        };
        Some([shifted(self, own), shifted(other, others)])
    }

    /// How the arm's keepers drifted, if each piece has its own start.
    pub fn drift(&self) -> Option<&[Vector3<f64>]> {
        match &self.against {
            Against::Start => Some(&[]),
            Against::Keepers(_) => None,
            Against::Drift(drifts) => Some(drifts),
        }
    }

    /// Scatter of the pieces about the arm's mean.
    pub fn piece_scatter(&self) -> Scatter {
        let changes: Vec<_> = self.pieces.iter().map(|(_, change)| *change).collect();
        Scatter::of(&changes)
    }

    /// The loads the pieces were in with the pieces of each; none unless every
    /// piece has one noted.
    pub fn loads(&self) -> Option<BTreeMap<&'a str, Vec<Vector3<f64>>>> {
        let mut loads: BTreeMap<&str, Vec<_>> = BTreeMap::new();
        for (load, change) in &self.pieces {
            loads.entry((*load)?).or_default().push(*change);
        }
        Some(loads)
    }

    /// Scatter of whole loads about the arm's mean, each by its share of the pieces.
    pub fn load_scatter(&self, loads: &BTreeMap<&str, Vec<Vector3<f64>>>) -> Scatter {
        let count = loads.len() as f64;
        let squares = loads
            .values()
            .filter_map(|pieces| {
                let share = pieces.len() as f64 / self.pieces.len() as f64;
                let off = (mean(pieces)? - self.mean) * (share * count);
                Some(off * off.transpose())
            })
            .sum();
        Scatter::from_squares(squares, loads.len() - 1)
    }
}

fn at(pieces: &[Piece], stage: u32) -> Vec<Vector3<f64>> {
    pieces.iter().filter_map(|piece| piece.at(stage)).collect()
}

/// The photos of a stage that all these pieces were read from, if they are the same.
fn one_set<'a>(pieces: &[&Piece<'a>], stage: u32) -> Option<BTreeSet<&'a str>> {
    let (first, rest) = pieces.split_first()?;
    let photos = first.photos(stage)?;
    let same = rest.iter().all(|piece| piece.photos(stage) == Some(photos));
    same.then(|| photos.clone())
}
