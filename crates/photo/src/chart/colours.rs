//! A chart's colours, and how well the colours of a grid fit them.
//!
//! Each channel, on a scale of even steps, is fitted as a sum of the chart's
//! red, green, blue and a constant, which takes up lamp, white balance,
//! exposure, the camera's own primaries and most of its tone curve.

use super::search::even;
use nalgebra::{Matrix4, Vector4};

/// A patch's colour on the scale of even steps; none where it is out of sight.
pub(crate) type Seen = Option<[f64; 3]>;

/// Of so many patches one may be left out of a fit: a shine, a thumb, a clipped
/// white.
const ONE_SPARED_OF: usize = 12;
/// Below this share, leaving patches out can't save a fit.
const WORTH_A_FIT: f64 = 0.4;

/// The colours of a chart as the axes of a fit.
#[derive(Debug, Clone)]
pub(crate) struct Axes {
    /// A row for each patch: 1, red, green, blue, on the scale of even steps.
    rows: Vec<[f64; 4]>,
    /// Red, green and blue without their means, made orthonormal.
    basis: [Vec<f64>; 3],
    variety: f64,
}

impl Axes {
    /// From the patches' linear sRGB.
    pub(crate) fn new(linear: &[[f32; 3]]) -> Self {
        let rows: Vec<[f64; 4]> = linear
            .iter()
            .map(|colour| {
                let [r, g, b] = colour.map(|v| f64::from(even(v)));
                [1.0, r, g, b]
            })
            .collect();
        let basis = basis(&rows);
        let variety = variety(&rows);
        Self {
            rows,
            basis,
            variety,
        }
    }

    /// The chart's own colours.
    pub(crate) fn own(&self) -> impl Iterator<Item = [f64; 3]> {
        self.rows.iter().map(|[_, r, g, b]| [*r, *g, *b])
    }

    /// The share of the colours' variance that lies across their main direction.
    pub(crate) fn variety(&self) -> f64 {
        self.variety
    }

    /// The share of the seen colours' variance that the chart explains, 0 to 1.
    /// `seen` gives the colours in the chart's order.
    pub(crate) fn explained(&self, seen: &[Seen]) -> Option<f64> {
        if let Some(share) = self.glance(seen)
            && share < WORTH_A_FIT
        {
            return Some(share);
        }
        let mut left = self.pairs(seen);
        for _ in 0..left.len() / ONE_SPARED_OF {
            let fit = Fit::of(&left)?;
            left.remove(fit.worst);
        }
        Some(Fit::of(&left)?.explained)
    }

    /// What each patch should look like, by a fit through the others that leaves
    /// out the worst; and how far the patches used are off, root mean square.
    pub(crate) fn expected(&self, seen: &[Seen]) -> Option<(Vec<[f64; 3]>, f64)> {
        let mut left = self.pairs(seen);
        for _ in 0..left.len() / ONE_SPARED_OF {
            let fit = Fit::of(&left)?;
            left.remove(fit.worst);
        }
        let fit = Fit::of(&left)?;
        let expected = self.rows.iter().map(|row| fit.colour(row)).collect();
        let freedom = left.len().saturating_sub(4).max(1) as f64;
        Some((expected, (fit.left_over / freedom).sqrt()))
    }

    /// How little would be left over if two patches changed places, as a share
    /// of what is left over now; and which two.
    pub(crate) fn best_swap(&self, seen: &[[f64; 3]]) -> Option<(f64, [usize; 2])> {
        let pairs: Vec<_> = self
            .rows
            .iter()
            .copied()
            .zip(seen.iter().copied())
            .collect();
        let fit = Fit::of(&pairs)?;
        let pull = |a: usize, b: usize| {
            (Vector4::from(self.rows[a]).transpose() * fit.inverse * Vector4::from(self.rows[b]))[0]
        };
        let off: Vec<[f64; 3]> = pairs
            .iter()
            .map(|(row, colour)| minus(*colour, fit.colour(row)))
            .collect();
        let mut best = (1.0, [0, 0]);
        for a in 0..seen.len() {
            for b in a + 1..seen.len() {
                let step = minus(seen[b], seen[a]);
                let towards = dot(step, minus(off[a], off[b]));
                let free = 2.0 - pull(a, a) - pull(b, b) + 2.0 * pull(a, b);
                let change = 2.0 * towards + dot(step, step) * free;
                let share = 1.0 + change / fit.left_over.max(1e-9);
                if share < best.0 {
                    best = (share, [a, b]);
                }
            }
        }
        Some(best)
    }

