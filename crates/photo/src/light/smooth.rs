//! The smooth surface through the ground's light, and its tint.

use std::sync::Arc;

use super::{
    Light,
    blocks::Block,
    shade::Shade,
    surface::{Column, Frame, Square, usual_tint},
    tiles::{ALIKE, SMOOTHEST},
};
use crate::median::median;

/// A surface of every term through the ground's light, held by what is known of it
/// already.
pub(super) struct Surface {
    /// The ground's own lightness, as a logarithm.
    level: f64,
    /// What the surface adds to the known light, all channels together.
    common: Column,
    /// The same by channel.
    channels: [Column; 3],
}

impl Surface {
    /// The surface through blocks of ground, of which each channel tells by its `trust`;
    /// none where they don't hold it.
    pub fn fit(ground: &[&Block], trust: &[f64; 3], prior: &Square) -> Option<Self> {
        let points = Points::new(ground)?;
        // The grain is not known beforehand: begin with a coarse one.
        let (mut scatter, mut fitted) = (0.1, None);
        for _ in 0..2 {
            let fit = points.solve(&points.light, scatter, prior)?;
            scatter = points.scatter(&fit).max(SMOOTHEST);
            fitted = Some(fit);
        }
        let common = fitted?;
        // What a channel has beyond that tells the tint of light from light; it
        // bends little, and dark channels tell it badly.
        let most = trust.iter().copied().fold(0.0, f64::max);
        let tint = usual_tint();
        let mut channels = [common; 3];
        for (k, channel) in channels.iter_mut().enumerate() {
            let (own, _) = about_mean(ground.iter().map(|block| block.ln[k] - block.light));
            *channel += points.solve(&own, scatter * most / trust[k], &tint)?;
        }
        Some(Self {
            level: points.mean_light - points.mean_terms.dot(&common),
            common,
            channels,
        })
    }

    /// The logarithm of the light that the ground should send from a block.
    pub fn at(&self, block: &Block) -> f64 {
        self.level + block.terms.dot(&self.common)
    }

    /// A block's colour had the light everywhere the tint that it has in the
    /// chart's middle: under a window and a lamp, one ground has many colours.
    pub fn untinted(&self, block: &Block) -> [f64; 2] {
        let [r, g, b] = [0, 1, 2].map(|k| block.ln[k] - block.terms.dot(&self.channels[k]));
        [r - g, b - g]
    }

    /// The light already known with what the ground tells beyond it, the tint being
    /// this surface's.
    pub fn shaded(self, known: &Light, frame: Frame, shade: Shade) -> Light {
        let mut light = known.clone();
        light.frame = frame;
        for (channel, more) in light.coefficients.iter_mut().zip(&self.channels) {
            *channel += shade.surface + (more - self.common);
        }
        light.shade = Some(Arc::new(shade));
        light
    }
}

/// The members about their mean, so that the ground's own lightness drops out.
struct Points {
    terms: Vec<Column>,
    light: Vec<f64>,
    mean_terms: Column,
    mean_light: f64,
    normal: Square,
}

impl Points {
    fn new(ground: &[&Block]) -> Option<Self> {
        if ground.is_empty() {
            return None;
        }
        let mean_terms =
            ground.iter().map(|block| block.terms).sum::<Column>() / ground.len() as f64;
        let terms: Vec<Column> = ground
            .iter()
            .map(|block| block.terms - mean_terms)
            .collect();
        let mut normal = Square::zeros();
        for t in &terms {
            normal += *t * t.transpose();
        }
        let (light, mean_light) = about_mean(ground.iter().map(|block| block.light));
        Some(Self {
            terms,
            light,
            mean_terms,
            mean_light,
            normal,
        })
    }

    /// The most likely surface of values about their mean, given the prior's covariance
    /// about 0.
    fn solve(&self, values: &[f64], scatter: f64, prior: &Square) -> Option<Column> {
        let weight = 1.0 / (ALIKE * scatter * scatter);
        let hold: Square = (prior + Square::identity() * 1e-9).try_inverse()?;
        let covariance = (self.normal * weight + hold).try_inverse()?;
        let mut pull = Column::zeros();
        for (t, value) in self.terms.iter().zip(values) {
            pull += t * (weight * value);
        }
        Some(covariance * pull)
    }

    /// How far the blocks lie about a surface: a robust standard deviation.
    fn scatter(&self, surface: &Column) -> f64 {
        let residual = |(t, light): (&Column, &f64)| (light - t.dot(surface)).abs();
        1.4826 * median(self.terms.iter().zip(&self.light).map(residual))
    }
}

/// Some values about their mean, and that.
fn about_mean(values: impl ExactSizeIterator<Item = f64> + Clone) -> (Vec<f64>, f64) {
    let mean = values.clone().sum::<f64>() / values.len() as f64;
    (values.map(|value| value - mean).collect(), mean)
}
