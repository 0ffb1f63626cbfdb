//! Trials judged as the verdict judges, many times over.

use super::{
    Case, Contrast, Design, Means, Outcome, Runs, ScatterOf, Truth,
    draw::Drawer,
    fit::{Fit, Rest},
    tally::{Strictness, Tally},
};
use crate::InferenceError;

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
        let case = Case {
            effects: truth.effects.clone(),
            margin: truth.margin,
            together: true,
        };
        let mut outcomes = self.simulate_each(truth, &[case], runs)?;
        Ok(outcomes.pop().unwrap_or_default())
    }

    /// The same for several cases, which the same drawn trials are judged by: each
    /// gets what [`Design::simulate`] gives it, while chance is drawn and fitted but
    /// once. Effects and margin of the truth itself aren't looked at.
    ///
    /// # Errors
    /// As above.
    pub fn simulate_each(
        &self,
        truth: &Truth,
        cases: &[Case],
        runs: &Runs,
    ) -> Result<Vec<Vec<Outcome>>, InferenceError> {
        for case in cases {
            case.of(truth).check(&self.layout)?;
        }
        runs.check(self.layout.pieces.len())?;
        let mut drawer = Drawer::of(&self.layout, truth, runs.seed);
        let mut strictness = Strictness::of(self, runs);
        let mut tallies: Vec<Tally> = cases.iter().map(|case| Tally::of(self, case)).collect();
        let mut rests: Vec<Rest> = self.fits.iter().map(Fit::nothing).collect();
        // Two trials before stand for the other two directions of the next.
        let mut before: Vec<[Judged; 2]> = vec![Default::default(); self.family.len()];
        let (unused, others) = if truth.parts > 1 { (2, 2) } else { (0, 0) };
        for run in 0..runs.runs + unused {
            drawer.draw();
            for (fit, rest) in self.fits.iter().zip(&mut rests) {
                fit.rest(&drawer.changes, rest);
            }
            for (at, before) in before.iter_mut().enumerate() {
                let judged = self.judge(self.family[at], &drawer, &rests);
                if run >= unused {
                    for tally in &mut tallies {
                        tally.add(at, judged, &before[..others], &mut strictness);
                    }
                }
                *before = [judged, before[0]];
            }
            if run >= unused {
                for tally in &mut tallies {
                    tally.end_of_trial();
                }
            }
        }
        let outcomes = |tally: Tally| tally.outcomes(runs.runs);
        Ok(tallies.into_iter().map(outcomes).collect())
    }

    /// The difference of two arms as drawn, their true effects left aside.
    fn judge(&self, at: usize, drawer: &Drawer, rests: &[Rest]) -> Judged {
        let Contrast { first, second, .. } = self.contrasts[at];
        let mut difference = drawer.keepers[first] - drawer.keepers[second];
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
pub(super) struct Judged {
    pub(super) difference: f64,
    pub(super) standard_error: f64,
    pub(super) df: f64,
}

impl Judged {
    /// The difference in its standard errors.
    pub(super) fn t(&self) -> f64 {
        self.difference.abs() / self.standard_error
    }
}

#[cfg(test)]
mod tests;
