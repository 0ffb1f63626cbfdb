//! Trials drawn at random.

use super::{Layout, Truth};
use crate::chance::Chance;
use std::collections::BTreeMap;

/// Draws one trial after the other, without the arms' effects.
pub(super) struct Drawer<'a> {
    layout: &'a Layout,
    chance: Chance,
    piece_sd: f64,
    reading_sd: f64,
    load_sds: &'a [f64],
    /// Each piece's loads, counted from 0 through all kinds.
    loads: Vec<usize>,
    /// Where each piece's loads end.
    ends: Vec<usize>,
    /// The kind of each load.
    kinds: Vec<usize>,
    effects: Vec<f64>,
    /// Change of each piece, its arm's keepers left aside.
    pub(super) changes: Vec<f64>,
    /// What the keepers of each arm read too much.
    pub(super) keepers: Vec<f64>,
    /// Scatter at the start of each arm that has keepers: squares and degrees of freedom.
    starts: Vec<(f64, f64)>,
}

impl<'a> Drawer<'a> {
    pub(super) fn of(layout: &'a Layout, truth: &'a Truth, seed: u64) -> Self {
        let mut numbers = BTreeMap::new();
        let mut kinds = Vec::new();
        let (mut loads, mut ends) = (Vec::new(), Vec::new());
        for piece in &layout.pieces {
            let noted = piece.loads.iter().enumerate();
            let own = noted.filter_map(|(kind, load)| Some((kind, (*load)?)));
            let of_piece = own.map(|key| {
                *numbers.entry(key).or_insert_with(|| {
                    kinds.push(key.0);
                    kinds.len() - 1
                })
            });
            loads.extend(of_piece);
            ends.push(loads.len());
        }
        Self {
            chance: Chance::new(seed),
            piece_sd: truth.piece_sd,
            reading_sd: truth.reading_variance().sqrt(),
            load_sds: &truth.load_sds,
            effects: vec![0.0; kinds.len()],
            loads,
            ends,
            kinds,
            changes: vec![0.0; layout.pieces.len()],
            keepers: vec![0.0; layout.arms],
            starts: vec![(0.0, 0.0); layout.arms],
            layout,
        }
    }

    pub(super) fn draw(&mut self) {
        for (effect, kind) in self.effects.iter_mut().zip(&self.kinds) {
            *effect = self.load_sds[*kind] * self.chance.normal();
        }
        let mut sums = vec![Sums::default(); self.layout.arms];
        // Against its own start, a piece is read twice.
        let against_start =
            (self.piece_sd * self.piece_sd + 2.0 * self.reading_sd * self.reading_sd).sqrt();
        let mut begin = 0;
        for (at, piece) in self.layout.pieces.iter().enumerate() {
            let own = &self.loads[begin..self.ends[at]];
            begin = self.ends[at];
            let loads: f64 = own.iter().map(|load| self.effects[*load]).sum();
            self.changes[at] = loads
                + if self.layout.keepers[piece.arm] > 0 {
                    let own = self.piece_sd * self.chance.normal();
                    sums[piece.arm].add(own + self.reading_sd * self.chance.normal());
                    own + self.reading_sd * self.chance.normal()
                } else {
                    against_start * self.chance.normal()
                };
        }
        for (arm, &kept) in self.layout.keepers.iter().enumerate() {
            let mut sum = 0.0;
            for _ in 0..kept {
                let own = self.piece_sd * self.chance.normal();
                sums[arm].add(own + self.reading_sd * self.chance.normal());
                sum += own + self.reading_sd * self.chance.normal();
            }
            self.keepers[arm] = if kept > 0 { sum / f64::from(kept) } else { 0.0 };
            self.starts[arm] = sums[arm].scatter();
        }
    }

    /// Scatter at the start of two arms, or of all.
    pub(super) fn start_of(&self, arms: Option<[usize; 2]>) -> (f64, f64) {
        let add = |sum: (f64, f64), one: &(f64, f64)| (sum.0 + one.0, sum.1 + one.1);
        match arms {
            Some([first, second]) => add(self.starts[first], &self.starts[second]),
            None => self.starts.iter().fold((0.0, 0.0), add),
        }
    }
}

#[derive(Clone, Default)]
struct Sums {
    count: f64,
    sum: f64,
    squares: f64,
}

impl Sums {
    fn add(&mut self, value: f64) {
        self.count += 1.0;
        self.sum += value;
        self.squares += value * value;
    }

    fn scatter(&self) -> (f64, f64) {
        if self.count == 0.0 {
            return (0.0, 0.0);
        }
        let off = self.squares - self.sum * self.sum / self.count;
        (off.max(0.0), self.count - 1.0)
    }
}
