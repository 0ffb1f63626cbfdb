//! Agreement of any number of people, not all of whom judged everything.

use super::{Apart, check};
use crate::{InferenceError, Interval, quantile};

/// Agreement of several people.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Several {
    /// Krippendorff's alpha, 1 at most; below 0 it is worse than chance.
    pub alpha: f64,
    /// Its standard error, from leaving out one thing after another; 0 where all agree.
    pub standard_error: f64,
    /// Things that two or more people judged.
    pub things: usize,
    /// Judgements of these.
    pub judgements: usize,
}

/// Krippendorff's alpha: one list for each thing, of the categories (counted from 0)
/// that people gave it, in any order; who gave none is left out.
///
/// Things that fewer than two people judged say nothing of agreement and are passed
/// over. With squared steps it is an intraclass correlation in all but name.
///
/// # Errors
/// Fewer than three things judged by two; a category that is not below `categories`; more
/// than 200 categories; all judgements the same; all but one thing judged the same,
/// so that leaving it out leaves nothing.
///
/// # Source
/// K. Krippendorff, Computing Krippendorff's Alpha-Reliability (2011), from memory; the
/// standard error by the jackknife over things, common practice.
///
/// ```
/// use inference::agreement::{Apart, alpha};
/// let things = [vec![2, 2, 3], vec![4, 4], vec![1, 2, 1], vec![6, 5, 6], vec![3]];
/// let found = alpha(&things, 9, Apart::SquaredSteps)?;
/// assert_eq!((format!("{:.2}", found.alpha), found.things), ("0.92".to_owned(), 4));
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn alpha(
    things: &[Vec<usize>],
    categories: usize,
    apart: Apart,
) -> Result<Several, InferenceError> {
    check(things.iter().flatten().copied(), categories)?;
    let judged: Vec<&Vec<usize>> = things.iter().filter(|own| own.len() > 1).collect();
    if judged.len() < 3 {
        return Err(InferenceError::TooFew {
            given: judged.len(),
            least: 3,
        });
    }
    let mut all = Counts::none(categories);
    for own in &judged {
        all.add(own, 1.0, apart);
    }
    let whole = all.alpha(apart).ok_or(InferenceError::NoScatter)?;
    let count = judged.len() as f64;
    let mut without = Vec::with_capacity(judged.len());
    for own in &judged {
        all.add(own, -1.0, apart);
        without.push(all.alpha(apart).ok_or(InferenceError::NoScatter)?);
        all.add(own, 1.0, apart);
    }
    let mean = without.iter().sum::<f64>() / count;
    let squares: f64 = without.iter().map(|a| (a - mean) * (a - mean)).sum();
    Ok(Several {
        alpha: whole,
        standard_error: (squares * (count - 1.0) / count).sqrt(),
        things: judged.len(),
        judgements: judged.iter().map(|own| own.len()).sum(),
    })
}

impl Several {
    /// Two-sided interval of the agreement at that level, such as 0.95, 1 at most. None
    /// where all agree: how seldom they don't can't be told from that.
    pub fn interval(&self, level: f64) -> Option<Interval> {
        let half = quantile::student(0.5 + level / 2.0, self.things as f64 - 1.0);
        let half = half * self.standard_error;
        (half > 1e-12).then(|| Interval {
            low: self.alpha - half,
            high: (self.alpha + half).min(1.0),
        })
    }
}

/// How often each category was given, and how far judgements of one thing lie apart.
struct Counts {
    of: Vec<f64>,
    apart: f64,
}

impl Counts {
    fn none(categories: usize) -> Self {
        Self {
            of: vec![0.0; categories],
            apart: 0.0,
        }
    }

    /// Adds a thing's judgements that many times.
    fn add(&mut self, own: &[usize], times: f64, apart: Apart) {
        let mut sum = 0.0;
        for (at, &one) in own.iter().enumerate() {
            self.of[one] += times;
            sum += own[..at]
                .iter()
                .map(|other| apart.between(one, *other))
                .sum::<f64>();
        }
        self.apart += times * 2.0 * sum / (own.len() as f64 - 1.0);
    }

    /// None where all judgements are the same.
    fn alpha(&self, apart: Apart) -> Option<f64> {
        let judgements: f64 = self.of.iter().sum();
        let mut expected = 0.0;
        for (one, &count) in self.of.iter().enumerate() {
            for (other, &other_count) in self.of.iter().enumerate() {
                expected += count * other_count * apart.between(one, other);
            }
        }
        (expected > 0.0).then(|| 1.0 - (judgements - 1.0) * self.apart / expected)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published: Krippendorff (2011), four observers of twelve units, from memory.
    #[test]
    fn the_published_example_comes_out() {
        let observers = [
            "1 2 3 3 2 1 4 1 2 . . .",
            "1 2 3 3 2 2 4 1 2 5 . 3",
            ". 3 3 3 2 3 4 2 2 5 1 .",
            "1 2 3 3 2 4 4 1 2 5 1 .",
        ];
        let mut things = vec![Vec::new(); 12];
        for observer in observers {
            for (thing, given) in things.iter_mut().zip(observer.split(' ')) {
                thing.extend(given.parse::<usize>().map(|v| v - 1));
            }
        }
        for (apart, printed) in [(Apart::Other, "0.743"), (Apart::SquaredSteps, "0.849")] {
            let found = alpha(&things, 5, apart).unwrap();
            assert_eq!(format!("{:.3}", found.alpha), printed);
            assert_eq!((found.things, found.judgements), (11, 40));
            let interval = found.interval(0.95).unwrap();
            assert!(interval.contains(found.alpha) && interval.low > 0.2);
        }
    }

    #[test]
    fn judgements_that_say_nothing_are_refused() {
        let same = vec![vec![3, 3]; 6];
        assert_eq!(
            alpha(&same, 9, Apart::Steps),
            Err(InferenceError::NoScatter)
        );
        let single = vec![vec![3]; 6];
        assert!(matches!(
            alpha(&single, 9, Apart::Steps),
            Err(InferenceError::TooFew { .. })
        ));
        let agreed = [vec![1, 1], vec![2, 2], vec![3, 3]];
        let found = alpha(&agreed, 9, Apart::Steps).unwrap();
        assert_eq!((found.alpha, found.interval(0.95)), (1.0, None));
    }
}
