//! The chart's colours, and how well 24 seen colours fit them.

use super::search::even;
use nalgebra::{Matrix4, Vector4};
use std::sync::LazyLock;

/// Patches of the chart.
pub(crate) const PATCHES: usize = 24;
/// Patches that may be left out of a fit: a shine, a thumb, a clipped white.
const SPARED: usize = 2;
/// Below this share, leaving patches out can't save a fit.
const WORTH_A_FIT: f64 = 0.4;

/// Linear sRGB of the patches, for recognition only.
///
/// Source: published xyY of the edition after November 2014, adapted from D50
/// to D65 (Bradford) and brought to linear sRGB.
const LINEAR_SRGB: [[f32; 3]; PATCHES] = [
    [0.174, 0.079, 0.053], // dark skin
    [0.560, 0.277, 0.211], // light skin
    [0.104, 0.189, 0.329], // blue sky
    [0.106, 0.151, 0.051], // foliage
    [0.228, 0.212, 0.426], // blue flower
    [0.115, 0.507, 0.411], // bluish green
    [0.746, 0.202, 0.030], // orange
    [0.059, 0.101, 0.388], // purplish blue
    [0.560, 0.080, 0.115], // moderate red
    [0.109, 0.042, 0.138], // purple
    [0.333, 0.497, 0.043], // yellow green
    [0.771, 0.358, 0.020], // orange yellow
    [0.021, 0.048, 0.284], // blue
    [0.046, 0.292, 0.061], // green
    [0.446, 0.036, 0.041], // red
    [0.842, 0.574, 0.005], // yellow
    [0.522, 0.078, 0.289], // magenta
    [0.000, 0.234, 0.377], // cyan
    [0.880, 0.885, 0.834], // white
    [0.585, 0.592, 0.584], // neutral 8
    [0.358, 0.367, 0.365], // neutral 6.5
    [0.190, 0.191, 0.190], // neutral 5
    [0.086, 0.089, 0.090], // neutral 3.5
    [0.031, 0.031, 0.032], // black
];

/// The share of the seen colours' variance that the chart explains, 0 to 1.
///
/// Each channel, on a scale of even steps, is fitted as a sum of the chart's
/// red, green, blue and a constant, which takes up lamp, white balance,
/// exposure, the camera's own primaries and most of its tone curve. `seen` gives
/// linear colours in the chart's order, none where the patch is out of sight;
/// `order` says which colour of the chart each one should be.
pub(crate) fn explained(
    seen: &[Option<[f32; 3]>; PATCHES],
    order: impl Fn(usize) -> usize,
) -> Option<f64> {
    if let Some(share) = glance(seen, &order)
        && share < WORTH_A_FIT
    {
        return Some(share);
    }
    let mut rows: Vec<([f64; 4], [f64; 3])> = seen
        .iter()
        .enumerate()
        .filter_map(|(k, colour)| Some((chart(order(k)), colour.as_ref()?.map(level))))
        .collect();
    for _ in 0..SPARED {
        let fit = share(&rows)?;
        rows.remove(fit.worst);
    }
    Some(share(&rows)?.explained)
}

/// The share explained with all 24 patches; none where some are out of sight.
///
/// The same fit as [`share`] against a basis made once: most grids tried are
/// nothing like the chart, and this tells at little cost.
fn glance(seen: &[Option<[f32; 3]>; PATCHES], order: impl Fn(usize) -> usize) -> Option<f64> {
    static BASIS: LazyLock<[[f64; PATCHES]; 3]> = LazyLock::new(basis);
    let mut levels = [[0.0; PATCHES]; 3];
    for (k, colour) in seen.iter().enumerate() {
        let colour = colour.as_ref()?;
        for (channel, value) in levels.iter_mut().zip(colour) {
            channel[order(k)] = level(*value);
        }
    }
    let (mut whole, mut explained) = (0.0, 0.0);
    for channel in &levels {
        let mean = channel.iter().sum::<f64>() / PATCHES as f64;
        whole += channel.iter().map(|v| (v - mean).powi(2)).sum::<f64>();
        for axis in BASIS.iter() {
            let along: f64 = axis.iter().zip(channel).map(|(a, v)| a * v).sum();
            explained += along * along;
        }
    }
    Some(explained / whole.max(1e-9))
}

