//! The light field: how much light falls where, as a smooth surface for each channel
//! and a field about it that all share.

mod blocks;
mod edge;
mod grid;
mod ground;
mod grown;
mod local_tone;
mod rounds;
mod shade;
mod smooth;
mod surface;
mod tiles;

pub(crate) use ground::{Whereabouts, from_ground};

use std::sync::Arc;

use shade::Shade;
use surface::{Column, Frame, SLOPES, Square, usual};

use crate::{Flag, FlagCode, Point, text};

/// Logarithm of the light of each channel as a polynomial of place, 0 in the
/// chart's middle, with what the ground tells beyond it.
#[derive(Debug, Clone)]
pub(crate) struct Light {
    frame: Frame,
    coefficients: [Column; 3],
    /// Covariance of the terms by the chart alone, one for all channels.
    covariance: Square,
    /// What the ground tells of the light about the polynomial and of how sure all is;
    /// none where only the chart was looked at.
    shade: Option<Arc<Shade>>,
    is_mapped: bool,
}

impl Light {
    /// Even light on a photo of so many pixels whose chart's middle lies at `centre`.
    pub fn even(centre: Point, width_px: usize, height_px: usize) -> Self {
        Self {
            frame: Frame::new(centre, width_px, height_px),
            coefficients: [Column::zeros(); 3],
            covariance: Square::zeros(),
            shade: None,
            is_mapped: false,
        }
    }

    /// What is to be said of light that the phone made up.
    pub fn remark(&self) -> Option<Flag> {
        self.is_mapped.then(|| {
            Flag::new(
                FlagCode::LocalToneMapping,
                text::light::the_phone_seems_to_have_lit_up(),
            )
        })
    }

    /// What the light was read from, a word for the correction's name.
    pub const fn source(&self) -> &'static str {
        if self.shade.is_some() {
            "ground"
        } else {
            "chart"
        }
    }

    /// A plane with its slopes (per longer side of the photo) and their
    /// covariance. How the light bends beyond the chart is not known.
    pub fn with_plane(&self, slopes: [f64; 2], covariance: [[f64; 2]; 2]) -> Self {
        let mut light = Self {
            covariance: usual(covariance),
            ..self.clone()
        };
        for channel in &mut light.coefficients {
            channel.fixed_rows_mut::<SLOPES>(0).copy_from_slice(&slopes);
        }
        light
    }

    /// Light of each channel at a place as a multiple of that in the chart's middle.
    pub fn at(&self, place: Point) -> [f64; 3] {
        self.ln(place, &self.frame.terms(place)).map(f64::exp)
    }

    /// The logarithms of that; `terms` are the surface's there.
    fn ln(&self, place: Point, terms: &Column) -> [f64; 3] {
        let about = self.shade.as_ref().map_or(0.0, |s| s.about_surface(place));
        self.coefficients
            .map(|channel| (channel.dot(terms) + about).clamp(-3.0, 3.0))
    }

    /// Covariance of the logarithms of the light at two places, each beside that
    /// in the chart's middle.
    pub fn covariance(&self, a: Point, b: Point) -> f64 {
        if let Some(shade) = &self.shade {
            return shade.covariance(a, b);
        }
        let [a, b] = [a, b].map(|p| self.frame.terms(p));
        (a.transpose() * self.covariance * b)[0]
    }

    /// Variance of the logarithm of the light at a place beside the chart's middle.
    pub fn variance(&self, place: Point) -> f64 {
        self.covariance(place, place).max(0.0)
    }

    /// Brightest over darkest of some places, by the green channel.
    pub fn range(&self, places: &[Point]) -> f64 {
        let (mut least, mut most) = (f64::INFINITY, 0.0f64);
        for place in places {
            let [_, light, _] = self.at(*place);
            least = least.min(light);
            most = most.max(light);
        }
        if least > 0.0 { most / least } else { 1.0 }
    }
}
