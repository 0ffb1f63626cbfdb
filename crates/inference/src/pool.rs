//! Results of several trials of one question, pooled.
//!
//! Each trial found a value with a variance of its own. That the same question comes out
//! differently in other hands is a variance between trials, estimated from the values.
//! What is pooled is the mean over all trials that might be made; an interval for the
//! next trial is wider than the one for that mean.

use crate::text;
use crate::{InferenceError, Interval, quantile};

/// Steps of the search for a variance at most; it takes about ten.
const MOST_STEPS: usize = 200;
/// The variance between trials holds to this part of itself.
const NEAR: f64 = 1e-14;

/// What one trial found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Found {
    /// The value, such as a difference in CIEDE2000 units.
    pub value: f64,
    /// Its variance, the square of its standard error, above 0.
    pub variance: f64,
}

/// How the variance between trials is estimated.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Between {
    /// From the weighted squares of the values about their mean (DerSimonian and Laird,
    /// Controlled Clinical Trials 7 (1986) 177-188).
    Moments,
    /// Where the restricted likelihood is greatest.
    Restricted,
}

/// Several trials as one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pooled {
    /// The mean over trials.
    pub mean: f64,
    /// Its standard error, taking the variance between trials as known.
    pub standard_error: f64,
    /// Variance between trials, 0 upward, in squared units of the values.
    pub between: f64,
    /// Weighted squares of the values about their mean, had trials no variance between
    /// them: chi-squared then, with one degree of freedom less than there are trials.
    pub q: f64,
    /// The same squares with the variance between trials in the weights, by degree of
    /// freedom: about 1.
    pub spread: f64,
    /// How many trials.
    pub trials: usize,
}

/// Pools what two or more trials found.
///
/// # Errors
/// Fewer than two trials; a number that is not finite; a variance that is not above 0.
///
/// ```
/// use inference::pool::{Between, Found, pool};
///
/// let found = |value, variance| Found { value, variance };
/// let trials = [found(1.2, 0.04), found(0.7, 0.09), found(1.5, 0.06)];
/// let pooled = pool(&trials, Between::Restricted)?;
/// let interval = pooled.interval(0.95);
/// assert!(interval.low < pooled.mean && pooled.mean < interval.high);
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn pool(trials: &[Found], by: Between) -> Result<Pooled, InferenceError> {
    if trials.len() < 2 {
        return Err(InferenceError::TooFew {
            given: trials.len(),
            least: 2,
        });
    }
    for found in trials {
        if !(found.value.is_finite() && found.variance.is_finite()) {
            return Err(InferenceError::NotFinite);
        }
        let above = found.variance > 0.0;
        InferenceError::unless(
            above,
            text::error::variance_of_a_trial(),
            found.variance,
            text::error::above_0(),
        )?;
    }
    let plain = Weighted::of(trials, 0.0);
    let between = match by {
        Between::Moments => moments(trials, &plain),
        Between::Restricted => restricted(trials, moments(trials, &plain)),
    };
    let weighted = Weighted::of(trials, between);
    Ok(Pooled {
        mean: weighted.mean,
        standard_error: 1.0 / weighted.sum.sqrt(),
        between,
        q: plain.squares,
        spread: weighted.squares / (trials.len() - 1) as f64,
        trials: trials.len(),
    })
}

impl Pooled {
    /// How often trials without a variance between them scatter as much.
    pub fn q_p(&self) -> f64 {
        quantile::chi_square_above(self.q, self.df())
    }

    /// Which part of the values' scatter is more than their own errors explain, 0 to 1
    /// (Higgins and Thompson, Statistics in Medicine 21 (2002) 1539-1558).
    pub fn share_between(&self) -> f64 {
        if self.q <= self.df() {
            return 0.0;
        }
        (self.q - self.df()) / self.q
    }

    /// The standard error that also carries how little is known of the variance between
    /// few trials (Hartung and Knapp, Statistics in Medicine 20 (2001) 1771-1782).
    /// Where the values happen to lie closer than their errors say, it is smaller than
    /// the plain one.
    pub fn adjusted_error(&self) -> f64 {
        self.standard_error * self.spread.sqrt()
    }

    /// Interval of the mean at a level such as 0.95, by Student's t and the adjusted
    /// error, which is not let below the plain one.
    pub fn interval(&self, level: f64) -> Interval {
        let error = self.adjusted_error().max(self.standard_error);
        self.around(error, quantile::student(upper(level), self.df()))
    }

    /// The same by the adjusted error as it is.
    pub fn interval_as_adjusted(&self, level: f64) -> Interval {
        self.around(
            self.adjusted_error(),
            quantile::student(upper(level), self.df()),
        )
    }

    /// The interval for many trials, by the normal distribution: too short for few.
    pub fn interval_of_many(&self, level: f64) -> Interval {
        self.around(self.standard_error, quantile::normal(upper(level)))
    }

