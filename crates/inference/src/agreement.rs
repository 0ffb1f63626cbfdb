//! How far people agree who sort the same things into ordered categories.
//!
//! Agreement is counted beyond what chance brings when each keeps to their own habits:
//! 1 is perfect, 0 is chance. For grades of a grey scale, categories are its half-steps
//! from worst to best; squared weights make two half-steps apart four times as bad
//! as one.

mod several;

use crate::text;
pub use several::{Several, alpha};

use crate::{InferenceError, Interval, quantile};

/// Categories at most.
const MOST_CATEGORIES: usize = 200;

/// How bad it is to be some categories apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Apart {
    /// All that is not the same is as bad: for categories without an order.
    Other,
    /// As many times as bad as there are steps between.
    Steps,
    /// By the square of the steps between: common for grades.
    SquaredSteps,
}

impl Apart {
    /// From 0 (the same) upward.
    fn between(self, one: usize, other: usize) -> f64 {
        let steps = one.abs_diff(other) as f64;
        match self {
            Self::Other => f64::from(one != other),
            Self::Steps => steps,
            Self::SquaredSteps => steps * steps,
        }
    }
}

/// Agreement of two people (or of a person and an instrument), by weighted kappa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kappa {
    /// The coefficient, 1 at most; below 0 it is worse than chance.
    pub kappa: f64,
    /// Its standard error; 0 where all pairs agree, which is no proof of perfection.
    pub standard_error: f64,
    /// Its standard error if there were no agreement but by chance.
    pub standard_error_of_none: f64,
    /// Things that both judged.
    pub pairs: usize,
}

/// Weighted kappa of the categories (counted from 0) that two people gave each thing.
///
/// # Errors
/// Fewer than two pairs; a category that is not below `categories`; more than 200
/// categories; both always gave one and the same, which leaves nothing to agree about.
///
/// # Source
/// J. L. Fleiss, J. Cohen and B. S. Everitt, Psychological Bulletin 72 (1969) 323-327:
/// standard errors for many pairs. With fewer than some 20 they are rough.
///
/// ```
/// use inference::agreement::{Apart, kappa};
/// let pairs = [(0, 0), (1, 1), (2, 1), (2, 2), (3, 3), (3, 2), (4, 4), (1, 0)];
/// let found = kappa(&pairs, 5, Apart::SquaredSteps)?;
/// assert_eq!(format!("{:.2}", found.kappa), "0.89");
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn kappa(
    pairs: &[(usize, usize)],
    categories: usize,
    apart: Apart,
) -> Result<Kappa, InferenceError> {
    if pairs.len() < 2 {
        return Err(InferenceError::TooFew {
            given: pairs.len(),
            least: 2,
        });
    }
    check(pairs.iter().flat_map(|(a, b)| [*a, *b]), categories)?;
    let count = pairs.len() as f64;
    let mut cells = vec![0.0; categories * categories];
    let (mut rows, mut columns) = (vec![0.0; categories], vec![0.0; categories]);
    for &(a, b) in pairs {
        cells[a * categories + b] += 1.0 / count;
        rows[a] += 1.0 / count;
        columns[b] += 1.0 / count;
    }
    // Weights of agreement: 1 where the same, 0 where farthest apart.
    let most = apart.between(0, categories - 1).max(1.0);
    let weight = |i: usize, j: usize| 1.0 - apart.between(i, j) / most;
    let sum = |of: &dyn Fn(usize, usize) -> f64| -> f64 {
        let places = (0..categories).flat_map(|i| (0..categories).map(move |j| (i, j)));
        places.map(|(i, j)| of(i, j)).sum()
    };
    let seen = sum(&|i, j| cells[i * categories + j] * weight(i, j));
    let chance = sum(&|i, j| rows[i] * columns[j] * weight(i, j));
    let room = 1.0 - chance;
    if room < 1e-12 {
        return Err(InferenceError::NoScatter);
    }
    let of_rows: Vec<f64> = (0..categories)
        .map(|i| (0..categories).map(|j| columns[j] * weight(i, j)).sum())
        .collect();
    let of_columns: Vec<f64> = (0..categories)
        .map(|j| (0..categories).map(|i| rows[i] * weight(i, j)).sum())
        .collect();
    let spread = sum(&|i, j| {
        let own = weight(i, j) * room - (of_rows[i] + of_columns[j]) * (1.0 - seen);
        cells[i * categories + j] * own * own
    });
    let middle = seen * chance - 2.0 * chance + seen;
    let none = sum(&|i, j| {
        let own = weight(i, j) - (of_rows[i] + of_columns[j]);
        rows[i] * columns[j] * own * own
    });
    let root = |variance: f64| (variance.max(0.0) / count).sqrt();
    Ok(Kappa {
        kappa: (seen - chance) / room,
        // All pairs agree: the rest is rounding.
        standard_error: if seen > 1.0 - 1e-12 {
            0.0
        } else {
            root(spread - middle * middle) / (room * room)
        },
        standard_error_of_none: root(none - chance * chance) / room,
        pairs: pairs.len(),
    })
}

