//! Whether mean vectors differ: Hotelling's T-squared.

use crate::text;
use crate::{InferenceError, Interval, length::Length, power, quantile, scatter::Error};
use nalgebra::{SMatrix, SVector};

/// Steps of halving; a distance then holds to 1e-9 of its size.
const HALVINGS: usize = 60;

/// A mean vector, or a difference of two, set beside the scatter of single vectors.
///
/// It asks whether the mean is 0 in every part. With few vectors the scatter has to
/// be known in all directions, so it takes two more vectors than parts; where it has
/// fewer, or where the size matters and not only whether, see
/// [`Length`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hotelling<const P: usize> {
    /// The mean, or the first mean less the second.
    pub mean: SVector<f64, P>,
    /// Covariance of one vector.
    pub covariance: SMatrix<f64, P, P>,
    /// Degrees of freedom of the covariance, P at least.
    pub df: f64,
    /// The mean's covariance over one vector's: 1/n, or 1/n + 1/m.
    pub share: f64,
    t_squared: f64,
}

impl<const P: usize> Hotelling<P> {
    /// From a mean with the covariance of one vector.
    ///
    /// # Errors
    /// A number that is not finite; fewer than P degrees of freedom; a share that is
    /// not above 0; vectors that don't scatter in some direction.
    pub fn new(
        mean: SVector<f64, P>,
        covariance: SMatrix<f64, P, P>,
        df: f64,
        share: f64,
    ) -> Result<Self, InferenceError> {
        let finite = |v: &f64| v.is_finite();
        if !(mean.iter().all(finite) && covariance.iter().all(finite)) {
            return Err(InferenceError::NotFinite);
        }
        let fine = share > 0.0 && share.is_finite();
        InferenceError::unless(
            fine,
            text::error::share_of_the_covariance(),
            share,
            text::error::above_0(),
        )?;
        let fine = df >= P as f64;
        let range = text::error::the_number_of_parts_of_a_vector_2();
        InferenceError::unless(fine, text::error::number_of_degrees_of_freedom(), df, range)?;
        let scaled = scaled(&covariance).ok_or(InferenceError::NoScatter)?;
        let root = scaled.1.cholesky().ok_or(InferenceError::NoScatter)?;
        let unit = mean.component_div(&scaled.0);
        Ok(Self {
            mean,
            covariance,
            df,
            share,
            t_squared: root.solve(&unit).dot(&unit) / share,
        })
    }

    /// Vectors whose mean is asked to be `from`.
    ///
    /// # Errors
    /// Fewer vectors than parts and one, and as for [`Hotelling::new`].
    pub fn one_sample(
        vectors: &[SVector<f64, P>],
        from: &SVector<f64, P>,
    ) -> Result<Self, InferenceError> {
        enough(vectors.len(), P + 1)?;
        let (mean, squares) = squares(vectors);
        let (count, df) = (vectors.len() as f64, (vectors.len() - 1) as f64);
        Self::new(mean - from, squares / df, df, 1.0 / count)
    }

    /// Two groups of vectors, whose scatter is taken to be equal.
    ///
    /// # Errors
    /// An empty group, fewer vectors than parts and two, and as for [`Hotelling::new`].
    pub fn two_samples(
        a: &[SVector<f64, P>],
        b: &[SVector<f64, P>],
    ) -> Result<Self, InferenceError> {
        enough(a.len().min(b.len()), 1)?;
        enough(a.len() + b.len(), P + 2)?;
        let ((mean_a, squares_a), (mean_b, squares_b)) = (squares(a), squares(b));
        let df = (a.len() + b.len() - 2) as f64;
        let share = 1.0 / a.len() as f64 + 1.0 / b.len() as f64;
        Self::new(mean_a - mean_b, (squares_a + squares_b) / df, df, share)
    }

    /// Hotelling's T-squared.
    pub fn t_squared(&self) -> f64 {
        self.t_squared
    }

