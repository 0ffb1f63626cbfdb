//! From recorded to scene light by the chart's neutrals.

use nalgebra::{Cholesky, DMatrix, DVector};

use super::curve::Curve;
use crate::{bell::bell, likely::unlikely};

/// A neutral patch: what each channel recorded and what light it truly sent.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Neutral {
    /// Recorded linear values.
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
    /// What each channel records where no light comes from.
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
/// The veils that are tried, shares of what the darkest neutral recorded.
const VEILS: [f64; 6] = [0.2, 0.4, 0.6, 0.7, 0.8, 0.9];
/// How much less likely (a logarithm) any veil is than none before the chart is looked at,
/// and how much less beyond that one as dark as the darkest neutral.
const RARE: f64 = 2.0;
const RARER: f64 = 5.0;
/// A smaller one changes nothing that can be seen.
const LEAST_VEIL: f64 = 0.001;
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
        // A camera lifts every channel alike; haze and glare have the colour of the light.
        let darkest = least.into_iter().fold(f64::INFINITY, f64::min);
        let veils = VEILS.into_iter().flat_map(|share| {
            [[darkest; 3], least].map(|veil| (share, veil.map(|recorded| share * recorded)))
        });
        let tried = [(0.0, [0.0; 3])].into_iter().chain(veils);
        let fits = tried.filter_map(|(share, veil)| {
            let rare = if share > 0.0 { RARE } else { 0.0 };
            let fit = Fit::new(neutrals, veil)?;
            Some((fit.likely - rare - RARER * share, fit))
        });
        let (_, fit) = fits.max_by(|a, b| a.0.total_cmp(&b.0))?;
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
        self.veil.iter().any(|veil| *veil > LEAST_VEIL)
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
        Some(Self {
            veil,
            likely: -0.5 * unlikely(&root, &left)?,
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

    /// Veils of a camera, which are grey, and of haze in the light's own colour.
    #[test]
    fn a_veil_is_found_and_taken_off() {
        let plain = Tone::fit(&neutrals(|v| 0.8 * v)).unwrap();
        assert!(!plain.is_veiled());
        for veil in [0.02, 0.05] {
            let camera = |v: f64| veil + 0.8 * v;
            let tone = Tone::fit(&neutrals(camera)).unwrap();
            assert!(tone.is_veiled());
            assert_undone(camera, &[0.01, 0.02, 0.12, 0.25, 0.8], 0.15);
            assert_eq!(tone.channel(0, 0.1 * veil), 0.0);
        }
        let hazy = GREYS.map(|light| Neutral {
            recorded: SHARES.map(|share| share * (0.8 * light + 0.04)),
            light: [light; 3],
        });
        let tone = Tone::fit(&hazy).unwrap();
        for (k, share) in SHARES.into_iter().enumerate() {
            let back = tone.channel(k, share * (0.8 * 0.02 + 0.04));
            assert!((back / 0.02 - 1.0).abs() < 0.2, "channel {k}: {back}");
        }
    }

    /// The least that a chart needs, and a long wedge of greys.
    #[test]
    fn few_neutrals_and_many_serve() {
        for steps in [4, 12] {
            let camera = |v: f64| 0.9 * v.powf(1.1);
            let greys = (0..steps).map(|i| 0.9 * 30f64.powf(-f64::from(i) / f64::from(steps - 1)));
            let neutrals: Vec<Neutral> = greys
                .map(|light| Neutral {
                    recorded: SHARES.map(|share| camera(light * share)),
                    light: [light; 3],
                })
                .collect();
            let tone = Tone::fit(&neutrals).unwrap();
            let back = tone.channel(1, camera(0.2 * SHARES[1]));
            assert!((back / 0.2 - 1.0).abs() < 0.02, "{steps} steps: {back}");
        }
    }

    #[test]
    fn curves_rise_beyond_what_the_neutrals_tell() {
        let spoilt = {
            // The white patch is stained: the curve would bend down beyond it.
            let mut neutrals = neutrals(|v| 0.8 * v);
            for recorded in &mut neutrals[0].recorded {
                *recorded *= 1.2;
            }
            neutrals
        };
        let tone = Tone::fit(&spoilt).unwrap();
        let lights: Vec<f64> = (0..=1000)
            .map(|i| tone.channel(0, f64::from(i) / 1000.0))
            .collect();
        assert!(lights.is_sorted());
        assert!(lights[1000] > lights[900]);
    }

    #[test]
    fn a_channel_that_recorded_nothing_of_black_is_borne() {
        let mut crushed = neutrals(|v| (0.8 * v - 0.02).max(0.0));
        crushed[5].recorded[2] = 0.0;
        let tone = Tone::fit(&crushed).unwrap();
        assert!((tone.channel(2, 0.8 * 0.5 * 0.36 - 0.02) / 0.36 - 1.0).abs() < 0.1);
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
