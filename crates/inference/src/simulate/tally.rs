//! What drawn trials show in one case, counted.

use super::{
    Case, Contrast, Design, Outcome, Rate, Runs, critical::Critical, limits::Limits, run::Judged,
};
use crate::quantile;

/// How strictly contrasts are judged, with the limits that were worked out so far.
pub(super) struct Strictness {
    /// Two-sided tests, the level divided by 1, by 2 and so on, as Holm's rule asks.
    shares: Vec<Critical>,
    equivalence: Critical,
    dunnett: Option<Limits>,
}

/// Counts of one case.
pub(super) struct Tally<'a> {
    design: &'a Design,
    case: &'a Case,
    /// What the case adds to each contrast that can be shown.
    effects: Vec<f64>,
    /// How many of this trial's tests each of those contrasts would stand.
    stood: Vec<usize>,
    /// By those contrasts: shown alone, by Holm's rule, by Dunnett's limit; alike.
    counts: Vec<[u32; 4]>,
}

impl Strictness {
    pub(super) fn of(design: &Design, runs: &Runs) -> Self {
        let share = |tests: usize| Critical::at(runs.tail / (2 * tests) as f64);
        let dunnett = design.dunnett.clone();
        Self {
            shares: (1..=design.family.len()).map(share).collect(),
            equivalence: Critical::at(runs.equivalence_tail),
            dunnett: dunnett.map(|dunnett| Limits::of(dunnett, runs.tail)),
        }
    }

    /// How many tests that are all held to account the contrast would stand: 0 if it
    /// isn't shown even alone.
    fn stands(&mut self, judged: Judged) -> usize {
        let (mut stood, mut fails) = (0, self.shares.len() + 1);
        while fails - stood > 1 {
            // Most pass all tests or none, so that both ends come first.
            let tests = match (stood, fails - 1) {
                (0, _) => 1,
                (1, all) => all,
                _ => stood + (fails - stood) / 2,
            };
            if self.shares[tests - 1].passed(judged.t(), judged.df) {
                stood = tests;
            } else {
                fails = tests;
            }
        }
        stood
    }

    fn alone(&mut self, judged: Judged) -> bool {
        self.shares[0].passed(judged.t(), judged.df)
    }

    /// By Dunnett's limit, which lies between that of one test and that of as many as
    /// there are.
    fn dunnett(&mut self, judged: Judged, stands: usize) -> bool {
        let Some(limits) = &mut self.dunnett else {
            return false;
        };
        match stands {
            0 => false,
            all if all == self.shares.len() => true,
            _ => 2.0 * quantile::student_above(judged.t(), judged.df) <= limits.at(judged.df),
        }
    }

    /// As small a difference hardly comes of one at the margin: that of this
    /// direction, and of the length that it makes with those of others.
    fn alike(&mut self, judged: Judged, margin: f64, others: &[Judged]) -> bool {
        let mut below = |length: f64, error: f64| {
            self.equivalence
                .passed((margin - length) / error, judged.df)
        };
        if !below(judged.difference.abs(), judged.standard_error) {
            return false;
        }
        if others.is_empty() {
            return true;
        }
        let all = || std::iter::once(&judged).chain(others);
        let square: f64 = all().map(|one| one.difference * one.difference).sum();
        let error: f64 = all()
            .map(|one| (one.difference * one.standard_error).powi(2) / square)
            .sum();
        below(square.sqrt(), error.sqrt())
    }
}

impl<'a> Tally<'a> {
    pub(super) fn of(design: &'a Design, case: &'a Case) -> Self {
        let effect = |at: &usize| {
            let Contrast { first, second, .. } = design.contrasts[*at];
            case.effects[second] - case.effects[first]
        };
        Self {
            design,
            case,
            effects: design.family.iter().map(effect).collect(),
            stood: vec![0; design.family.len()],
            counts: vec![[0; 4]; design.family.len()],
        }
    }

    /// Counts one contrast of a trial, by its place among those that can be shown.
    pub(super) fn add(
        &mut self,
        at: usize,
        drawn: Judged,
        others: &[Judged],
        strictness: &mut Strictness,
    ) {
        let judged = Judged {
            difference: drawn.difference + self.effects[at],
            ..drawn
        };
        let count = &mut self.counts[at];
        if self.case.together {
            let stands = strictness.stands(judged);
            self.stood[at] = stands;
            count[0] += u32::from(stands > 0);
            count[2] += u32::from(strictness.dunnett(judged, stands));
        } else {
            count[0] += u32::from(strictness.alone(judged));
        }
        if let Some(margin) = self.case.margin {
            count[3] += u32::from(strictness.alike(judged, margin, others));
        }
    }

    /// Counts what all contrasts of a trial show together.
    pub(super) fn end_of_trial(&mut self) {
        if self.case.together {
            for at in holm_shown(&self.stood) {
                self.counts[at][1] += 1;
            }
        }
    }

    /// The shares of so many trials, for every contrast of the layout.
    pub(super) fn outcomes(self, runs: u32) -> Vec<Outcome> {
        let rate = |count: u32| Rate::of(count, runs);
        let outcome = |(at, contrast): (usize, &Contrast)| {
            let place = self.design.family.binary_search(&at);
            let count = place.map_or([0; 4], |place| self.counts[place]);
            let together = |count: u32| self.case.together.then(|| rate(count));
            Outcome {
                contrast: *contrast,
                difference: rate(count[0]),
                difference_holm: together(count[1]),
                difference_dunnett: self.design.dunnett.as_ref().and(together(count[2])),
                equivalence: self.case.margin.map(|_| rate(count[3])),
            }
        };
        let contrasts = self.design.contrasts.iter().enumerate();
        contrasts.map(outcome).collect()
    }
}

/// Those that Holm's rule shows, by how many tests each would stand.
fn holm_shown(stood: &[usize]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..stood.len()).filter(|at| stood[*at] > 0).collect();
    order.sort_by_key(|at| std::cmp::Reverse(stood[*at]));
    let fails = |(done, at): (usize, &usize)| stood[*at] + done < stood.len();
    let shown = order.iter().enumerate().position(fails);
    order.truncate(shown.unwrap_or(order.len()));
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn holm_shows_what_its_adjusted_probabilities_show() {
        for p in [
            vec![0.01, 0.02, 0.04],
            vec![0.03, 0.02, 0.3, 0.001],
            vec![0.02, 0.03, 0.012, 0.2],
            vec![0.2],
            vec![],
        ] {
            let adjusted = crate::holm::adjusted(&p).unwrap();
            let stood: Vec<usize> = p
                .iter()
                .map(|p| {
                    let stands = |tests: &usize| p * *tests as f64 <= 0.05;
                    (1..=adjusted.len()).take_while(stands).count()
                })
                .collect();
            let mut shown = holm_shown(&stood);
            shown.sort_unstable();
            let expected: Vec<usize> = (0..p.len()).filter(|at| adjusted[*at] <= 0.05).collect();
            assert_eq!(shown, expected);
        }
    }
}
