//! The patches' edges, measured to parts of a pixel.

use super::homography::{Homography, distance};
use super::layout::Layout;
use super::search::{Level, even};
use nalgebra::{Matrix3, SMatrix, SVector};

/// Places across a side where the edge is looked for, as shares of the pitch.
const TRACKS: [f64; 5] = [-0.2, -0.1, 0.0, 0.1, 0.2];
/// The stretch of a profile, from a patch's centre outwards, in pitches.
const PROFILE: std::ops::Range<f64> = 0.18..0.62;
/// Samples of a profile: at the finest pitch about one for every half pixel.
const SAMPLES: usize = 31;
/// The least step at an edge, on the scale of even steps.
const LEAST_STEP: f64 = 0.035;
/// The share of the edges along each axis that is needed to trust the grid.
const LEAST_SHARE: f64 = 0.29;
/// Corrections of the grid below this share of the pitch are not worth another look.
const SETTLED: f64 = 0.002;
/// How near the grid an edge lies that is counted as a patch's own, pitches.
const ON_GRID: f64 = 0.06;

/// A grid fitted to the edges of its patches.
#[derive(Debug, Clone)]
pub(crate) struct Fitted {
    /// From chart coordinates (column and row) to px.
    pub(crate) map: Homography,
    /// Side of a patch as a share of the pitch.
    pub(crate) side: f64,
    /// Root mean square of the edges' distances from the grid, as a share of the pitch.
    pub(crate) off: f64,
    /// How many of each patch's four edges lie on the grid.
    pub(crate) sides: Vec<u8>,
}

/// An edge: the chart coordinates where it is seen, and what they should be.
struct Edge {
    /// The patch that it bounds.
    patch: usize,
    /// Where it is seen.
    at: [f64; 2],
    /// The axis across it.
    axis: usize,
    /// The patch's column or row on that axis.
    centre: f64,
    /// -1 for the patch's near edge, 1 for the far one.
    sign: f64,
}

/// Fits the grid to the edges, starting near them; none where they don't agree
/// with any grid.
pub(crate) fn fit(level: &Level, layout: &Layout, start: Homography) -> Option<Fitted> {
    let mut map = start;
    let mut fitted = None;
    for _ in 0..3 {
        let edges = edges(level, layout, &map);
        let (correction, side, off) = solve(&edges, layout)?;
        map = map.after(&correction.inverted());
        let mut sides = vec![0; layout.count()];
        for edge in &edges {
            let miss = correction.map(edge.at)[edge.axis] - edge.centre;
            if (edge.sign * miss - side / 2.0).abs() < ON_GRID {
                sides[edge.patch] += 1;
            }
        }
        fitted = Some(Fitted {
            map,
            side,
            off,
            sides,
        });
        let moved = |p: [f64; 2]| distance(correction.map(p), p);
        if layout.corners(0.5).into_iter().all(|p| moved(p) < SETTLED) {
            break;
        }
    }
    fitted.filter(|f| f.off < 0.035 && (0.6..1.03).contains(&f.side))
}

fn edges(level: &Level, layout: &Layout, map: &Homography) -> Vec<Edge> {
    let mut edges = Vec::new();
    for patch in 0..layout.count() {
        let centre = layout.place(patch);
        for axis in 0..2 {
            for sign in [-1.0, 1.0] {
                if let Some(reach) = reach(level, map, centre, axis, sign) {
                    let mut at = centre;
                    at[axis] += sign * reach;
                    edges.push(Edge {
                        patch,
                        at,
                        axis,
                        centre: centre[axis],
                        sign,
                    });
                }
            }
        }
    }
    edges
}

