//! Rows sorted by arm, piece and stage, repeat readings averaged.

use super::Row;
use crate::Role;
use nalgebra::Vector3;
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
            let look = pieces[piece].looks.entry(row.stage).or_default();
            look.sum += Vector3::from(row.lab.to_array());
            look.readings += 1;
            look.load = look.load.or(row.load.as_deref());
        }
        arms.retain(|arm| !arm.tests.is_empty());
        Self { arms, stages }
    }
}
