//! Exact permutation of two groups.

use crate::InferenceError;

/// Splits counted one by one at most (two groups of 13 have about this many).
const MOST_SPLITS: f64 = 1.1e7;

/// How many ways of dealing the values into the two groups give means at least as
/// far apart as seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Permutation {
    /// Splits with means at least as far apart, the one seen among them.
    pub as_extreme: u64,
    /// All splits.
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
    if least == 0 {
        return Err(InferenceError::TooFew { given: 0, least: 1 });
    }
    if a.iter().chain(b).any(|v| !v.is_finite()) {
        return Err(InferenceError::NotFinite);
    }
    let splits = choose(a.len() + b.len(), least);
    if splits > MOST_SPLITS {
        return Err(InferenceError::TooManySplits {
            splits,
            most: MOST_SPLITS,
        });
    }
    let mut values: Vec<f64> = a.iter().chain(b).copied().collect();
    let centre = values.iter().sum::<f64>() / values.len() as f64;
    values.iter_mut().for_each(|v| *v -= centre);
    // Of centred values one group's sum tells the difference of the means.
    let seen = values[..a.len()].iter().sum::<f64>().abs();
    let size = values.iter().map(|v| v.abs()).sum::<f64>();
    let limit = seen - 1e-12 * size;
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
