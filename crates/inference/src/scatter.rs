//! Scatter of vectors, and the error of what is built from their means.

use nalgebra::{Matrix3, Vector3};

/// Scatter of vectors about the means of their groups.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scatter {
    /// Sum of outer products of the deviations.
    squares: Matrix3<f64>,
    /// Degrees of freedom: vectors less groups.
    df: usize,
}

impl Scatter {
    /// No vectors yet.
    pub fn none() -> Self {
        Self {
            squares: Matrix3::zeros(),
            df: 0,
        }
    }

    /// The scatter of one group about its mean; of fewer than two, none.
    pub fn of(vectors: &[Vector3<f64>]) -> Self {
        let Some(mean) = mean(vectors) else {
            return Self::none();
        };
        let squares = vectors
            .iter()
            .map(|v| (v - mean) * (v - mean).transpose())
            .sum();
        Self {
            squares,
            df: vectors.len() - 1,
        }
    }

    /// Scatter from a sum of outer products with its degrees of freedom.
    pub fn from_squares(squares: Matrix3<f64>, df: usize) -> Self {
        Self { squares, df }
    }

    /// Both together, each group about its own mean.
    pub fn with(self, other: Self) -> Self {
        Self {
            squares: self.squares + other.squares,
            df: self.df + other.df,
        }
    }

    /// Degrees of freedom.
    pub fn df(&self) -> usize {
        self.df
    }

    /// The covariance of one vector; none without degrees of freedom.
    pub fn covariance(&self) -> Option<Matrix3<f64>> {
        (self.df > 0).then(|| self.squares / self.df as f64)
    }

    /// The error of something whose covariance is `share` of one vector's: of a
    /// mean of n, 1/n. None without degrees of freedom.
    pub fn error(&self, share: f64) -> Option<Error> {
        self.covariance().map(|covariance| Error {
            covariance: covariance * share,
            df: self.df as f64,
        })
    }
}

/// The mean of vectors; none of none.
pub fn mean(vectors: &[Vector3<f64>]) -> Option<Vector3<f64>> {
    let sum: Vector3<f64> = vectors.iter().sum();
    (!vectors.is_empty()).then(|| sum / vectors.len() as f64)
}

/// The estimated covariance of a vector and how well it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Error {
    /// The covariance.
    pub covariance: Matrix3<f64>,
    /// Its degrees of freedom, 1 at least.
    pub df: f64,
}

impl Error {
    /// The error of a sum of vectors whose errors know nothing of each other.
    ///
    /// # Source
    /// Degrees of freedom as of Nel and van der Merwe, Communications in
    /// Statistics 15 (1986) 3719-3735: Satterthwaite's rule for matrices.
    pub fn of_sum(parts: &[Error]) -> Option<Error> {
        if parts.is_empty() {
            return None;
        }
        let covariance: Matrix3<f64> = parts.iter().map(|part| part.covariance).sum();
        let spread: f64 = parts
            .iter()
            .map(|part| size(&part.covariance) / part.df)
            .sum();
        let all: f64 = parts.iter().map(|part| part.df).sum();
        let df = if spread > 0.0 {
            (size(&covariance) / spread).clamp(1.0, all)
        } else {
            all
        };
        Some(Error { covariance, df })
    }
}

fn size(m: &Matrix3<f64>) -> f64 {
    (m * m).trace() + m.trace() * m.trace()
}