/// How far from its centre a patch ends, in pitches.
fn reach(level: &Level, map: &Homography, centre: [f64; 2], axis: usize, sign: f64) -> Option<f64> {
    let spacing = (PROFILE.end - PROFILE.start) / (SAMPLES - 1) as f64;
    let gain = level.gain();
    let mut profile = [[0.0f64; 3]; SAMPLES];
    for (k, colour) in profile.iter_mut().enumerate() {
        let out = PROFILE.start + spacing * k as f64;
        for track in TRACKS {
            let mut at = centre;
            at[axis] += sign * out;
            at[1 - axis] += track;
            let seen = level.at(map.map(at))?;
            for (sum, value) in colour.iter_mut().zip(seen) {
                *sum += f64::from(even(value * gain)) / TRACKS.len() as f64;
            }
        }
    }
    let mean = |from: f64, to: f64| {
        let index = |q: f64| ((q - PROFILE.start) / spacing).round() as usize;
        let part = &profile[index(from)..=index(to)];
        [0, 1, 2].map(|c| part.iter().map(|p| p[c]).sum::<f64>() / part.len() as f64)
    };
    let inside = mean(0.18, 0.27);
    // Half-way to the neighbour lies the middle of the gap.
    let gap = mean(0.49, 0.51);
    let step = [0, 1, 2].map(|c| gap[c] - inside[c]);
    let height: f64 = step.iter().map(|s| s * s).sum();
    if height.sqrt() < LEAST_STEP {
        return None;
    }
    let along = profile.map(|p| (0..3).map(|c| (p[c] - inside[c]) * step[c]).sum::<f64>() / height);
    let crossing = (1..SAMPLES).find(|&k| along[k - 1] < 0.5 && along[k] >= 0.5)?;
    let part = (0.5 - along[crossing - 1]) / (along[crossing] - along[crossing - 1]);
    Some(PROFILE.start + spacing * (crossing as f64 - 1.0 + part))
}

/// The map from seen to true chart coordinates, the side and the remaining error,
/// by least squares with falling weights for edges that stand apart.
fn solve(edges: &[Edge], layout: &Layout) -> Option<(Homography, f64, f64)> {
    let least = (LEAST_SHARE * 2.0 * layout.count() as f64) as usize;
    if (0..2).any(|axis| edges.iter().filter(|e| e.axis == axis).count() <= least) {
        return None;
    }
    let mut weights = vec![1.0; edges.len()];
    let mut half = 0.42;
    let mut answer = None;
    for _ in 0..8 {
        let mut normal = SMatrix::<f64, 9, 9>::identity() * 1e-9;
        let mut right = SVector::<f64, 9>::zeros();
        for (edge, weight) in edges.iter().zip(&weights) {
            let [u, v] = edge.at;
            let target = edge.centre + edge.sign * half;
            let mut row = SVector::<f64, 9>::zeros();
            let first = 3 * edge.axis;
            (row[first], row[first + 1], row[first + 2]) = (u, v, 1.0);
            (row[6], row[7], row[8]) = (-target * u, -target * v, -edge.sign);
            normal += row * row.transpose() * *weight;
            right += row * (edge.centre * *weight);
        }
        let g = normal.cholesky()?.solve(&right);
        half = g[8];
        let map = Homography::new(Matrix3::new(
            g[0], g[1], g[2], g[3], g[4], g[5], g[6], g[7], 1.0,
        ))?;
        let off: Vec<f64> = edges
            .iter()
            .map(|e| map.map(e.at)[e.axis] - (e.centre + e.sign * half))
            .collect();
        let mut sorted: Vec<f64> = off.iter().map(|o| o.abs()).collect();
        sorted.sort_by(f64::total_cmp);
        // 1.48 times the median of the absolute errors is their usual spread.
        let usual = (1.48 * sorted[sorted.len() / 2]).max(0.003);
        for (weight, off) in weights.iter_mut().zip(&off) {
            // Tukey's biweight.
            let t = off / (4.7 * usual);
            *weight = if t.abs() < 1.0 {
                (1.0 - t * t).powi(2)
            } else {
                0.0
            };
        }
        answer = Some((map, 2.0 * half, usual));
    }
    answer
}
