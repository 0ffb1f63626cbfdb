//! Rows sorted by arm, piece and stage, repeat readings averaged.

use super::Row;
use crate::Role;
use nalgebra::{Matrix3, Vector3};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// All arms that have test pieces, in order of first appearance.
pub(super) struct Table<'a> {
    pub arms: Vec<Arm<'a>>,
    /// Every stage after the start at which a test piece was read.
    pub stages: BTreeSet<u32>,
}

/// The pieces of one arm.
pub(super) struct Arm<'a> {
    pub name: &'a str,
    pub tests: Vec<Piece<'a>>,
    pub keepers: Vec<Piece<'a>>,
}

/// One piece's mean colour at each stage.
#[derive(Default)]
pub(super) struct Piece<'a> {
    looks: BTreeMap<u32, Look<'a>>,
}

#[derive(Default)]
struct Look<'a> {
    sum: Vector3<f64>,
    readings: usize,
    load: Option<&'a str>,
    /// The photos it was read from; none as soon as one of them isn't known.
    photos: Option<BTreeSet<&'a str>>,
    /// Sum of the covariances that the readings state; none as soon as one states none.
    stated: Option<Matrix3<f64>>,
}

impl Piece<'_> {
    /// Mean colour at a stage, if it was read then.
    pub fn at(&self, stage: u32) -> Option<Vector3<f64>> {
        self.looks
            .get(&stage)
            .map(|look| look.sum / look.readings as f64)
    }
}

impl<'a> Piece<'a> {
    /// The load noted at a stage, or else at any other.
    pub fn load(&self, stage: u32) -> Option<&'a str> {
        let noted = self.looks.get(&stage).and_then(|look| look.load);
        noted.or_else(|| self.looks.values().find_map(|look| look.load))
    }

    /// How much its colour has changed from the start to a stage, if it was read at both.
    pub fn changed(&self, stage: u32) -> Option<Vector3<f64>> {
        Some(self.at(stage)? - self.at(0)?)
    }

    /// Covariance that its readings at a stage state, on average, if all state one.
    pub fn stated(&self, stage: u32) -> Option<Matrix3<f64>> {
        let look = self.looks.get(&stage)?;
        look.stated.map(|sum| sum / look.readings as f64)
    }

    /// The photos it was read from at a stage, if all of them are known.
    pub fn photos(&self, stage: u32) -> Option<&BTreeSet<&'a str>> {
        self.looks.get(&stage)?.photos.as_ref()
    }
}

impl Arm<'_> {
    /// How each keeper, to which nothing was done, seems to have changed by a stage.
    pub fn drifts(&self, stage: u32) -> Vec<Vector3<f64>> {
        let keepers = self.keepers.iter();
        keepers.filter_map(|keeper| keeper.changed(stage)).collect()
    }
}

impl<'a> Table<'a> {
    /// Sorts rows that passed the check. Witness cloths are left out: they show
    /// staining, not fade.
    pub fn of(rows: &'a [Row]) -> Self {
        let mut arms: Vec<Arm<'a>> = Vec::new();
        let mut arm_places: HashMap<&str, usize> = HashMap::new();
        let mut piece_places: HashMap<&str, usize> = HashMap::new();
        let mut stages = BTreeSet::new();
        for row in rows {
            let arm = *arm_places.entry(&row.arm).or_insert_with(|| {
                arms.push(Arm {
                    name: &row.arm,
                    tests: Vec::new(),
                    keepers: Vec::new(),
                });
                arms.len() - 1
            });
            let pieces = match row.role {
                Role::Test => &mut arms[arm].tests,
                Role::Keeper => &mut arms[arm].keepers,
                Role::Witness => continue,
            };
            if row.role == Role::Test && row.stage > 0 {
                stages.insert(row.stage);
            }
            let piece = *piece_places.entry(&row.piece).or_insert_with(|| {
                pieces.push(Piece::default());
                pieces.len() - 1
            });
            let look = pieces[piece]
                .looks
                .entry(row.stage)
                .or_insert_with(|| Look {
                    photos: Some(BTreeSet::new()),
                    stated: Some(Matrix3::zeros()),
                    ..Look::default()
                });
            look.photos = match (look.photos.take(), &row.photo) {
                (Some(mut photos), Some(photo)) => {
                    photos.insert(photo);
                    Some(photos)
                }
                _ => None,
            };
            look.stated = Option::zip(look.stated, row.stated)
                .map(|(sum, stated)| sum + Matrix3::from(stated).transpose());
            look.sum += Vector3::from(row.lab.to_array());
            look.readings += 1;
            look.load = look.load.or(row.load.as_deref());
        }
        arms.retain(|arm| !arm.tests.is_empty());
        Self { arms, stages }
    }
}
