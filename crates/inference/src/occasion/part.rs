//! One part of the scatter as a single figure with its interval.

use super::Occasions;
use crate::{Interval, quantile};
use nalgebra::Matrix3;

/// The mean squared length of a part of the scatter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// The estimate, never below 0. Three parts of a vector add up in it: along
    /// one direction the scatter is on average a third of this.
    pub variance: f64,
    /// Degrees of freedom of the mean square it comes from.
    pub df: f64,
    shape: Shape,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Shape {
    /// A mean square alone.
    Square,
    /// (a mean square less another) over so many copies.
    Difference {
        square: f64,
        less: f64,
        less_df: f64,
        copies: f64,
    },
}

impl Part {
    pub(super) fn within(of: &Occasions, metric: &Matrix3<f64>) -> Self {
        let (variance, df) = trace(&of.within, metric, of.within_df);
        Self {
            variance,
            df,
            shape: Shape::Square,
        }
    }

    pub(super) fn between(of: &Occasions, metric: &Matrix3<f64>) -> Self {
        let (square, df) = trace(&of.between_square, metric, of.between_df);
        let (less, less_df) = trace(&of.within, metric, of.within_df);
        Self {
            variance: ((square - less) / of.copies).max(0.0),
            df,
            shape: Shape::Difference {
                square,
                less,
                less_df,
                copies: of.copies,
            },
        }
    }

    /// Root of the mean squared length.
    pub fn sd(&self) -> f64 {
        self.variance.sqrt()
    }

    /// Two-sided interval of the SD at that level, such as 0.95.
    ///
    /// # Source
    /// Within: chi-square, with degrees of freedom by Satterthwaite for what
    /// several parts add up to. Between: modified large-sample limits of the
    /// difference of two mean squares (Ting, Burdick, Graybill, Jeyaratnam and Lu
    /// 1990).
    pub fn interval(&self, level: f64) -> Interval {
        let tail = (1.0 - level) / 2.0;
        let (low, high) = match self.shape {
            Shape::Square => (
                self.variance * self.df / quantile::chi_square(1.0 - tail, self.df),
                self.variance * self.df / quantile::chi_square(tail, self.df),
            ),
            Shape::Difference {
                square,
                less,
                less_df,
                copies,
            } => {
                let (down, up) = reach([square, less], [self.df, less_df], tail);
                let middle = square - less;
                ((middle - down) / copies, (middle + up) / copies)
            }
        };
        Interval {
            low: low.max(0.0).sqrt(),
            high: high.max(0.0).sqrt(),
        }
    }
}

/// How far the limits of the difference of two mean squares lie below and above it.
fn reach([one, two]: [f64; 2], [df_one, df_two]: [f64; 2], tail: f64) -> (f64, f64) {
    let g = |df: f64| 1.0 - df / quantile::chi_square(1.0 - tail, df);
    let h = |df: f64| df / quantile::chi_square(tail, df) - 1.0;
    let (g1, g2, h1, h2) = (g(df_one), g(df_two), h(df_one), h(df_two));
    let f_high = quantile::fisher(1.0 - tail, df_one, df_two);
    let f_low = quantile::fisher(tail, df_one, df_two);
    let square = |v: f64| v * v;
    let g12 = (square(f_high - 1.0) - square(g1 * f_high) - square(h2)) / f_high;
    let h12 = (square(1.0 - f_low) - square(h1 * f_low) - square(g2)) / f_low;
    let down = square(g1 * one) + square(h2 * two) + g12 * one * two;
    let up = square(h1 * one) + square(g2 * two) + h12 * one * two;
    (down.max(0.0).sqrt(), up.max(0.0).sqrt())
}

/// The mean squared length by a mean square, and its degrees of freedom: those of
/// one part where all scatter lies along one direction, up to three times as many
/// where it is even. Few looks seem less even than they are, which errs to the
/// wide side.
fn trace(square: &Matrix3<f64>, metric: &Matrix3<f64>, df: usize) -> (f64, f64) {
    let product = metric * square;
    let sum = product.trace().max(0.0);
    let squares = (product * product).trace();
    let directions = if squares > 0.0 {
        (sum * sum / squares).clamp(1.0, 3.0)
    } else {
        1.0
    };
    (sum, df as f64 * directions)
}
