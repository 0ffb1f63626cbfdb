//! Trials drawn at random and judged as the verdict judges.

use super::{Design, Layout, Means, Outcome, Rate, Runs, Truth, chance::Chance, fit::Rest};
use crate::{InferenceError, dunnett::Dunnett, quantile};
use std::collections::BTreeMap;

impl Design {
    /// Draws trials as they truly are and judges each; one outcome for each
    /// contrast. The same seed gives the same outcome.
    ///
    /// A keeper differs from its arm as any piece does and shifts all changes of its
    /// arm; its error is estimated from the arm's pieces at the start. A load that
    /// isn't noted is drawn without an effect.
    ///
    /// # Errors
    /// A truth that doesn't go with the layout, a number out of its range.
    ///
    /// # Source
    /// Degrees of freedom of a sum of errors by Satterthwaite, Biometrics Bulletin 2
    /// (1946) 110-114; with two sides this is Welch's test.
    pub fn simulate(&self, truth: &Truth, runs: &Runs) -> Result<Vec<Outcome>, InferenceError> {
        truth.check(&self.layout)?;
        runs.check(self.layout.pieces.len())?;
        let mut drawer = Drawer::of(&self.layout, truth, runs.seed);
        let mut limits = self
            .dunnett
            .as_ref()
            .map(|dunnett| Limits::of(dunnett, runs.tail));
        let mut counts = vec![[0u32; 4]; self.contrasts.len()];
        let mut p = vec![1.0; self.family.len()];
        for _ in 0..runs.runs {
            drawer.draw();
            let rests: Vec<Rest> = self
                .fits
                .iter()
                .map(|fit| fit.rest(&drawer.changes))
                .collect();
            for (p, &at) in p.iter_mut().zip(&self.family) {
                let judged = self.judge(at, truth, &drawer, &rests);
                *p = judged.p_difference();
                let shown = limits
                    .as_mut()
                    .is_some_and(|limits| *p <= limits.at(judged.df));
                counts[at][0] += u32::from(*p <= runs.tail);
                counts[at][2] += u32::from(shown);
                if let Some(margin) = truth.margin {
                    let alike = judged.p_equivalence(margin) <= runs.equivalence_tail;
                    counts[at][3] += u32::from(alike);
                }
            }
            for at in holm_shown(&p, runs.tail) {
                counts[self.family[at]][1] += 1;
            }
        }
        let outcome = |(contrast, count): (&super::Contrast, &[u32; 4])| Outcome {
            contrast: *contrast,
            difference: Rate::of(count[0], runs.runs),
            difference_holm: Rate::of(count[1], runs.runs),
            difference_dunnett: limits.is_some().then(|| Rate::of(count[2], runs.runs)),
            equivalence: truth.margin.map(|_| Rate::of(count[3], runs.runs)),
        };
        Ok(self.contrasts.iter().zip(&counts).map(outcome).collect())
    }

    fn judge(&self, at: usize, truth: &Truth, drawer: &Drawer, rests: &[Rest]) -> Judged {
        let super::Contrast { first, second, .. } = self.contrasts[at];
        let mut difference = truth.effects[second] - truth.effects[first];
        difference -= drawer.keepers[second] - drawer.keepers[first];
        let mut errors = Errors::default();
        let start = drawer.start_of(match self.layout.scatter {
            super::ScatterOf::AllArms => None,
            super::ScatterOf::EachPair => Some([first, second]),
        });
        match &self.means[at] {
            Means::Never => {}
            Means::Least { fit, weights } => {
                difference += rests[*fit].difference(weights);
                errors.add(
                    rests[*fit].squares,
                    self.fits[*fit].df as f64,
                    weights.share,
                );
            }
            Means::Sides(sides) => {
                let [a, b] = [&sides[0], &sides[1]];
                let (found_a, found_b) = (a.found(&drawer.changes), b.found(&drawer.changes));
                difference += found_b.mean - found_a.mean;
                let (one_a, one_b) = (1.0 / a.count() as f64, 1.0 / b.count() as f64);
                let both = (a.df() + b.df()) as f64;
                if a.df() > 0 && b.df() > 0 {
                    errors.add(found_a.squares, a.df() as f64, one_a);
                    errors.add(found_b.squares, b.df() as f64, one_b);
                } else if both > 0.0 {
                    // With scatter in one arm only, the other's is taken to be the same.
                    errors.add(found_a.squares + found_b.squares, both, one_a + one_b);
                } else {
                    errors.add(start.0, start.1, one_a + one_b);
                }
            }
        }
        let shares = [first, second].map(|arm| match self.layout.keepers[arm] {
            0 => 0.0,
            kept => 1.0 / f64::from(kept),
        });
        if shares[0] + shares[1] > 0.0 {
            errors.add(start.0, start.1, shares[0] + shares[1]);
        }
        Judged {
            difference,
            standard_error: errors.variance.sqrt(),
            df: errors.df(),
        }
    }
}

/// Those that Holm's rule shows.
fn holm_shown(p: &[f64], tail: f64) -> Vec<usize> {
    let mut order: Vec<usize> = (0..p.len()).collect();
    order.sort_by(|&i, &j| p[i].total_cmp(&p[j]));
    let fails = |(done, at): (usize, &usize)| p[*at] * (p.len() - done) as f64 > tail;
    let shown = order.iter().enumerate().position(fails).unwrap_or(p.len());
    order.truncate(shown);
    order
}

