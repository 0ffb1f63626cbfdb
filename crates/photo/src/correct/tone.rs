//! From recorded to scene light, channel by channel, by the chart's neutrals.

use nalgebra::{Cholesky, DMatrix, DVector};

use super::curve::Curve;
use crate::bell::bell;

/// A neutral patch: what each channel recorded and what light it truly sent.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Neutral {
    /// Recorded linear values, above 0.
    pub recorded: [f64; 3],
    /// True light of each channel, a share of the perfect white times the light field.
    pub light: [f64; 3],
}

/// The file's own curve undone further: a camera bends one curve for all channels, into
/// each of which the lamp and the white balance send their own share of the light, and
/// the lens's veiling glare or the camera itself may have lifted black.
///
/// The logarithms of what the file's curve leaves to do are a Gaussian process over
/// channels and recorded values: a gain by channel, a power on top of the file's curve,
/// and a smooth shape that nearly all channels share, so that each tells of the others
/// what its own neutrals lie too far apart to tell. Other channels reach farther up, too,
/// than the warm lamp's blue.
///
/// # Source
/// Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), 2.2, 2.7, 5.4.
#[derive(Debug, Clone)]
pub(crate) struct Tone {
    /// Logarithm of light by that of the recorded value less the veil.
    channels: [Curve; 3],
    /// What is recorded where no light comes from.
    veil: [f64; 3],
}

/// Standard deviations of a channel's gain, which may be anything, and of the power that
/// the file's curve is taken to, of all channels and of one beside the others.
const GAIN: f64 = 2.0;
const POWER: f64 = 0.3;
const OWN_POWER: f64 = 0.05;
/// Standard deviation of the shape, and how far it is alike, by recorded values as the
/// eye's steps (to the 1/2.4, the power of IEC 61966-2-1). By rendered photos; half and
/// twice as much serve nearly as well.
const SHAPE: f64 = 0.4;
const REACH: f64 = 0.6;
const STEPS: f64 = 2.4;
/// Share of the shape's variance that each channel has for itself.
const OWN_SHAPE: f64 = 0.003;
/// How far a neutral lies off the curve, standard deviation of the logarithm: grey is
/// not wholly grey, and its light is not known better.
const OFF: f64 = 0.02;
/// How far it is read wrong besides.
const MISREAD: f64 = 0.0003;
/// The veils that are tried, shares of what the darkest neutral recorded, and how much
/// less likely (a logarithm) a whole one is than none before the chart is looked at.
const VEILS: [f64; 7] = [0.0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.9];
const RARE: f64 = 5.0;
/// The least recorded value that is told from nothing.
const FLOOR: f64 = 1.0e-4;
/// Knots of a channel's curve.
const KNOTS: usize = 24;
/// Beyond the neutrals a curve rises by no less than this, logarithm by logarithm.
const LEAST_SLOPE: f64 = 0.3;
/// Least span of the neutrals' recorded values, a logarithm: less is no scale.
const LEAST_SPAN: f64 = 0.5;

impl Tone {
    /// The curves for some neutrals (two at least), or none when they don't rise.
    pub fn fit(neutrals: &[Neutral]) -> Option<Self> {
        let least = [0, 1, 2].map(|k| extreme(neutrals, k, f64::min));
        let most = [0, 1, 2].map(|k| extreme(neutrals, k, f64::max));
        let is_scale = |k: usize| (most[k] / least[k]).ln() >= LEAST_SPAN;
        if !(0..3).all(is_scale) {
            return None;
        }
        let tried = VEILS.into_iter().filter_map(|share| {
            let fit = Fit::new(neutrals, least.map(|least| share * least))?;
            Some((fit.likely - RARE * share, fit))
        });
        let (_, fit) = tried.max_by(|a, b| a.0.total_cmp(&b.0))?;
        let curve = |k: usize| {
            let [from, to] = [least, most].map(|all| (all[k] - fit.veil[k]).max(FLOOR).ln());
            Curve::through(rising(fit.knots(k), from, to).into_iter())
        };
        Some(Self {
            channels: [curve(0)?, curve(1)?, curve(2)?],
            veil: fit.veil,
        })
    }

    /// Whether black was found to be lifted.
    pub fn is_veiled(&self) -> bool {
        self.veil.iter().any(|veil| *veil > 0.0)
    }

