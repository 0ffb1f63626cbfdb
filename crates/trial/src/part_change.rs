//! How the parts of resist-dyed pieces change from stage to stage.

use crate::{Part, PartReading, PieceId, Reading, SplitReading};
use colour::Lab;
use photo::{SeenColour, covariance_of_difference, covariance_of_errors_across, de00_interval};
use serde::Serialize;
use std::collections::BTreeMap;

/// One part of one piece at one stage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PartAtStage {
    /// The piece.
    pub piece: PieceId,
    /// Its pale or its deep part.
    pub part: Part,
    /// After how many rounds.
    pub stage: u32,
    /// Light and observer, such as `D65/10`.
    pub view: String,
    /// Mean L*, a*, b* of the photos of this stage.
    pub lab: [f64; 3],
    /// Mean share of the piece's area, 0 to 1.
    pub share: f64,
    /// How many photos it rests on.
    pub photos: usize,
    /// Its change since the start; none at the start itself, and none where no photo
    /// of the start shows the piece in two parts.
    pub change: Option<PartChange>,
}

/// The change of a part against its own start.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PartChange {
    /// Change of L*, a*, b*: now minus at the start.
    pub change: [f64; 3],
    /// CIEDE2000 of the change.
    pub de00: f64,
    /// Lower end of the 95 % interval of `de00`, 0 upward.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

/// Every part of every resist-dyed piece at every stage, by piece, part and stage.
///
/// The interval is that of one piece's readings: photos of one stage count as erring
/// alike, so that more of them don't feign sureness. It says nothing of how pieces
/// scatter about each other; verdicts rest on whole pieces.
pub fn parts_by_stage(readings: &[Reading]) -> Vec<PartAtStage> {
    let mut all = Vec::new();
    for ((piece, view, part), stages) in &sorted(readings) {
        let start = stages.get(&0);
        for (&stage, seen) in stages {
            let lab = mean(seen);
            let since = start.filter(|_| stage > 0);
            all.push(PartAtStage {
                piece: *piece,
                part: *part,
                stage,
                view: (*view).to_owned(),
                lab,
                share: seen.iter().map(|s| s.part.share).sum::<f64>() / seen.len() as f64,
                photos: seen.len(),
                change: since.map(|start| changed(start, seen)),
            });
        }
    }
    all.sort_by_key(|at| (at.piece, at.part, at.stage));
    all
}

/// A part on one photo.
pub(crate) struct Seen<'a> {
    part: &'a PartReading,
    split: &'a SplitReading,
}

impl Seen<'_> {
    fn colour(&self) -> SeenColour<'_> {
        SeenColour {
            lab: Lab::from(self.part.lab),
            causes: &self.part.causes,
            misses: &self.split.misses,
        }
    }
}

/// Looks at parts by piece, view and part, then by stage.
pub(crate) type Sorted<'a> = BTreeMap<(PieceId, &'a str, Part), BTreeMap<u32, Vec<Seen<'a>>>>;

pub(crate) fn sorted(readings: &[Reading]) -> Sorted<'_> {
    let mut sorted = Sorted::new();
    for reading in readings {
        let Some(split) = &reading.split else {
            continue;
        };
        for (kind, part) in [(Part::Pale, &split.pale), (Part::Deep, &split.deep)] {
            let stages = sorted
                .entry((reading.piece, reading.view.as_str(), kind))
                .or_default();
            stages
                .entry(reading.stage)
                .or_default()
                .push(Seen { part, split });
        }
    }
    sorted
}

fn mean(seen: &[Seen<'_>]) -> [f64; 3] {
    let n = seen.len() as f64;
    [0, 1, 2].map(|k| seen.iter().map(|s| s.part.lab[k]).sum::<f64>() / n)
}

fn changed(start: &[Seen<'_>], now: &[Seen<'_>]) -> PartChange {
    let Shift { from, to, cov } = Shift::of(start, now);
    let (de00, low, high) = de00_interval(Lab::from(from), Lab::from(to), &cov);
    PartChange {
        change: [0, 1, 2].map(|k| to[k] - from[k]),
        de00,
        low,
        high,
    }
}

/// A part's mean colours at the start and now, with the covariance of their difference.
pub(crate) struct Shift {
    pub from: [f64; 3],
    pub to: [f64; 3],
    pub cov: [[f64; 3]; 3],
}

impl Shift {
    pub(crate) fn of(start: &[Seen<'_>], now: &[Seen<'_>]) -> Self {
        let (from, to) = (mean(start), mean(now));
        let own = |seen: &[Seen<'_>]| average(seen.iter().map(|s| s.part.cov()));
        let pairs = start
            .iter()
            .flat_map(|a| now.iter().map(move |b| (a.colour(), b.colour())));
        let shared = average(pairs.map(|(a, b)| covariance_of_errors_across(&a, &b)));
        let cov = covariance_of_difference(&own(start), &own(now), &shared);
        Self { from, to, cov }
    }
}

pub(crate) fn average(all: impl Iterator<Item = [[f64; 3]; 3]>) -> [[f64; 3]; 3] {
    let (mut sum, mut n) = ([[0.0; 3]; 3], 0.0);
    for matrix in all {
        for (row, more) in sum.iter_mut().zip(matrix) {
            for (cell, v) in row.iter_mut().zip(more) {
                *cell += v;
            }
        }
        n += 1.0;
    }
    sum.map(|row| row.map(|v| v / f64::max(n, 1.0)))
}
