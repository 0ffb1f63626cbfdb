//! Permutation of groups: exact where the splits can be counted, by chance elsewhere.

mod vectors;

use crate::text;
pub use vectors::{
    Measure, signs, signs_by_chance, vectors, vectors_by_chance, vectors_within_loads,
};

use crate::{InferenceError, chance::Chance};

/// Values dealt out by chance at most, all draws together.
const MOST_DEALT: f64 = 2e9;
/// Splits counted one by one at most (two groups of 13 have about this many).
const MOST_SPLITS: f64 = 1.1e7;

/// How many ways of dealing the values into the two groups give means at least as
/// far apart as seen.
///
/// Where splits are drawn by chance, the one seen counts as one of them, so that the
/// probability is never too small and never 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Permutation {
    /// Splits with means at least as far apart, the one seen among them.
    pub as_extreme: u64,
    /// All splits, or all that were drawn and the one seen.
    pub splits: u64,
}

impl Permutation {
    /// Two-sided probability of means as far apart by chance alone.
    pub fn p(&self) -> f64 {
        self.as_extreme as f64 / self.splits as f64
    }
}

/// Counts all splits of the values of `a` and `b` into groups of the same sizes.
///
/// Differences within rounding of the one seen count as equal to it.
///
/// # Errors
/// An empty group, a value that is not finite, too many splits.
pub fn mean_difference(a: &[f64], b: &[f64]) -> Result<Permutation, InferenceError> {
    let least = a.len().min(b.len());
    let (values, limit) = centred(a, b)?;
    few_enough(choose(a.len() + b.len(), least))?;
    let mut count = Count {
        values: &values,
        limit,
        as_extreme: 0,
        splits: 0,
    };
    count.deal(0, least, 0.0);
    Ok(Permutation {
        as_extreme: count.as_extreme,
        splits: count.splits,
    })
}

/// Deals the values of `a` and `b` into groups of the same sizes by chance, `draws`
/// times, from a seed.
///
/// Takes time in proportion to `draws` times values; 10,000 draws tell a probability of
/// 0.05 to 0.004.
///
/// # Errors
/// An empty group, a value that is not finite, no draw, more than 2e9 values dealt in
/// all.
///
/// # Source
/// The count of the split seen: M. Dwass, Annals of Mathematical Statistics 28 (1957)
/// 181-187.
pub fn mean_difference_by_chance(
    a: &[f64],
    b: &[f64],
    draws: u64,
    seed: u64,
) -> Result<Permutation, InferenceError> {
    let (mut values, limit) = centred(a, b)?;
    dealable(draws, values.len())?;
    let mut chance = Chance::new(seed);
    let (count, least) = (values.len(), a.len().min(b.len()));
    let mut as_extreme = 1;
    for _ in 0..draws {
        // Only the smaller group has to be dealt.
        let mut sum = 0.0;
        for at in 0..least {
            values.swap(at, at + chance.below(count - at));
            sum += values[at];
        }
        as_extreme += u64::from(sum.abs() >= limit);
    }
    Ok(Permutation {
        as_extreme,
        splits: draws + 1,
    })
}

/// The values less their mean, and how far a group's sum has to be from 0 to count.
fn centred(a: &[f64], b: &[f64]) -> Result<(Vec<f64>, f64), InferenceError> {
    if a.is_empty() || b.is_empty() {
        return Err(InferenceError::TooFew { given: 0, least: 1 });
    }
    if a.iter().chain(b).any(|v| !v.is_finite()) {
        return Err(InferenceError::NotFinite);
    }
    let mut values: Vec<f64> = a.iter().chain(b).copied().collect();
    let centre = values.iter().sum::<f64>() / values.len() as f64;
    values.iter_mut().for_each(|v| *v -= centre);
    // Of centred values one group's sum tells the difference of the means.
    let seen = values[..a.len()].iter().sum::<f64>().abs();
    let size = values.iter().map(|v| v.abs()).sum::<f64>();
    Ok((values, seen - 1e-12 * size))
}

fn few_enough(splits: f64) -> Result<(), InferenceError> {
    if splits > MOST_SPLITS {
        return Err(InferenceError::TooManySplits {
            splits,
            most: MOST_SPLITS,
        });
    }
    Ok(())
}

fn dealable(draws: u64, values: usize) -> Result<(), InferenceError> {
    InferenceError::unless(
        draws > 0,
        text::error::number_of_draws(),
        0.0,
        text::error::n_1_or_more(),
    )?;
    let dealt = draws as f64 * values as f64;
    InferenceError::unless(
        dealt <= MOST_DEALT,
        text::error::number_of_draws_times_values(),
        dealt,
        text::error::at_most_2e9(),
    )
}

struct Count<'a> {
    values: &'a [f64],
    limit: f64,
    as_extreme: u64,
    splits: u64,
}

impl Count<'_> {
    fn deal(&mut self, from: usize, left: usize, sum: f64) {
        if left == 0 {
            self.splits += 1;
            self.as_extreme += u64::from(sum.abs() >= self.limit);
            return;
        }
        for i in from..=self.values.len() - left {
            self.deal(i + 1, left - 1, sum + self.values[i]);
        }
    }
}

fn choose(n: usize, k: usize) -> f64 {
    (0..k).fold(1.0, |c, i| c * (n - i) as f64 / (i + 1) as f64)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn too_many_splits_are_refused() {
        let many = [0.5; 40];
        assert!(matches!(
            mean_difference(&many, &many),
            Err(InferenceError::TooManySplits { .. })
        ));
    }

    #[test]
    fn draws_come_near_the_count_of_all_splits() {
        let (a, b) = ([2.1, 1.9, 2.4, 2.0, 2.3], [2.2, 2.6, 2.9, 2.4, 2.5, 2.3]);
        let exact = mean_difference(&a, &b).unwrap().p();
        let drawn = mean_difference_by_chance(&a, &b, 40_000, 8).unwrap();
        assert!((drawn.p() - exact).abs() < 0.004, "{} {exact}", drawn.p());
        assert_eq!(drawn, mean_difference_by_chance(&a, &b, 40_000, 8).unwrap());
        let far = mean_difference_by_chance(&[0.0; 30], &[1.0; 30], 99, 1).unwrap();
        assert_eq!(far.p(), 0.01);
        assert!(mean_difference_by_chance(&a, &b, 0, 8).is_err());
        assert!(mean_difference_by_chance(&[0.0; 1000], &b, u64::MAX, 8).is_err());
    }

    proptest! {
        #[test]
        fn groups_may_change_places(
            a in prop::collection::vec(-9.0..9.0, 1..6),
            b in prop::collection::vec(-9.0..9.0, 1..6),
        ) {
            let there = mean_difference(&a, &b).unwrap();
            prop_assert_eq!(there, mean_difference(&b, &a).unwrap());
            prop_assert!(there.as_extreme >= 1 && there.p() <= 1.0);
        }
    }
}