    /// Scene light of recorded values.
    pub fn apply(&self, recorded: [f64; 3]) -> [f64; 3] {
        [0, 1, 2].map(|k| self.channel(k, recorded[k]))
    }

    /// Scene light of every code value, `file` being what the file's own curve makes of it.
    pub fn table(&self, file: &[[f64; 256]; 3]) -> [[f64; 256]; 3] {
        [0, 1, 2].map(|k| file[k].map(|recorded| self.channel(k, recorded)))
    }

    /// Scene light of one channel's recorded value.
    pub fn channel(&self, channel: usize, recorded: f64) -> f64 {
        let above = recorded - self.veil[channel];
        if above <= 0.0 {
            return 0.0;
        }
        let held = above.max(FLOOR);
        // Below the floor the curve goes straight to zero.
        self.channels[channel].at(held.ln()).exp() * above / held
    }
}

/// The least or the most that a channel recorded of the neutrals.
fn extreme(neutrals: &[Neutral], channel: usize, of: impl Fn(f64, f64) -> f64) -> f64 {
    let recorded = neutrals.iter().map(|n| n.recorded[channel].max(FLOOR));
    recorded.reduce(of).unwrap_or(f64::NAN)
}

/// Knots that rise beyond what the neutrals tell, `from` and `to`, too.
fn rising(mut knots: Vec<(f64, f64)>, from: f64, to: f64) -> Vec<(f64, f64)> {
    let step = |a: (f64, f64), b: (f64, f64)| LEAST_SLOPE * (b.0 - a.0);
    for i in (0..knots.len() - 1).rev() {
        if knots[i].0 < from {
            knots[i].1 = knots[i]
                .1
                .min(knots[i + 1].1 - step(knots[i], knots[i + 1]));
        }
    }
    for i in 1..knots.len() {
        if knots[i].0 > to {
            knots[i].1 = knots[i]
                .1
                .max(knots[i - 1].1 + step(knots[i - 1], knots[i]));
        }
    }
    knots
}

/// A recorded value in one of the channels.
#[derive(Debug, Clone, Copy)]
struct Place {
    channel: usize,
    /// Logarithm of the value.
    ln: f64,
    /// The value by the eye's steps.
    step: f64,
}

impl Place {
    fn new(channel: usize, ln: f64) -> Self {
        Self {
            channel,
            ln,
            step: (ln / STEPS).exp(),
        }
    }

    /// Covariance of what the file's curve leaves to do at two places.
    fn covariance(self, other: Self) -> f64 {
        let own = f64::from(u8::from(self.channel == other.channel));
        // Where a power changes nothing: a fifth of the scale, a middle grey.
        let [here, there] = [self, other].map(|place| place.ln - 0.2f64.ln());
        GAIN * GAIN * (1.0 + own)
            + (POWER * POWER + own * OWN_POWER * OWN_POWER) * here * there
            + SHAPE * SHAPE * (1.0 + own * OWN_SHAPE) * bell((self.step - other.step) / REACH)
    }
}

/// The process with a veil taken off.
struct Fit {
    veil: [f64; 3],
    places: Vec<Place>,
    pulls: DVector<f64>,
    /// Logarithm of how likely the neutrals are, but for a constant.
    likely: f64,
}

impl Fit {
    fn new(neutrals: &[Neutral], veil: [f64; 3]) -> Option<Self> {
        let of_channel = |k: usize| {
            neutrals.iter().map(move |n| {
                let above = (n.recorded[k] - veil[k]).max(FLOOR);
                (Place::new(k, above.ln()), n.light[k].max(FLOOR).ln())
            })
        };
        let (places, lights): (Vec<Place>, Vec<f64>) = (0..3).flat_map(of_channel).unzip();
        let n = places.len();
        let covariance = DMatrix::from_fn(n, n, |r, c| {
            let alone = if r == c {
                OFF * OFF + (MISREAD / places[r].ln.exp()).powi(2)
            } else {
                0.0
            };
            places[r].covariance(places[c]) + alone
        });
        let left = DVector::from_fn(n, |r, _| lights[r] - places[r].ln);
        let root = Cholesky::new(covariance)?;
        let pulls = root.solve(&left);
        let spread: f64 = root.l_dirty().diagonal().iter().map(|v| v.ln()).sum();
        Some(Self {
            veil,
            likely: -0.5 * pulls.dot(&left) - spread,
            places,
            pulls,
        })
    }