    /// The same as an F, with its P and df - P + 1 degrees of freedom.
    ///
    /// # Source
    /// H. Hotelling, Annals of Mathematical Statistics 2 (1931) 360-378.
    ///
    /// ```
    /// use nalgebra::{SMatrix, SVector};
    /// // Four tests of 32 men and 32 women, from rounded means.
    /// let mean = SVector::<f64, 4>::new(3.63, 2.0, 10.53, 0.81);
    /// # let pooled = SMatrix::<f64, 4, 4>::new(
    /// #     7.164, 6.047, 5.693, 4.701, 6.047, 15.89, 8.492, 5.856,
    /// #     5.693, 8.492, 29.36, 13.98, 4.701, 5.856, 13.98, 22.32);
    /// let test = inference::hotelling::Hotelling::new(mean, pooled, 62.0, 2.0 / 32.0)?;
    /// assert_eq!(format!("{:.1}", test.t_squared()), "97.7");
    /// # Ok::<(), inference::InferenceError>(())
    /// ```
    pub fn f(&self) -> (f64, f64, f64) {
        let (parts, rest) = (P as f64, self.df - P as f64 + 1.0);
        (self.t_squared * rest / (self.df * parts), parts, rest)
    }

    /// Probability of means as far apart by chance alone.
    pub fn p(&self) -> f64 {
        let (f, above, below) = self.f();
        quantile::fisher_above(f, above, below)
    }

    /// Distance of the mean from 0 in standard deviations of one vector, along its own
    /// direction (Mahalanobis' distance), 0 upward; chance adds to it.
    pub fn distance(&self) -> f64 {
        (self.t_squared * self.share).sqrt()
    }

    /// Two-sided interval of the true distance at that level, such as 0.95; from 0
    /// where chance alone explains what is seen.
    ///
    /// # Source
    /// The noncentral F distribution, inverted; common practice.
    pub fn distance_interval(&self, level: f64) -> Interval {
        let tail = (1.0 - level) / 2.0;
        Interval {
            low: self.distance_exceeding(tail),
            high: self.distance_exceeding(1.0 - tail),
        }
    }

    /// The true distance that shows one as great as seen that often.
    fn distance_exceeding(&self, often: f64) -> f64 {
        let (f, above, below) = self.f();
        let seen = |length: f64| power::exceeded(above, below, f, length);
        if seen(0.0) >= often {
            return 0.0;
        }
        let (mut low, mut high) = (0.0, 1.0);
        while seen(high) < often {
            (low, high) = (high, 2.0 * high);
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            if seen(middle) < often {
                low = middle;
            } else {
                high = middle;
            }
        }
        0.5 * (low + high) * self.share.sqrt()
    }
}

impl Hotelling<3> {
    /// The mean's length in the vectors' own unit, with an interval and an upper bound
    /// that hold when the true length is 0.
    pub fn length(&self) -> Length {
        let error = Error {
            covariance: self.covariance * self.share,
            df: self.df,
        };
        Length::new(self.mean, &error)
    }
}

fn enough(given: usize, least: usize) -> Result<(), InferenceError> {
    if given < least {
        Err(InferenceError::TooFew { given, least })
    } else {
        Ok(())
    }
}

/// The mean and the sum of outer products of the deviations from it.
fn squares<const P: usize>(vectors: &[SVector<f64, P>]) -> (SVector<f64, P>, SMatrix<f64, P, P>) {
    let mean = vectors.iter().sum::<SVector<f64, P>>() / vectors.len() as f64;
    let squares = vectors.iter().map(|v| (v - mean) * (v - mean).transpose());
    (mean, squares.sum())
}