    /// Where the true value of one more trial is to be expected; none for two trials,
    /// from which that can't be told (Higgins, Thompson and Spiegelhalter, Journal of
    /// the Royal Statistical Society A 172 (2009) 137-159).
    pub fn next_one(&self, level: f64) -> Option<Interval> {
        let df = self.df() - 1.0;
        let error = (self.between + self.standard_error.powi(2)).sqrt();
        (df >= 1.0).then(|| self.around(error, quantile::student(upper(level), df)))
    }

    /// How often a mean of 0 shows as much, either way, by the adjusted error as it is.
    pub fn p(&self) -> f64 {
        let error = self.adjusted_error();
        if error == 0.0 {
            return if self.mean == 0.0 { 1.0 } else { 0.0 };
        }
        2.0 * quantile::student_above((self.mean / error).abs(), self.df())
    }

    fn df(&self) -> f64 {
        (self.trials - 1) as f64
    }

    fn around(&self, error: f64, times: f64) -> Interval {
        Interval {
            low: self.mean - times * error,
            high: self.mean + times * error,
        }
    }
}

fn upper(level: f64) -> f64 {
    0.5 + level / 2.0
}

/// Sums by weights of one over the variance.
struct Weighted {
    sum: f64,
    mean: f64,
    /// Weighted squares about the mean.
    squares: f64,
}

impl Weighted {
    fn of(trials: &[Found], between: f64) -> Self {
        let weight = |found: &Found| 1.0 / (found.variance + between);
        let sum: f64 = trials.iter().map(weight).sum();
        let mean = trials.iter().map(|f| weight(f) * f.value).sum::<f64>() / sum;
        let square = |f: &Found| weight(f) * (f.value - mean).powi(2);
        Self {
            sum,
            mean,
            squares: trials.iter().map(square).sum(),
        }
    }
}

fn moments(trials: &[Found], plain: &Weighted) -> f64 {
    let squared: f64 = trials.iter().map(|f| f.variance.powi(-2)).sum();
    let df = (trials.len() - 1) as f64;
    ((plain.squares - df) / (plain.sum - squared / plain.sum)).max(0.0)
}

/// By Fisher's scoring, beginning at `from`.
fn restricted(trials: &[Found], from: f64) -> f64 {
    let mut between = from;
    for _ in 0..MOST_STEPS {
        let weighted = Weighted::of(trials, between);
        let mut powers = [0.0; 2];
        let mut squares = 0.0;
        for found in trials {
            let weight = 1.0 / (found.variance + between);
            powers[0] += weight * weight;
            powers[1] += weight.powi(3);
            squares += (weight * (found.value - weighted.mean)).powi(2);
        }
        let share = powers[0] / weighted.sum;
        let slope = squares - weighted.sum + share;
        let bend = powers[0] - 2.0 * powers[1] / weighted.sum + share * share;
        let next = (between + slope / bend).max(0.0);
        let step = (next - between).abs();
        between = next;
        if step <= NEAR * between {
            break;
        }
    }
    between
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(values: &[f64], variance: f64) -> Vec<Found> {
        let of = |&value: &f64| Found { value, variance };
        values.iter().map(of).collect()
    }

    #[test]
    fn trials_that_agree_have_nothing_between_them() {
        for by in [Between::Moments, Between::Restricted] {
            let pooled = pool(&found(&[1.0, 1.0, 1.0], 0.09), by).unwrap();
            assert_eq!(pooled.between, 0.0);
            assert!((pooled.standard_error - 0.1f64.sqrt() * 0.3f64.sqrt()).abs() < 1e-12);
            assert_eq!((pooled.share_between(), pooled.q_p()), (0.0, 1.0));
            // Agreement by luck doesn't make the interval shorter than the errors say.
            assert_eq!(pooled.interval_as_adjusted(0.95).high, 1.0);
            assert!(pooled.interval(0.95).high > 1.7);
        }
    }

    #[test]
    fn equal_errors_give_the_plain_variance_of_values() {
        let values = [0.2, 1.4, 0.9, 2.2];
        let trials = found(&values, 0.04);
        let mean = values.iter().sum::<f64>() / 4.0;
        let square = values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / 3.0;
        for by in [Between::Moments, Between::Restricted] {
            let pooled = pool(&trials, by).unwrap();
            assert!((pooled.between - (square - 0.04)).abs() < 1e-12);
            assert!((pooled.mean - mean).abs() < 1e-12);
        }
    }

    #[test]
    fn nonsense_is_refused() {
        let by = Between::Moments;
        let few = InferenceError::TooFew { given: 1, least: 2 };
        assert_eq!(pool(&found(&[1.0], 0.1), by), Err(few));
        let not_finite = pool(&found(&[1.0, f64::NAN], 0.1), by);
        assert_eq!(not_finite, Err(InferenceError::NotFinite));
        let sure = pool(&found(&[1.0, 2.0], 0.0), by).unwrap_err();
        assert_eq!(
            sure.to_string(),
            "the variance of a trial is 0; it has to be above 0"
        );
        assert!(
            pool(&found(&[1.0, 2.0], 0.1), by)
                .unwrap()
                .next_one(0.95)
                .is_none()
        );
    }
}
