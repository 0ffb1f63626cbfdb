//! What a design can't tell apart: how much of the difference of two arms is left
//! once everything else that differs with them is allowed for.
//!
//! Every unit belongs to one arm and, in each nuisance factor (a bath, a wash, a
//! day, a place), to one level. Fitted by least squares with all of them as
//! additive parts, two arms keep a share of their information: 1 where the factor
//! is balanced over them, 0 where it is the same split as the arms, so that no
//! number of units could tell one from the other.

use crate::InferenceError;
use nalgebra::{DMatrix, DVector};
use std::collections::BTreeMap;

/// Levels of all factors together that are still worked out.
const MOST_LEVELS: usize = 600;
/// Eigenvalues below this share of the greatest count as 0.
const ZERO: f64 = 1e-9;
/// A contrast is estimable if this share of it at most lies outside of what the
/// design tells.
const OUTSIDE: f64 = 1e-6;

/// How much of two arms' difference a design leaves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kept {
    /// The arms' numbers, the smaller first.
    pub arms: (usize, usize),
    /// The variance of their difference without the factors over that with them:
    /// 1 balanced, 0 wholly aliased.
    pub efficiency: f64,
}

/// For every pair of arms, what is left of their difference with `factors`
/// allowed for. `arms[i]` is the arm of unit i; `factors[f][i]` its level of
/// factor f. Numbers need not be consecutive.
///
/// # Errors
/// No units, factors of another length, or more than 600 levels.
///
/// # Source
/// Reduced normal equations of a block design; the ratio is its pairwise
/// efficiency factor (general least squares, common practice).
///
/// ```
/// // Two arms, two washes. Each wash holds both arms ...
/// let kept = inference::alias::kept(&[0, 0, 1, 1], &[&[0, 1, 0, 1]])?;
/// assert_eq!(kept[0].efficiency, 1.0);
/// // ... or one arm each: arm and wash are the same split.
/// let kept = inference::alias::kept(&[0, 0, 1, 1], &[&[0, 0, 1, 1]])?;
/// assert_eq!(kept[0].efficiency, 0.0);
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn kept(arms: &[usize], factors: &[&[usize]]) -> Result<Vec<Kept>, InferenceError> {
    if arms.is_empty() {
        return Err(InferenceError::TooFew { given: 0, least: 1 });
    }
    if let Some(factor) = factors.iter().find(|factor| factor.len() != arms.len()) {
        return Err(InferenceError::Unequal {
            left: arms.len(),
            right: factor.len(),
        });
    }
    let (numbers, arms) = numbered(arms);
    let mut columns = Vec::new();
    let mut levels = 0;
    for factor in factors {
        let (names, of_units) = numbered(factor);
        columns.push(
            of_units
                .into_iter()
                .map(|level| level + levels)
                .collect::<Vec<_>>(),
        );
        levels += names.len();
    }
    if levels > MOST_LEVELS {
        return Err(InferenceError::TooManyLevels {
            given: levels,
            most: MOST_LEVELS,
        });
    }
    let counts = Counts::of(&arms, numbers.len(), &columns, levels);
    let information =
        &counts.arms - &counts.across * inverse(&counts.levels) * counts.across.transpose();
    let variance = inverse(&information);
    let range = &information * &variance;
    let mut kept = Vec::new();
    for a in 0..numbers.len() {
        for b in a + 1..numbers.len() {
            let mut contrast = DVector::zeros(numbers.len());
            contrast[a] = 1.0;
            contrast[b] = -1.0;
            let outside = (&contrast - &range * &contrast).norm_squared() / 2.0;
            let plain = 1.0 / counts.arms[(a, a)] + 1.0 / counts.arms[(b, b)];
            let with = contrast.dot(&(&variance * &contrast));
            let efficiency = if outside > OUTSIDE || with <= 0.0 {
                0.0
            } else {
                round_off((plain / with).clamp(0.0, 1.0))
            };
            kept.push(Kept {
                arms: (numbers[a], numbers[b]),
                efficiency,
            });
        }
    }
    Ok(kept)
}

/// Units by arm, by level and by both.
struct Counts {
    arms: DMatrix<f64>,
    across: DMatrix<f64>,
    levels: DMatrix<f64>,
}

impl Counts {
    fn of(arms: &[usize], n_arms: usize, columns: &[Vec<usize>], levels: usize) -> Self {
        // A column of ones stands for the mean where there is no factor.
        let mut counts = Self {
            arms: DMatrix::zeros(n_arms, n_arms),
            across: DMatrix::zeros(n_arms, levels + 1),
            levels: DMatrix::zeros(levels + 1, levels + 1),
        };
        for (unit, &arm) in arms.iter().enumerate() {
            counts.arms[(arm, arm)] += 1.0;
            let own = columns.iter().map(|column| column[unit]).chain([levels]);
            for level in own.clone() {
                counts.across[(arm, level)] += 1.0;
                for other in own.clone() {
                    counts.levels[(level, other)] += 1.0;
                }
            }
        }
        counts
    }
}

