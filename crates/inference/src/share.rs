//! How often something happens, from a few tries.

use crate::text;
use crate::{InferenceError, Interval};
use statrs::distribution::{Beta, ContinuousCDF};

/// The interval of a share of which `count` in `tries` were seen, at a level such as
/// 0.95. It holds the true share at least that often, also for few tries, 0 of them and
/// all of them.
///
/// # Errors
/// No try; more counted than tried; a level that is not between 0 and 1.
///
/// # Source
/// C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404-413.
///
/// ```
/// let found = inference::share::exact(0, 10, 0.95)?;
/// assert_eq!(format!("{:.4} {:.4}", found.low, found.high), "0.0000 0.3085");
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn exact(count: usize, tries: usize, level: f64) -> Result<Interval, InferenceError> {
    if tries == 0 {
        return Err(InferenceError::TooFew { given: 0, least: 1 });
    }
    let fine = count <= tries;
    InferenceError::unless(
        fine,
        text::error::count(),
        count as f64,
        text::error::no_more_than_were_tried(),
    )?;
    InferenceError::unless_share(text::error::level(), level)?;
    let tail = (1.0 - level) / 2.0;
    let quantile = |below: f64, above: f64, p: f64| {
        Beta::new(below, above).map_or(f64::NAN, |beta| beta.inverse_cdf(p))
    };
    let (seen, not) = (count as f64, (tries - count) as f64);
    Ok(Interval {
        low: match count {
            0 => 0.0,
            _ => quantile(seen, not + 1.0, tail),
        },
        high: match tries - count {
            0 => 1.0,
            _ => quantile(seen + 1.0, not, 1.0 - tail),
        },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_of_them_and_none_mirror_each_other() {
        for tries in 1..30 {
            let none = exact(0, tries, 0.95).unwrap();
            let all = exact(tries, tries, 0.95).unwrap();
            assert_eq!((none.low, all.high), (0.0, 1.0));
            assert!((none.high - (1.0 - all.low)).abs() < 1e-9, "{tries}");
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert!(exact(0, 0, 0.95).is_err());
        assert!(exact(3, 2, 0.95).is_err());
        assert!(exact(1, 2, 1.0).is_err());
    }
}