    fn pairs(&self, seen: &[Seen]) -> Vec<([f64; 4], [f64; 3])> {
        self.rows
            .iter()
            .zip(seen)
            .filter_map(|(row, colour)| Some((*row, (*colour)?)))
            .collect()
    }

    /// The share explained with all patches; none where some are out of sight.
    ///
    /// The same fit as [`Fit`] against a basis made once: most grids tried are
    /// nothing like the chart, and this tells at little cost.
    fn glance(&self, seen: &[Seen]) -> Option<f64> {
        let n = seen.len() as f64;
        let mut sum = [0.0; 3];
        let mut squares = 0.0;
        let mut along = [[0.0; 3]; 3];
        let [r, g, b] = &self.basis;
        for (k, colour) in seen.iter().enumerate() {
            let colour = colour.as_ref()?;
            for c in 0..3 {
                sum[c] += colour[c];
                squares += colour[c] * colour[c];
                along[0][c] += r[k] * colour[c];
                along[1][c] += g[k] * colour[c];
                along[2][c] += b[k] * colour[c];
            }
        }
        let whole = squares - sum.iter().map(|s| s * s / n).sum::<f64>();
        let explained: f64 = along.iter().flatten().map(|v| v * v).sum();
        Some(explained / whole.max(1e-9))
    }
}

/// Red, green and blue without their means, made orthonormal; an axis that the
/// ones before leave nothing of stays empty.
fn basis(rows: &[[f64; 4]]) -> [Vec<f64>; 3] {
    let mut axes = [1, 2, 3].map(|c| rows.iter().map(|row| row[c]).collect::<Vec<f64>>());
    for k in 0..3 {
        let (made, rest) = axes.split_at_mut(k);
        let axis = &mut rest[0];
        let mean = axis.iter().sum::<f64>() / axis.len() as f64;
        axis.iter_mut().for_each(|v| *v -= mean);
        for other in made {
            let along: f64 = other.iter().zip(axis.iter()).map(|(a, b)| a * b).sum();
            axis.iter_mut()
                .zip(other.iter())
                .for_each(|(v, o)| *v -= along * o);
        }
        let length = axis.iter().map(|v| v * v).sum::<f64>().sqrt();
        let stretch = if length > 1e-3 { 1.0 / length } else { 0.0 };
        axis.iter_mut().for_each(|v| *v *= stretch);
    }
    axes
}

/// The share of the variance across the main direction of the colours.
fn variety(rows: &[[f64; 4]]) -> f64 {
    let colours: Vec<[f64; 3]> = rows.iter().map(|[_, r, g, b]| [*r, *g, *b]).collect();
    let (whole, mean) = variance(&colours);
    let mut spread = nalgebra::Matrix3::zeros();
    for colour in &colours {
        let off = nalgebra::Vector3::from(minus(*colour, mean));
        spread += off * off.transpose() / colours.len() as f64;
    }
    1.0 - spread.symmetric_eigenvalues().max() / whole.max(1e-9)
}

/// How widely the seen colours are spread: the standard deviation over all
/// channels, as a share of their mean.
pub(crate) fn spread(seen: &[Seen]) -> f64 {
    let seen: Vec<[f64; 3]> = seen.iter().flatten().copied().collect();
    let (variance, mean) = variance(&seen);
    (variance / 3.0).sqrt() / (mean.iter().sum::<f64>() / 3.0).max(1e-6)
}

/// A least-squares fit of seen colours by the chart's.
struct Fit {
    inverse: Matrix4<f64>,
    weights: [Vector4<f64>; 3],
    /// Squares of what isn't explained, summed.
    left_over: f64,
    explained: f64,
    /// The pair that fits worst.
    worst: usize,
}

impl Fit {
    fn of(pairs: &[([f64; 4], [f64; 3])]) -> Option<Self> {
        // The ridge lets a chart without much blue, say, be fitted too.
        let mut normal = Matrix4::identity() * 1e-6;
        let mut right = [Vector4::zeros(); 3];
        for (x, y) in pairs {
            let x = Vector4::from(*x);
            normal += x * x.transpose();
            for (sum, y) in right.iter_mut().zip(y) {
                *sum += x * *y;
            }
        }
        let inverse = normal.try_inverse()?;
        let mut fit = Self {
            inverse,
            weights: right.map(|r| inverse * r),
            left_over: 0.0,
            explained: 0.0,
            worst: 0,
        };
        let mut most = 0.0;
        for (k, (x, y)) in pairs.iter().enumerate() {
            let miss = minus(*y, fit.colour(x));
            let off = dot(miss, miss);
            fit.left_over += off;
            // A row that pulls the fit towards itself hides part of its error.
            let x = Vector4::from(*x);
            let pull = (x.transpose() * inverse * x)[0];
            let free = off / (1.0 - pull).max(0.05).powi(2);
            if free > most {
                (fit.worst, most) = (k, free);
            }
        }
        let seen: Vec<[f64; 3]> = pairs.iter().map(|pair| pair.1).collect();
        let whole = variance(&seen).0 * seen.len() as f64;
        fit.explained = (1.0 - fit.left_over / whole).max(0.0);
        (whole > 1e-9).then_some(fit)
    }