/// The chart's red, green and blue without their means, made orthonormal.
fn basis() -> [[f64; PATCHES]; 3] {
    let mut axes = [0, 1, 2].map(|c| LINEAR_SRGB.map(|colour| level(colour[c])));
    for k in 0..3 {
        let (made, rest) = axes.split_at_mut(k);
        let axis = &mut rest[0];
        let mean = axis.iter().sum::<f64>() / PATCHES as f64;
        axis.iter_mut().for_each(|v| *v -= mean);
        for other in made {
            let along: f64 = other.iter().zip(axis.iter()).map(|(a, b)| a * b).sum();
            axis.iter_mut()
                .zip(other.iter())
                .for_each(|(v, o)| *v -= along * o);
        }
        let length = axis.iter().map(|v| v * v).sum::<f64>().sqrt();
        axis.iter_mut().for_each(|v| *v /= length);
    }
    axes
}

/// How widely the seen colours are spread on the scale of even steps: the
/// standard deviation over all channels, as a share of their mean.
pub(crate) fn spread(seen: &[Option<[f32; 3]>; PATCHES]) -> f64 {
    let seen: Vec<[f64; 3]> = seen.iter().flatten().map(|c| c.map(level)).collect();
    let (variance, mean) = variance(&seen);
    (variance / 3.0).sqrt() / (mean.iter().sum::<f64>() / 3.0).max(1e-6)
}

struct Share {
    explained: f64,
    worst: usize,
}

fn share(rows: &[([f64; 4], [f64; 3])]) -> Option<Share> {
    let mut normal = Matrix4::zeros();
    let mut right = [Vector4::zeros(); 3];
    for (x, y) in rows {
        let x = Vector4::from(*x);
        normal += x * x.transpose();
        for (sum, y) in right.iter_mut().zip(y) {
            *sum += x * *y;
        }
    }
    let inverse = normal.try_inverse()?;
    let weights = right.map(|r| inverse * r);
    let mut left_over = 0.0;
    let mut worst = (0, 0.0);
    for (k, (x, y)) in rows.iter().enumerate() {
        let x = Vector4::from(*x);
        let off: f64 = (0..3).map(|c| (y[c] - weights[c].dot(&x)).powi(2)).sum();
        left_over += off;
        // A row that pulls the fit towards itself hides part of its error.
        let pull = (x.transpose() * inverse * x)[0];
        let free = off / (1.0 - pull).max(0.05).powi(2);
        if free > worst.1 {
            worst = (k, free);
        }
    }
    let seen: Vec<[f64; 3]> = rows.iter().map(|r| r.1).collect();
    let whole = variance(&seen).0 * seen.len() as f64;
    (whole > 1e-9).then(|| Share {
        explained: (1.0 - left_over / whole).max(0.0),
        worst: worst.0,
    })
}

/// The variance summed over the channels, and the mean.
fn variance(seen: &[[f64; 3]]) -> (f64, [f64; 3]) {
    let n = seen.len().max(1) as f64;
    let mean = [0, 1, 2].map(|c| seen.iter().map(|s| s[c]).sum::<f64>() / n);
    let sum: f64 = seen
        .iter()
        .flat_map(|s| (0..3).map(move |c| (s[c] - mean[c]).powi(2)))
        .sum();
    (sum / n, mean)
}

fn chart(patch: usize) -> [f64; 4] {
    let [r, g, b] = LINEAR_SRGB[patch].map(level);
    [1.0, r, g, b]
}

fn level(linear: f32) -> f64 {
    f64::from(even(linear))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn under(light: [f32; 3], curve: f32) -> [Option<[f32; 3]>; PATCHES] {
        LINEAR_SRGB.map(|[r, g, b]| {
            let mixed = [
                0.8 * r + 0.2 * g,
                0.1 * r + 0.8 * g + 0.1 * b,
                0.25 * g + 0.75 * b,
            ];
            Some([0, 1, 2].map(|c| (mixed[c] * light[c]).powf(curve)))
        })
    }

    #[test]
    fn lamps_and_curves_leave_the_chart_recognisable() {
        for light in [[1.0, 1.0, 1.0], [0.9, 0.5, 0.2], [0.05, 0.07, 0.09]] {
            for curve in [0.7, 1.0, 1.4] {
                let share = explained(&under(light, curve), |k| k);
                assert!(
                    share.is_some_and(|s| s > 0.93),
                    "{light:?} {curve}: {share:?}"
                );
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
            assert!(share.is_some_and(|s| s < 0.6), "{name}: {share:?}");
        }
    }

    #[test]
    fn two_spoilt_patches_are_forgiven() {
        let mut seen = under([1.0, 1.0, 1.0], 1.0);
        seen[3] = Some([1.0, 1.0, 1.0]);
        seen[18] = Some([0.1, 0.1, 0.1]);
        let share = explained(&seen, |k| k);
        assert!(share.is_some_and(|s| s > 0.95), "{share:?}");
    }
}
