//! Trials judged as the verdict judges, many times over.

use super::{
    Contrast, Design, Means, Outcome, Rate, Runs, ScatterOf, Truth, draw::Drawer, fit::Rest,
    limits::Limits,
};
use crate::{InferenceError, quantile};

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
            .map(|dunnett| Limits::of(dunnett.clone(), runs.tail));
        let mut counts = vec![[0u32; 4]; self.contrasts.len()];
        let mut p = vec![1.0; self.family.len()];
        // Two trials before stand for the other two directions of the next.
        let mut before: Vec<[Judged; 2]> = vec![Default::default(); self.contrasts.len()];
        let unused = if truth.parts > 1 { 2 } else { 0 };
        for run in 0..runs.runs + unused {
            drawer.draw();
            let rests: Vec<Rest> = self
                .fits
                .iter()
                .map(|fit| fit.rest(&drawer.changes))
                .collect();
            let counts_now = run >= unused;
            for (p, &at) in p.iter_mut().zip(&self.family) {
                let judged = self.judge(at, truth, &drawer, &rests);
                *p = judged.p_difference();
                let shown = limits
                    .as_mut()
                    .is_some_and(|limits| *p <= limits.at(judged.df));
                let alike = truth.margin.is_some_and(|margin| {
                    let others = if truth.parts > 1 {
                        &before[at][..]
                    } else {
                        &[]
                    };
                    judged.p_equivalence(margin, others) <= runs.equivalence_tail
                });
                let Contrast { first, second, .. } = self.contrasts[at];
                let effect = truth.effects[second] - truth.effects[first];
                before[at] = [judged.less(effect), before[at][0]];
                if counts_now {
                    counts[at][0] += u32::from(*p <= runs.tail);
                    counts[at][2] += u32::from(shown);
                    counts[at][3] += u32::from(alike);
                }
            }
            if !counts_now {
                continue;
            }
            for at in holm_shown(&p, runs.tail) {
                counts[self.family[at]][1] += 1;
            }
        }
        let outcome = |(contrast, count): (&Contrast, &[u32; 4])| Outcome {
            contrast: *contrast,
            difference: Rate::of(count[0], runs.runs),
            difference_holm: Rate::of(count[1], runs.runs),
            difference_dunnett: limits.is_some().then(|| Rate::of(count[2], runs.runs)),
            equivalence: truth.margin.map(|_| Rate::of(count[3], runs.runs)),
        };
        Ok(self.contrasts.iter().zip(&counts).map(outcome).collect())
    }

    fn judge(&self, at: usize, truth: &Truth, drawer: &Drawer, rests: &[Rest]) -> Judged {
        let Contrast { first, second, .. } = self.contrasts[at];
        let mut difference = truth.effects[second] - truth.effects[first];
        difference -= drawer.keepers[second] - drawer.keepers[first];
        let mut errors = Errors::default();
        let start = drawer.start_of(match self.layout.scatter {
            ScatterOf::AllArms => None,
            ScatterOf::EachPair => Some([first, second]),
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
#[derive(Clone, Copy, Default)]
struct Judged {
    difference: f64,
    standard_error: f64,
    df: f64,
}

impl Judged {
    fn less(self, effect: f64) -> Self {
        Self {
            difference: self.difference - effect,
            ..self
        }
    }

    fn p_difference(&self) -> f64 {
        2.0 * quantile::student_above(self.difference.abs() / self.standard_error, self.df)
    }

    /// How often as small a difference comes of one at the margin: that of this
    /// direction, and of the length that it makes with those of others.
    fn p_equivalence(&self, margin: f64, others: &[Self]) -> f64 {
        let below =
            |length: f64, error: f64| quantile::student_above((margin - length) / error, self.df);
        let alone = below(self.difference.abs(), self.standard_error);
        if others.is_empty() {
            return alone;
        }
        let all = || std::iter::once(self).chain(others);
        let square: f64 = all().map(|one| one.difference * one.difference).sum();
        let error: f64 = all()
            .map(|one| (one.difference * one.standard_error).powi(2) / square)
            .sum();
        alone.max(below(square.sqrt(), error.sqrt()))
    }
}

#[cfg(test)]
mod tests;