/// Standard deviations and correlations, so that units don't matter; none where some
/// direction has no scatter.
pub(crate) fn scaled<const P: usize>(
    covariance: &SMatrix<f64, P, P>,
) -> Option<(SVector<f64, P>, SMatrix<f64, P, P>)> {
    /// Share of a part's variance that others don't explain, at least.
    const NOTHING: f64 = 1e-12;
    let sds = covariance.diagonal().map(|v| v.max(0.0).sqrt());
    if sds.iter().any(|sd| *sd <= 0.0) {
        return None;
    }
    let correlations: SMatrix<f64, P, P> =
        SMatrix::from_fn(|i, j| covariance[(i, j)] / (sds[i] * sds[j]));
    let root = correlations.cholesky()?;
    let least = root.l_dirty().diagonal().min();
    (least * least > NOTHING).then_some((sds, correlations))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Chance;
    use nalgebra::Vector3;
    use proptest::prelude::*;

    fn drawn(chance: &mut Chance, count: usize, shift: Vector3<f64>) -> Vec<Vector3<f64>> {
        let one = |_| Vector3::from_fn(|_, _| chance.normal()) + shift;
        (0..count).map(one).collect()
    }

    #[test]
    fn flat_scatter_and_few_vectors_are_refused() {
        let flat: Vec<Vector3<f64>> = (0..8)
            .map(|i| Vector3::new(f64::from(i), f64::from(i * i), 2.0 * f64::from(i)))
            .collect();
        let none = Vector3::zeros();
        assert_eq!(
            Hotelling::one_sample(&flat, &none),
            Err(InferenceError::NoScatter)
        );
        let same = [Vector3::repeat(2.0); 6];
        assert_eq!(
            Hotelling::one_sample(&same, &none),
            Err(InferenceError::NoScatter)
        );
        let few = Hotelling::two_samples(&flat[..2], &flat[2..4]);
        assert_eq!(few, Err(InferenceError::TooFew { given: 4, least: 5 }));
        let odd = [Vector3::repeat(f64::NAN); 6];
        assert_eq!(
            Hotelling::one_sample(&odd, &none),
            Err(InferenceError::NotFinite)
        );
    }

    #[test]
    fn one_part_is_students_test() {
        let vectors = [0.4, 1.1, -0.3, 0.9, 1.6].map(SVector::<f64, 1>::new);
        let test = Hotelling::one_sample(&vectors, &SVector::zeros()).unwrap();
        let (mean, sd) = (0.74, 0.516_4_f64.sqrt());
        assert!((test.t_squared().sqrt() - mean / (sd / 5.0_f64.sqrt())).abs() < 0.02);
        let by_t = 2.0 * quantile::student_above(test.t_squared().sqrt(), 4.0);
        assert!((test.p() - by_t).abs() < 1e-9);
    }

    #[test]
    fn distances_lie_in_their_intervals_as_often_as_said() {
        let mut chance = Chance::new(12);
        for shift in [0.0, 1.0, 3.0] {
            let mut held = 0;
            for _ in 0..1000 {
                let a = drawn(&mut chance, 5, Vector3::new(shift, 0.0, 0.0));
                let b = drawn(&mut chance, 6, Vector3::zeros());
                let test = Hotelling::two_samples(&a, &b).unwrap();
                held += u32::from(test.distance_interval(0.95).contains(shift));
            }
            // From 0, only the lower end can miss.
            assert!((930..=990).contains(&held), "{shift}: {held}");
        }
    }

    proptest! {
        #[test]
        fn units_and_axes_change_nothing(seed in 0_u64..500, scale in 1e-3..1e3, shift in -1e3..1e3) {
            let mut chance = Chance::new(seed);
            let a = drawn(&mut chance, 5, Vector3::new(1.0, 0.0, 0.0));
            let b = drawn(&mut chance, 4, Vector3::zeros());
            let turn = |v: &Vector3<f64>| Vector3::new(v.x * scale + shift, v.x + 2.0 * v.y, v.z - v.y);
            let plain = Hotelling::two_samples(&a, &b).unwrap();
            let turned = |vectors: &[Vector3<f64>]| vectors.iter().map(turn).collect::<Vec<_>>();
            let other = Hotelling::two_samples(&turned(&a), &turned(&b)).unwrap();
            prop_assert!((plain.t_squared() / other.t_squared() - 1.0).abs() < 1e-6);
        }
    }
}
