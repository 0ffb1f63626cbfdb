//! What each patch would be taken for had the fit not known it.

use colour::{Lab, difference};

use super::{
    chart::Chart,
    family::{self, Family, MOST_TERMS, Weights},
    model::Model,
    nearby::Nearby,
    tone::Tone,
};
use crate::light::Light;

/// How fast a family's say falls with its misses: one that misses left-out
/// patches by half more than the best has six tenths of the best one's say. Patches
/// aren't dyed cloth: a sharper choice errs more on cloth, by rendered photos.
const FALL: f64 = 1.0;
/// The say of each family where both foretell alike: the freer one bends with the
/// camera and hardly with the noise.
const OUTSET: [f64; Family::ALL.len()] = [1.0, 2.0];
/// No patch counts above this miss (CIEDE2000) when families are compared.
const WORST_DE00: f64 = 12.0;

/// The fit without one patch.
pub(super) struct LeftOut {
    /// The patch's number.
    pub patch: usize,
    /// The tone curve without it, where it is a neutral.
    pub tone: Option<Tone>,
    /// The blended weights without it.
    pub weights: Weights,
    /// Where the patch truly is.
    pub truth: Lab,
    /// Foretold minus true Lab.
    pub miss: [f64; 3],
    /// The same as one CIEDE2000 figure.
    pub miss_de00: f64,
}

/// The families blended by how well each foretells patches left out.
pub(super) struct Blend {
    pub weights: Weights,
    /// Each family's say; they sum to 1.
    pub shares: [f64; Family::ALL.len()],
    /// What both miss near a colour.
    pub nearby: Nearby,
    pub left_out: Vec<LeftOut>,
    /// One figure to choose by: the mean miss of left-out patches by the families alone.
    pub score: f64,
}

/// Weights of each family without one patch.
struct Without {
    patch: usize,
    scene: [f64; 3],
    tone: Option<Tone>,
    families: [Weights; Family::ALL.len()],
}

impl Blend {
    pub fn new(chart: &Chart<'_>, tone: &Tone, light: &Light) -> Option<Self> {
        let pairs = chart.pairs(tone, light, None);
        let fits = families(&pairs)?;
        let mut all = Vec::with_capacity(pairs.len());
        for (patch, pair) in chart.usable().zip(&pairs) {
            all.push(if chart.is_neutral(patch) {
                // The curve itself changes: the whole way has to be gone again.
                let tone = chart.tone(light, Some(patch))?;
                let fits = families(&chart.pairs(&tone, light, Some(patch)))?;
                Without {
                    patch,
                    scene: chart.scene(&tone, light, patch),
                    tone: Some(tone),
                    families: fits.map(|fit| fit.weights()),
                }
            } else {
                let [a, b] = &fits;
                Without {
                    patch,
                    scene: chart.scene(tone, light, patch),
                    tone: None,
                    families: [a.without(pair)?, b.without(pair)?],
                }
            });
        }
        let shares = shares(chart, &all);
        let mut left_out: Vec<LeftOut> = all
            .into_iter()
            .map(|without| {
                let weights = blended(&without.families, &shares);
                let lab = family::xyz(&weights, without.scene).to_lab(chart.white);
                let truth = chart.targets[without.patch].lab;
                LeftOut {
                    patch: without.patch,
                    tone: without.tone,
                    weights,
                    miss: [lab.l - truth.l, lab.a - truth.a, lab.b - truth.b],
                    miss_de00: difference::ciede2000(lab, truth),
                    truth,
                }
            })
            .collect();
        let weights = blended(&fits.map(|fit| fit.weights()), &shares);
        let score = mean(left_out.iter().map(|other| other.miss_de00));
        let nearby = add_nearby(&mut left_out, |patch| {
            let scene = chart.scene(tone, light, patch);
            family::xyz(&weights, scene).to_lab(chart.white)
        })?;
        Some(Self {
            weights,
            shares,
            nearby,
            left_out,
            score,
        })
    }
}

/// The field through what the patches are missed by, whose misses become those that
/// the others' field leaves. `foretold` tells where the model sees a patch.
fn add_nearby(left_out: &mut [LeftOut], foretold: impl Fn(usize) -> Lab) -> Option<Nearby> {
    let places = left_out.iter().map(|other| foretold(other.patch)).collect();
    let missed: Vec<[f64; 3]> = left_out.iter().map(|other| other.miss).collect();
    let (nearby, left) = Nearby::new(places, &missed)?;
    for (other, miss) in left_out.iter_mut().zip(left) {
        let truth = other.truth.to_array();
        let lab = Lab::from([0, 1, 2].map(|k| truth[k] + miss[k]));
        other.miss = miss;
        other.miss_de00 = difference::ciede2000(lab, other.truth);
    }
    Some(nearby)
}

fn families(pairs: &[super::fit::Pair<'_>]) -> Option<[Model; Family::ALL.len()]> {
    let [a, b] = Family::ALL.map(|family| Model::new(family, pairs));
    Some([a?, b?])
}

fn shares(chart: &Chart<'_>, all: &[Without]) -> [f64; Family::ALL.len()] {
    let scores: [f64; Family::ALL.len()] = std::array::from_fn(|k| {
        mean(all.iter().map(|without| {
            let lab = family::xyz(&without.families[k], without.scene).to_lab(chart.white);
            difference::ciede2000(lab, chart.targets[without.patch].lab)
        }))
    });
    let best = scores.iter().copied().fold(f64::INFINITY, f64::min);
    // A chart fitted perfectly by both families leaves nothing to compare.
    let says: [f64; Family::ALL.len()] =
        std::array::from_fn(|k| OUTSET[k] * (-FALL * (scores[k] / best.max(0.01) - 1.0)).exp());
    let sum: f64 = says.iter().sum();
    says.map(|say| say / sum)
}

fn blended(families: &[Weights], shares: &[f64]) -> Weights {
    let mut sum = [[0.0; MOST_TERMS]; 3];
    for (weights, share) in families.iter().zip(shares) {
        for (row, from) in sum.iter_mut().zip(weights) {
            for (cell, weight) in row.iter_mut().zip(from) {
                *cell += share * weight;
            }
        }
    }
    sum
}

fn mean(misses: impl Iterator<Item = f64>) -> f64 {
    let (mut sum, mut n) = (0.0, 0.0);
    for miss in misses {
        sum += miss.min(WORST_DE00);
        n += 1.0;
    }
    sum / f64::max(n, 1.0)
}
