//! From recorded to scene light, channel by channel, by the chart's neutrals.

use crate::text;

/// How freely the tone curve may bend.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Bend {
    /// The file's own curve, each channel times a gain.
    Gain,
    /// A power on top of it.
    Power,
    /// A curve of the second degree in logarithms.
    Parabola,
    /// A monotone curve through every neutral.
    Through,
}

impl Bend {
    pub const ALL: [Self; 4] = [Self::Gain, Self::Power, Self::Parabola, Self::Through];

    /// This bend and no other.
    pub fn alone(self) -> Shares {
        Self::ALL.map(|other| if other == self { 1.0 } else { 0.0 })
    }

    pub fn name(self) -> &'static str {
        match self {
            Self::Gain => text::correct::gain(),
            Self::Power => text::correct::power(),
            Self::Parabola => text::correct::parabola(),
            Self::Through => text::correct::curve_through_the_neutrals(),
        }
    }
}

/// The share that each bend has in a tone curve, in the order of [`Bend::ALL`]; they
/// sum to 1.
pub(crate) type Shares = [f64; Bend::ALL.len()];

/// A neutral patch: what each channel recorded and what light it truly sent.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Neutral {
    /// Recorded linear values, above 0.
    pub recorded: [f64; 3],
    /// True light of each channel, a share of the perfect white times the light field.
    pub light: [f64; 3],
}

/// Three channel curves in logarithms, each the mean of several by their shares.
#[derive(Debug, Clone)]
pub(crate) struct Tone {
    channels: [Vec<(f64, Curve)>; 3],
}

/// A monotone cubic through knots, straight beyond them.
#[derive(Debug, Clone)]
struct Curve {
    x: Vec<f64>,
    y: Vec<f64>,
    slope: Vec<f64>,
}

/// The least recorded value that is told from nothing.
const FLOOR: f64 = 1.0e-4;
/// A smaller share changes nothing that can be seen.
const LEAST_SHARE: f64 = 1.0e-3;

impl Tone {
    /// The curves for some neutrals (two at least), or none when they don't rise.
    /// Bends that these neutrals don't allow leave their share to the others.
    pub fn fit(neutrals: &[Neutral], shares: &Shares) -> Option<Self> {
        let mut channels: [Vec<(f64, Curve)>; 3] = Default::default();
        for (bend, share) in Bend::ALL.into_iter().zip(shares) {
            if *share < LEAST_SHARE {
                continue;
            }
            let curve = |channel: usize| Curve::of_channel(neutrals, channel, bend);
            if let (Some(r), Some(g), Some(b)) = (curve(0), curve(1), curve(2)) {
                for (channel, curve) in channels.iter_mut().zip([r, g, b]) {
                    channel.push((*share, curve));
                }
            }
        }
        let sum: f64 = channels[0].iter().map(|(share, _)| share).sum();
        for (share, _) in channels.iter_mut().flatten() {
            *share /= sum;
        }
        (sum > 0.0).then_some(Self { channels })
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
        if recorded <= 0.0 {
            return 0.0;
        }
        let held = recorded.max(FLOOR);
        // Below the floor the curve goes straight to zero.
        let curves = self.channels[channel].iter();
        let ln: f64 = curves
            .map(|(share, curve)| share * curve.at(held.ln()))
            .sum();
        ln.exp() * recorded / held
    }
}

impl Curve {
    fn of_channel(neutrals: &[Neutral], channel: usize, bend: Bend) -> Option<Self> {
        let ln = |v: f64| v.max(FLOOR).ln();
        let point = |n: &Neutral| (ln(n.recorded[channel]), ln(n.light[channel]));
        let mut points: Vec<(f64, f64)> = neutrals.iter().map(point).collect();
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        Self::fit(&points, bend)
    }

    fn fit(points: &[(f64, f64)], bend: Bend) -> Option<Self> {
        let n = points.len() as f64;
        if points.len() < 2 || points[points.len() - 1].0 - points[0].0 < 0.5 {
            return None;
        }
        let (mx, my) = (
            points.iter().map(|p| p.0).sum::<f64>() / n,
            points.iter().map(|p| p.1).sum::<f64>() / n,
        );
        match bend {
            Bend::Gain => Some(Self::line(points, mx, my, 1.0)),
            Bend::Power => {
                let sxx: f64 = points.iter().map(|p| (p.0 - mx).powi(2)).sum();
                let sxy: f64 = points.iter().map(|p| (p.0 - mx) * (p.1 - my)).sum();
                let slope = sxy / sxx;
                (0.3..3.0)
                    .contains(&slope)
                    .then(|| Self::line(points, mx, my, slope))
            }
            Bend::Parabola => Self::parabola(points, mx),
            Bend::Through => Self::through(points),
        }
    }

    fn line(points: &[(f64, f64)], mx: f64, my: f64, slope: f64) -> Self {
        let (from, to) = (points[0].0, points[points.len() - 1].0);
        Self {
            x: vec![from, to],
            y: vec![my + slope * (from - mx), my + slope * (to - mx)],
            slope: vec![slope; 2],
        }
    }