/// Numbers in order, and for each unit its place among them.
fn numbered(given: &[usize]) -> (Vec<usize>, Vec<usize>) {
    let places: BTreeMap<usize, usize> = given.iter().map(|&number| (number, 0)).collect();
    let numbers: Vec<usize> = places.into_keys().collect();
    let units = given
        .iter()
        .map(|number| numbers.partition_point(|other| other < number))
        .collect();
    (numbers, units)
}

/// The Moore-Penrose inverse of a symmetric matrix without negative eigenvalues.
fn inverse(matrix: &DMatrix<f64>) -> DMatrix<f64> {
    let eigen = matrix.clone().symmetric_eigen();
    let limit = eigen.eigenvalues.amax() * ZERO;
    let inverted = eigen
        .eigenvalues
        .map(|value| if value > limit { 1.0 / value } else { 0.0 });
    &eigen.eigenvectors * DMatrix::from_diagonal(&inverted) * eigen.eigenvectors.transpose()
}

/// Takes away what floating point adds to figures that are whole by design.
fn round_off(value: f64) -> f64 {
    libm::round(value * 1e9) / 1e9
}

#[cfg(test)]
mod tests {
    use super::*;

    fn efficiency(arms: &[usize], factors: &[&[usize]]) -> f64 {
        kept(arms, factors).unwrap()[0].efficiency
    }

    /// Cochran and Cox, Experimental Designs (from memory): a balanced incomplete
    /// block design of t treatments in blocks of k has the efficiency
    /// t (k - 1) / (k (t - 1)); 3 in blocks of 2: 3/4. Of 4 in blocks of 3: 8/9.
    #[test]
    fn balanced_incomplete_blocks_have_the_textbook_efficiency() {
        let three = kept(&[0, 1, 0, 2, 1, 2], &[&[0, 0, 1, 1, 2, 2]]).unwrap();
        assert!(
            three.iter().all(|pair| pair.efficiency == 0.75),
            "{three:?}"
        );
        let four = kept(
            &[0, 1, 2, 0, 1, 3, 0, 2, 3, 1, 2, 3],
            &[&[0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3]],
        )
        .unwrap();
        assert_eq!(four.len(), 6);
        for pair in four {
            assert!((pair.efficiency - 8.0 / 9.0).abs() < 1e-8, "{pair:?}");
        }
    }

    #[test]
    fn no_factor_takes_nothing_and_the_arms_themselves_take_all() {
        assert_eq!(efficiency(&[0, 0, 1, 1, 1], &[]), 1.0);
        assert_eq!(efficiency(&[0, 0, 1, 1], &[&[7, 7, 9, 9]]), 0.0);
        // Loads of its own for each arm: as fixed parts they leave nothing.
        assert_eq!(efficiency(&[0, 0, 1, 1], &[&[0, 1, 2, 3]]), 0.0);
    }

    #[test]
    fn two_factors_may_hide_together_what_neither_hides_alone() {
        // One piece of arm 1 was washed apart, the other one photographed apart.
        let arms = [1, 1, 0, 0];
        let (wash, day) = ([1, 0, 0, 0], [0, 1, 0, 0]);
        assert!((efficiency(&arms, &[&wash]) - 2.0 / 3.0).abs() < 1e-9);
        assert!((efficiency(&arms, &[&day]) - 2.0 / 3.0).abs() < 1e-9);
        assert_eq!(efficiency(&arms, &[&wash, &day]), 0.0);
    }

    #[test]
    fn unequal_splits_take_a_part() {
        let found = efficiency(&[0, 0, 0, 0, 1, 1, 1, 1], &[&[0, 0, 0, 1, 0, 1, 1, 1]]);
        // One factor of two levels: 1 - correlation squared = 1 - (1/2)^2.
        assert!((found - 0.75).abs() < 1e-9, "{found}");
    }

    #[test]
    fn thousands_of_units_and_bad_input() {
        let arms: Vec<usize> = (0..10_000).map(|i| i % 4).collect();
        let loads: Vec<usize> = (0..10_000).map(|i| i / 100).collect();
        assert_eq!(kept(&arms, &[&loads]).unwrap().len(), 6);
        let each: Vec<usize> = (0..10_000).collect();
        assert!(kept(&arms, &[&each]).is_err());
        assert!(kept(&[], &[]).is_err());
        assert!(kept(&[0, 1], &[&[0]]).is_err());
    }
}