    fn colour(&self, row: &[f64; 4]) -> [f64; 3] {
        let x = Vector4::from(*row);
        self.weights.map(|w| w.dot(&x))
    }
}

/// The variance summed over the channels, and the mean.
fn variance(seen: &[[f64; 3]]) -> (f64, [f64; 3]) {
    let n = seen.len().max(1) as f64;
    let mean = [0, 1, 2].map(|c| seen.iter().map(|s| s[c]).sum::<f64>() / n);
    let sum: f64 = seen
        .iter()
        .map(|s| dot(minus(*s, mean), minus(*s, mean)))
        .sum();
    (sum / n, mean)
}

pub(crate) fn minus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [0, 1, 2].map(|c| a[c] - b[c])
}

pub(crate) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    (0..3).map(|c| a[c] * b[c]).sum()
}

#[cfg(test)]
mod tests {
    use super::super::layout::Layout;
    use super::*;
    use crate::ChartReference;

    fn published() -> Layout {
        Layout::of(&ChartReference::published()).expect("the usual size")
    }

    fn under(light: [f64; 3], curve: f64) -> Vec<Seen> {
        let layout = published();
        let mixed = layout.axes().own().map(|colour| {
            let [r, g, b] = colour.map(|v| v * v);
            let mixed = [
                0.8 * r + 0.2 * g,
                0.1 * r + 0.8 * g + 0.1 * b,
                0.25 * g + 0.75 * b,
            ];
            Some([0, 1, 2].map(|c| (mixed[c] * light[c]).powf(curve).sqrt()))
        });
        mixed.collect()
    }

    fn explained(seen: &[Seen], order: impl Fn(usize) -> usize) -> f64 {
        let mut laid = vec![None; seen.len()];
        for (k, colour) in seen.iter().enumerate() {
            laid[order(k)] = *colour;
        }
        published().axes().explained(&laid).expect("24 colours")
    }

    #[test]
    fn lamps_and_curves_leave_the_chart_recognisable() {
        for light in [[1.0, 1.0, 1.0], [0.9, 0.5, 0.2], [0.05, 0.07, 0.09]] {
            for curve in [0.7, 1.0, 1.4] {
                let share = explained(&under(light, curve), |k| k);
                assert!(share > 0.93, "{light:?} {curve}: {share}");
            }
        }
    }

    #[test]
    fn other_orders_are_not_the_chart() {
        let seen = under([1.0, 0.9, 0.7], 1.0);
        let half_turn = |k| 23 - k;
        let mirror = |k| k / 6 * 6 + 5 - k % 6;
        let next_column = |k| k / 6 * 6 + (k + 1) % 6;
        let next_row = |k| (k + 6) % 24;
        for (name, share) in [
            ("turned by half", explained(&seen, half_turn)),
            ("mirrored", explained(&seen, mirror)),
            ("one column on", explained(&seen, next_column)),
            ("one row on", explained(&seen, next_row)),
        ] {
            assert!(share < 0.6, "{name}: {share}");
        }
    }

    #[test]
    fn two_spoilt_patches_are_forgiven() {
        let mut seen = under([1.0, 1.0, 1.0], 1.0);
        seen[3] = Some([1.0, 1.0, 1.0]);
        seen[18] = Some([0.3, 0.3, 0.3]);
        let share = explained(&seen, |k| k);
        assert!(share > 0.95, "{share}");
    }

    #[test]
    fn two_patches_that_changed_places_are_named() {
        let seen: Vec<[f64; 3]> = under([1.0, 0.9, 0.7], 1.2).into_iter().flatten().collect();
        let (right, _) = published().axes().best_swap(&seen).expect("a fit");
        let mut wrong = seen;
        wrong.swap(6, 13);
        let (share, pair) = published().axes().best_swap(&wrong).expect("a fit");
        assert_eq!(pair, [6, 13]);
        assert!(share < 0.3 && right > 0.8, "{share} {right}");
    }
}