    fn parabola(points: &[(f64, f64)], mx: f64) -> Option<Self> {
        if points.len() < 4 {
            return None;
        }
        let rows: Vec<[f64; 3]> = points
            .iter()
            .map(|p| [1.0, p.0 - mx, (p.0 - mx).powi(2)])
            .collect();
        let a = nalgebra::DMatrix::from_fn(rows.len(), 3, |r, c| rows[r][c]);
        let b = nalgebra::DVector::from_iterator(points.len(), points.iter().map(|p| p.1));
        let c = (a.transpose() * &a).lu().solve(&(a.transpose() * b))?;
        let knots: Vec<f64> = points.iter().map(|p| p.0).collect();
        let slope: Vec<f64> = knots.iter().map(|x| c[1] + 2.0 * c[2] * (x - mx)).collect();
        slope.iter().all(|s| (0.2..4.0).contains(s)).then(|| Self {
            y: knots
                .iter()
                .map(|x| c[0] + c[1] * (x - mx) + c[2] * (x - mx).powi(2))
                .collect(),
            x: knots,
            slope,
        })
    }

    /// Fritsch and Carlson's monotone cubic (SIAM J. Numer. Anal. 17, 1980).
    fn through(points: &[(f64, f64)]) -> Option<Self> {
        let (x, y): (Vec<f64>, Vec<f64>) = points.iter().copied().unzip();
        let rises = x.windows(2).all(|p| p[1] - p[0] > 1e-3) && y.windows(2).all(|p| p[1] > p[0]);
        if !rises {
            return None;
        }
        let n = x.len();
        let secant: Vec<f64> = (0..n - 1)
            .map(|i| (y[i + 1] - y[i]) / (x[i + 1] - x[i]))
            .collect();
        let mut slope = vec![0.0; n];
        for i in 1..n - 1 {
            // The harmonic mean never overshoots.
            slope[i] = 2.0 * secant[i - 1] * secant[i] / (secant[i - 1] + secant[i]);
        }
        slope[0] = secant[0].clamp(0.4, 2.5);
        slope[n - 1] = secant[n - 2].clamp(0.4, 2.5);
        Some(Self { x, y, slope })
    }

    fn at(&self, x: f64) -> f64 {
        let last = self.x.len() - 1;
        if x <= self.x[0] {
            return self.y[0] + self.slope[0] * (x - self.x[0]);
        }
        if x >= self.x[last] {
            return self.y[last] + self.slope[last] * (x - self.x[last]);
        }
        let k = self.x.partition_point(|&knot| knot <= x) - 1;
        let h = self.x[k + 1] - self.x[k];
        let t = (x - self.x[k]) / h;
        let (t2, t3) = (t * t, t * t * t);
        (2.0 * t3 - 3.0 * t2 + 1.0) * self.y[k]
            + (t3 - 2.0 * t2 + t) * h * self.slope[k]
            + (-2.0 * t3 + 3.0 * t2) * self.y[k + 1]
            + (t3 - t2) * h * self.slope[k + 1]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn neutrals(camera: impl Fn(f64) -> f64) -> Vec<Neutral> {
        [0.90, 0.59, 0.36, 0.19, 0.09, 0.03]
            .map(|light| Neutral {
                recorded: [camera(light), camera(light * 0.8), camera(light * 1.1)],
                light: [light; 3],
            })
            .to_vec()
    }

    #[test]
    fn a_gain_is_undone_by_every_bend() {
        let neutrals = neutrals(|v| 0.7 * v);
        for bend in Bend::ALL {
            let tone = Tone::fit(&neutrals, &bend.alone()).unwrap();
            let light = tone.apply([0.7 * 0.25, 0.7 * 0.2, 0.7 * 0.275]);
            for v in light {
                assert!((v - 0.25).abs() < 1e-9, "{bend:?} {v}");
            }
        }
    }

    #[test]
    fn an_s_curve_is_undone_by_a_curve_through_the_neutrals() {
        let s = |v: f64| {
            let t = v.sqrt();
            t * t * (1.6 - 0.6 * t)
        };
        let tone = Tone::fit(&neutrals(s), &Bend::Through.alone()).unwrap();
        for light in [0.05, 0.12, 0.25, 0.5, 0.8] {
            let back = tone.channel(0, s(light));
            assert!((back / light - 1.0).abs() < 0.02, "{light} {back}");
        }
    }

    #[test]
    fn neutrals_that_fall_give_no_curve() {
        let mut wrong = neutrals(|v| v);
        wrong.swap(0, 5);
        let light = wrong[0].light;
        wrong[0].light = wrong[5].light;
        wrong[5].light = light;
        let mut flat = neutrals(|v| v);
        for n in &mut flat {
            n.recorded = [0.5; 3];
        }
        assert!(Tone::fit(&flat, &Bend::Through.alone()).is_none());
    }
}
