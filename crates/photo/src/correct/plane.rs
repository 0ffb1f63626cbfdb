//! The light's slope across the chart, from the patches themselves.

use super::{Chart, family};
use crate::{light::Light, matrix::apply, median::median};
use nalgebra::{Matrix2, Vector2};

/// How steep light usually is: standard deviation of the logarithm per longer
/// side of the photo.
const USUAL_SLOPE: f64 = 0.25;

/// The plane of light under which the patches fit best, beginning from even light.
pub(super) fn plane(chart: &Chart<'_>, even: &Light) -> Option<Light> {
    let none = [[0.0; 2]; 2];
    let mut slopes = [0.0; 2];
    let mut covariance = none;
    for _ in 0..4 {
        let here = misses(chart, &even.with_plane(slopes, none))?;
        const STEP: f64 = 0.01;
        let mut columns = Vec::with_capacity(2);
        for k in 0..2 {
            let mut moved = slopes;
            moved[k] += STEP;
            let there = misses(chart, &even.with_plane(moved, none))?;
            columns.push(
                there
                    .iter()
                    .zip(&here)
                    .map(|(t, h)| (t - h) / STEP)
                    .collect::<Vec<f64>>(),
            );
        }
        // Patches that fit badly for reasons of their own count less (Huber).
        let scale = median(here.iter().map(|v| v.abs())).max(0.05) * 2.0;
        let weights: Vec<f64> = here.iter().map(|r| (scale / r.abs()).min(1.0)).collect();
        let dot = |a: &[f64], b: &[f64]| -> f64 {
            a.iter()
                .zip(b)
                .zip(&weights)
                .map(|((x, y), w)| x * y * w)
                .sum()
        };
        let (jx, jy) = (&columns[0], &columns[1]);
        let freedom = (here.len() as f64 - 20.0).max(4.0);
        let variance = dot(&here, &here) / freedom;
        let hold = variance / (USUAL_SLOPE * USUAL_SLOPE);
        let normal = Matrix2::new(
            dot(jx, jx) + hold,
            dot(jx, jy),
            dot(jx, jy),
            dot(jy, jy) + hold,
        );
        let inverse = normal.try_inverse()?;
        let right = Vector2::new(
            -dot(jx, &here) - hold * slopes[0],
            -dot(jy, &here) - hold * slopes[1],
        );
        let step = inverse * right;
        slopes = [
            (slopes[0] + step[0].clamp(-0.5, 0.5)).clamp(-2.0, 2.0),
            (slopes[1] + step[1].clamp(-0.5, 0.5)).clamp(-2.0, 2.0),
        ];
        covariance = [
            [variance * inverse[(0, 0)], variance * inverse[(0, 1)]],
            [variance * inverse[(1, 0)], variance * inverse[(1, 1)]],
        ];
    }
    Some(even.with_plane(slopes, covariance))
}

/// By how much each usable patch is missed in L*, a* and b*, eyes' weights applied.
fn misses(chart: &Chart<'_>, light: &Light) -> Option<Vec<f64>> {
    let (tone, weights) = chart.quick(light)?;
    let mut out = Vec::with_capacity(3 * chart.len());
    for i in chart.usable() {
        let lab = family::xyz(&weights, chart.scene(&tone, light, i)).to_lab(chart.white);
        let truth = chart.targets[i].lab;
        let d = [lab.l - truth.l, lab.a - truth.a, lab.b - truth.b];
        out.extend(apply(&chart.targets[i].to_de00, d));
    }
    Some(out)
}