/// Independent errors that add up.
#[derive(Default)]
struct Errors {
    variance: f64,
    /// Sum of the squared variances over their degrees of freedom.
    spread: f64,
    all_df: f64,
}

impl Errors {
    fn add(&mut self, squares: f64, df: f64, share: f64) {
        let variance = squares / df * share;
        self.variance += variance;
        self.spread += variance * variance / df;
        self.all_df += df;
    }

    fn df(&self) -> f64 {
        (self.variance * self.variance / self.spread).clamp(1.0, self.all_df)
    }
}

/// A difference with its error.
struct Judged {
    difference: f64,
    standard_error: f64,
    df: f64,
}

impl Judged {
    fn p_difference(&self) -> f64 {
        2.0 * quantile::student_above(self.difference.abs() / self.standard_error, self.df)
    }

    /// The greater of the two one-sided probabilities.
    fn p_equivalence(&self, margin: f64) -> f64 {
        quantile::student_above(
            (margin - self.difference.abs()) / self.standard_error,
            self.df,
        )
    }
}

/// Dunnett's limit as a probability of one two-sided test, by degrees of freedom.
struct Limits<'a> {
    dunnett: &'a Dunnett,
    tail: f64,
    known: [Option<f64>; GRID.len()],
}

/// Between these degrees of freedom the probability runs straight in their inverse.
const GRID: [f64; 13] = [
    1.0, 1.25, 1.6, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 20.0, 40.0, 200.0, 1e6,
];

impl<'a> Limits<'a> {
    fn of(dunnett: &'a Dunnett, tail: f64) -> Self {
        Self {
            dunnett,
            tail,
            known: [None; GRID.len()],
        }
    }

    fn at(&mut self, df: f64) -> f64 {
        let above = GRID
            .iter()
            .position(|grid| *grid > df)
            .unwrap_or(GRID.len() - 1)
            .max(1);
        let (low, high) = (1.0 / GRID[above], 1.0 / GRID[above - 1]);
        let part = ((1.0 / df - low) / (high - low)).clamp(0.0, 1.0);
        self.on_grid(above) * (1.0 - part) + self.on_grid(above - 1) * part
    }

    fn on_grid(&mut self, at: usize) -> f64 {
        let (dunnett, tail) = (self.dunnett, self.tail);
        *self.known[at].get_or_insert_with(|| {
            let df = GRID[at];
            2.0 * quantile::student_above(dunnett.limit(tail, df), df)
        })
    }
}

/// Draws one trial after the other, without the arms' effects.
struct Drawer<'a> {
    layout: &'a Layout,
    chance: Chance,
    piece_sd: f64,
    reading_sd: f64,
    load_sds: &'a [f64],
    /// Each piece's loads, counted from 0 through all kinds.
    loads: Vec<Vec<usize>>,
    /// The kind of each load.
    kinds: Vec<usize>,
    effects: Vec<f64>,
    /// Change of each piece, its arm's keepers left aside.
    changes: Vec<f64>,
    /// What the keepers of each arm read too much.
    keepers: Vec<f64>,
    /// Scatter at the start of each arm that has keepers: squares and degrees of freedom.
    starts: Vec<(f64, f64)>,
}

impl<'a> Drawer<'a> {
    fn of(layout: &'a Layout, truth: &'a Truth, seed: u64) -> Self {
        let mut numbers = BTreeMap::new();
        let mut kinds = Vec::new();
        let mut loads = Vec::new();
        for piece in &layout.pieces {
            let noted = piece.loads.iter().enumerate();
            let own = noted.filter_map(|(kind, load)| Some((kind, (*load)?)));
            let of_piece = own.map(|key| {
                *numbers.entry(key).or_insert_with(|| {
                    kinds.push(key.0);
                    kinds.len() - 1
                })
            });
            loads.push(of_piece.collect());
        }
        Self {
            chance: Chance::new(seed),
            piece_sd: truth.piece_sd,
            reading_sd: truth.reading_variance().sqrt(),
            load_sds: &truth.load_sds,
            effects: vec![0.0; kinds.len()],
            loads,
            kinds,
            changes: vec![0.0; layout.pieces.len()],
            keepers: vec![0.0; layout.arms],
            starts: vec![(0.0, 0.0); layout.arms],
            layout,
        }
    }

    fn draw(&mut self) {
        for (effect, kind) in self.effects.iter_mut().zip(&self.kinds) {
            *effect = self.load_sds[*kind] * self.chance.normal();
        }
        let mut sums = vec![Sums::default(); self.layout.arms];
        // Against its own start, a piece is read twice.
        let against_start =
            (self.piece_sd * self.piece_sd + 2.0 * self.reading_sd * self.reading_sd).sqrt();
        for (at, piece) in self.layout.pieces.iter().enumerate() {
            let loads: f64 = self.loads[at].iter().map(|load| self.effects[*load]).sum();
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
    fn start_of(&self, arms: Option<[usize; 2]>) -> (f64, f64) {
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