    /// The curve of a channel by the eye's steps, from the floor to the file's full scale.
    fn knots(&self, channel: usize) -> Vec<(f64, f64)> {
        let least = FLOOR.powf(1.0 / STEPS);
        let step = |i: usize| least + (1.0 - least) * i as f64 / KNOTS as f64;
        (0..=KNOTS)
            .map(|i| STEPS * step(i).ln())
            .map(|ln| (ln, self.at(channel, ln)))
            .collect()
    }

    /// Logarithm of the light where a channel recorded so much above the veil.
    fn at(&self, channel: usize, ln: f64) -> f64 {
        let here = Place::new(channel, ln);
        let told = self.places.iter().zip(self.pulls.iter());
        ln + told
            .map(|(place, pull)| pull * here.covariance(*place))
            .sum::<f64>()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GREYS: [f64; 6] = [0.90, 0.59, 0.36, 0.19, 0.09, 0.03];
    /// What a lamp and the white balance send into each channel.
    const SHARES: [f64; 3] = [1.0, 0.8, 0.5];

    /// The chart's greys as a camera records them.
    fn neutrals(camera: impl Fn(f64) -> f64) -> Vec<Neutral> {
        GREYS
            .map(|light| Neutral {
                recorded: SHARES.map(|share| camera(light * share)),
                light: [light; 3],
            })
            .to_vec()
    }

    fn assert_undone(camera: impl Fn(f64) -> f64, lights: &[f64], within: f64) {
        let tone = Tone::fit(&neutrals(&camera)).unwrap();
        for &light in lights {
            for (k, share) in SHARES.into_iter().enumerate() {
                let back = tone.channel(k, camera(light * share));
                assert!(
                    (back / light - 1.0).abs() < within,
                    "channel {k}, light {light}: {back}"
                );
            }
        }
    }

    #[test]
    fn a_gain_and_a_power_are_undone() {
        assert_undone(|v| 0.7 * v, &[0.05, 0.25, 0.9], 0.004);
        assert_undone(|v| 0.9 * v.powf(1.2), &[0.05, 0.25, 0.9], 0.01);
    }

    /// A shoulder as of film and an S-curve on the file's steps.
    #[test]
    fn a_shoulder_and_an_s_curve_are_undone() {
        let shoulder = |v: f64| {
            let t = v.powf(1.0 / 2.4);
            (1.6 * t / (1.0 + 0.6 * t)).powf(2.4)
        };
        assert_undone(shoulder, &[0.05, 0.12, 0.25, 0.5, 0.8], 0.03);
        let s = |v: f64| {
            let t = v.powf(1.0 / 2.4);
            (t + 0.35 * (t * t * (3.0 - 2.0 * t) - t)).powf(2.4)
        };
        assert_undone(s, &[0.05, 0.12, 0.25, 0.5, 0.8], 0.03);
    }

    /// A cloth may send more of a warm lamp's red than the white patch does of its own
    /// blue: what lies beyond a channel's own neutrals the others' tell.
    #[test]
    fn a_channel_learns_from_the_others_what_lies_beyond_its_own_white() {
        let shoulder = |v: f64| {
            let t = v.powf(1.0 / 2.4);
            (2.0 * t / (1.0 + t)).powf(2.4)
        };
        let tone = Tone::fit(&neutrals(shoulder)).unwrap();
        for k in [1, 2] {
            let back = tone.channel(k, shoulder(1.1 * SHARES[k]));
            assert!((back / 1.1 - 1.0).abs() < 0.03, "channel {k}: {back}");
        }
    }

    #[test]
    fn a_veil_is_found_and_taken_off() {
        let plain = Tone::fit(&neutrals(|v| 0.8 * v)).unwrap();
        assert!(!plain.is_veiled());
        let camera = |v: f64| 0.02 + 0.8 * v;
        assert!(Tone::fit(&neutrals(camera)).unwrap().is_veiled());
        assert_undone(camera, &[0.05, 0.12, 0.25, 0.5, 0.8], 0.05);
        assert_eq!(Tone::fit(&neutrals(camera)).unwrap().channel(0, 0.0), 0.0);
    }

    #[test]
    fn neutrals_that_fall_or_stay_give_no_curve() {
        let falling = neutrals(|v| 0.03 / v);
        assert!(Tone::fit(&falling).is_none());
        let flat = neutrals(|_| 0.5);
        assert!(Tone::fit(&flat).is_none());
        assert!(Tone::fit(&[]).is_none());
    }
}