impl Kappa {
    /// Two-sided interval of the agreement at that level, such as 0.95, within -1 and 1.
    /// None where all pairs agree: how seldom they don't can't be told from that.
    pub fn interval(&self, level: f64) -> Option<Interval> {
        let half = quantile::normal(0.5 + level / 2.0) * self.standard_error;
        (half > 0.0).then(|| Interval {
            low: (self.kappa - half).max(-1.0),
            high: (self.kappa + half).min(1.0),
        })
    }

    /// Two-sided probability of agreement (or its opposite) as strong by chance alone.
    pub fn p(&self) -> f64 {
        if self.standard_error_of_none > 0.0 {
            let z = self.kappa / self.standard_error_of_none;
            2.0 * quantile::normal_above(z.abs())
        } else {
            1.0
        }
    }
}

fn check(mut given: impl Iterator<Item = usize>, categories: usize) -> Result<(), InferenceError> {
    let count = categories as f64;
    let fine = (2..=MOST_CATEGORIES).contains(&categories);
    InferenceError::unless(
        fine,
        text::error::number_of_categories(),
        count,
        text::error::from_2_to_200(),
    )?;
    match given.find(|category| *category >= categories) {
        Some(odd) => InferenceError::unless(
            false,
            text::error::category(),
            odd as f64,
            text::error::below_the_number_of_categories_counted(),
        ),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_says_nothing_is_refused() {
        let same = [(2, 2); 9];
        assert_eq!(
            kappa(&same, 5, Apart::Steps),
            Err(InferenceError::NoScatter)
        );
        assert!(kappa(&[(0, 1)], 5, Apart::Steps).is_err());
        let odd = kappa(&[(0, 5), (1, 1)], 5, Apart::Steps).unwrap_err();
        assert!(odd.to_string().starts_with("the category is 5"));
        assert!(kappa(&[(0, 0), (0, 0)], 1, Apart::Steps).is_err());
    }

    #[test]
    fn perfect_agreement_has_no_interval() {
        let found = kappa(&[(0, 0), (1, 1), (2, 2), (3, 3)], 5, Apart::SquaredSteps).unwrap();
        assert_eq!((found.kappa, found.interval(0.95)), (1.0, None));
        assert!(found.p() < 0.2);
    }

    proptest! {
        #[test]
        fn judges_may_change_places_and_scales_be_turned(
            pairs in prop::collection::vec((0_usize..5, 0_usize..5), 4..30),
        ) {
            let swapped: Vec<_> = pairs.iter().map(|(a, b)| (4 - b, 4 - a)).collect();
            for apart in [Apart::Other, Apart::Steps, Apart::SquaredSteps] {
                let (one, other) = (kappa(&pairs, 5, apart), kappa(&swapped, 5, apart));
                prop_assert_eq!(one.is_ok(), other.is_ok());
                if let (Ok(one), Ok(other)) = (one, other) {
                    prop_assert!(one.kappa <= 1.0 + 1e-12);
                    prop_assert!((one.kappa - other.kappa).abs() < 1e-9);
                    prop_assert!((one.standard_error - other.standard_error).abs() < 1e-6);
                }
            }
        }
    }
}
