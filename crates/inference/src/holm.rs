//! Several tests at once, so that chance alone seldom shows even one difference.

use crate::InferenceError;
use crate::text;

/// Each probability as it counts beside the others; the order stays.
///
/// # Errors
/// A probability that is not between 0 and 1, both allowed.
///
/// # Source
/// Holm, Scandinavian Journal of Statistics 6 (1979) 65-70.
///
/// ```
/// let adjusted = inference::holm::adjusted(&[0.01, 0.04, 0.03])?;
/// assert_eq!(adjusted, [0.03, 0.06, 0.06]);
/// # Ok::<(), inference::InferenceError>(())
/// ```
pub fn adjusted(p: &[f64]) -> Result<Vec<f64>, InferenceError> {
    for &one in p {
        let fine = (0.0..=1.0).contains(&one);
        InferenceError::unless(
            fine,
            text::error::probability(),
            one,
            text::error::from_0_to_1(),
        )?;
    }
    let mut order: Vec<usize> = (0..p.len()).collect();
    order.sort_by(|&i, &j| p[i].total_cmp(&p[j]));
    let mut found = vec![0.0; p.len()];
    let mut least = 0.0_f64;
    for (done, &at) in order.iter().enumerate() {
        least = least.max(p[at] * (p.len() - done) as f64).min(1.0);
        found[at] = least;
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_test_stays_as_it_is_and_none_is_above_1() {
        assert_eq!(adjusted(&[0.2]).unwrap(), [0.2]);
        assert_eq!(adjusted(&[0.9, 0.8]).unwrap(), [1.0, 1.0]);
        assert!(adjusted(&[]).unwrap().is_empty());
        assert!(adjusted(&[0.1, f64::NAN]).is_err());
        assert!(adjusted(&[-0.1]).is_err());
    }
}
