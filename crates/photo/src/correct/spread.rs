//! How far the correction may be off at a colour, and how alike it is off at two.

use colour::{Lab, difference};

use super::Correction;
use crate::{
    bell::bell,
    matrix::{Matrix3, add, outer},
};

/// How much the fit moves without a patch, and how far patches left out are
/// missed: shares of each that make up the correction's error of dyed cloth.
/// Both hold the fit's own scatter, and cloth is missed in its own way.
const BY_MOVES: f64 = 0.5;
const BY_MISSES: f64 = 0.55;
/// A miss counts for colours within this distance, CIELAB.
const REACH: f64 = 30.0;
/// What a far-off patch still counts, so that no colour rests on one patch alone.
const FAR_OFF: f64 = 0.02;

impl Correction {
    /// Covariance of Lab from tone and colour model where `recorded` (linear in
    /// the file's space) was corrected by way of `scene` to `lab`.
    pub fn spread(&self, recorded: [f64; 3], scene: [f64; 3], lab: Lab) -> Matrix3 {
        let mut cov = [[0.0; 3]; 3];
        add(&mut cov, &self.moves(recorded, scene, lab), BY_MOVES);
        add(&mut cov, &self.misses_near(lab), BY_MISSES);
        // The estimate errs for cloth as it does for patches.
        for (k, sd) in self.estimate_sd.into_iter().flatten().enumerate() {
            cov[k][k] += sd * sd;
        }
        cov
    }

    /// The jackknife's covariance: by how much a colour moves as patches are
    /// left out in turn, the veil being looked for anew. The field about the models is held; what it can be off by lies
    /// in the misses of patches, each left out of it, too.
    fn moves(&self, recorded: [f64; 3], scene: [f64; 3], lab: Lab) -> Matrix3 {
        let here = self.tone.apply(recorded);
        // The light there, which a channel that the tone leaves nothing of can't tell.
        let lights =
            [0, 1, 2].map(|k| (here[k] > 0.0 && scene[k] > 0.0).then(|| here[k] / scene[k]));
        let any = lights.into_iter().flatten().next().unwrap_or(1.0);
        let n = self.left_out.len() as f64;
        let mut sum = [[0.0; 3]; 3];
        for other in &self.left_out {
            let light = match &other.tone {
                None => scene,
                Some(tone) => {
                    let there = tone.apply(recorded);
                    [0, 1, 2].map(|k| {
                        let moved = (there[k] - here[k]) / lights[k].unwrap_or(any);
                        (scene[k] + moved).max(0.0)
                    })
                }
            };
            let moved = super::family::xyz(&other.weights, light).to_lab(self.sight.white);
            let moved = self.sight.nearby.corrected(moved);
            let d = [moved.l - lab.l, moved.a - lab.a, moved.b - lab.b];
            add(&mut sum, &outer(d), (n - 1.0) / n);
        }
        sum
    }

    /// By how much patches left out are missed, those of like colour counting most.
    fn misses_near(&self, lab: Lab) -> Matrix3 {
        let mut sum = [[0.0; 3]; 3];
        let mut weights = 0.0;
        for other in &self.left_out {
            let apart = difference::cie76(lab, other.truth) / REACH;
            let weight = bell(apart) + FAR_OFF;
            add(&mut sum, &outer(other.miss), weight);
            weights += weight;
        }
        sum.map(|row| row.map(|v| v / weights))
    }
}

/// Correlation of the correction's errors at two colours, 0 to 1.
///
/// Depths of one dye are missed nearly alike, and so are colours next to each
/// other; the rest is a slow drift over the colours. Both reaches were read off
/// errors of invented dyes under many cameras and lamps.
pub(crate) fn kinship(a: Lab, b: Lab) -> f64 {
    const DRIFT: f64 = 0.3;
    const NEAR: f64 = 5.5;
    const FAR: f64 = 30.0;
    let apart = difference::cie76(a, b);
    (1.0 - DRIFT) * bell(apart / NEAR) + DRIFT * bell(apart / FAR)
}
