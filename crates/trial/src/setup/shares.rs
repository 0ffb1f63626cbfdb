//! What the scatter of a reading is made of.

use super::Shown;
use crate::text;
use nalgebra::Matrix3;
use serde::{Deserialize, Serialize};
use std::{collections::BTreeMap, fmt};

/// Why readings of a piece differ from photo to photo.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// Light, exposure and the fit of the chart, alike for all pieces.
    PhotoToPhoto,
    /// The cloth's texture and the camera's noise, as each reading foretells.
    Texture,
    /// How each piece lies and the light at its place.
    Laying,
    /// Texture, noise and laying together, where readings don't tell them apart.
    LayingAndTexture,
}

impl fmt::Display for Cause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::PhotoToPhoto => text::setup::from_photo_to_photo(),
            Self::Texture => text::setup::texture_and_noise(),
            Self::Laying => text::setup::laying_anew(),
            Self::LayingAndTexture => text::setup::laying_anew_texture_and_noise(),
        })
    }
}

/// A cause with its share.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Share {
    /// The cause.
    pub cause: Cause,
    /// Its share of the variance of a single reading, 0 to 1.
    pub share: f64,
}

pub(super) fn shares(
    seen: &BTreeMap<&str, Vec<(usize, &Shown)>>,
    metric: &Matrix3<f64>,
    within: f64,
    between: f64,
) -> Vec<Share> {
    let all = within + between;
    let share = |cause, variance: f64| Share {
        cause,
        share: if all > 0.0 { variance / all } else { 0.0 },
    };
    let mut shares = vec![share(Cause::PhotoToPhoto, between)];
    match texture(seen, metric) {
        Some(foretold) => {
            // More was foretold than is there: then laying added nothing to it.
            let texture = foretold.min(within);
            shares.push(share(Cause::Texture, texture));
            shares.push(share(Cause::Laying, within - texture));
        }
        None => shares.push(share(Cause::LayingAndTexture, within)),
    }
    shares
}

/// The mean squared length that texture and noise explain; none unless every
/// reading tells.
fn texture(seen: &BTreeMap<&str, Vec<(usize, &Shown)>>, metric: &Matrix3<f64>) -> Option<f64> {
    let foretold = seen
        .values()
        .flatten()
        .map(|(_, shown)| Some((metric * Matrix3::from(shown.texture?)).trace().max(0.0)))
        .collect::<Option<Vec<f64>>>()?;
    Some(foretold.iter().sum::<f64>() / foretold.len() as f64)
}
