//! The light field: how much light falls where, as a smooth surface for each channel
//! and a field about it that all share.

mod blocks;
mod edge;
mod find_edge;
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
use surface::{Column, EDGE, Frame, SLOPES, Square, usual};

use crate::{Flag, FlagCode, Point, text};

/// A rim this fine, longer sides, may be that of a thing.
const FINE: f64 = 0.04;
/// Share of the step that an edge makes across what it lies across.
const ACROSS: f64 = 0.5;

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
    /// Variance of the step at the edge of a shadow that may be none.
    edge_doubt: f64,
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
            edge_doubt: 0.0,
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
            return shade.covariance(a, b) + self.edge_covariance(a, b);
        }
        let [a, b] = [a, b].map(|p| self.frame.terms(p));
        (a.transpose() * self.covariance * b)[0]
    }

    /// What is in doubt at the edge of a shadow: whether it is one, where it lies, and how
    /// wide its rim is.
    fn edge_covariance(&self, a: Point, b: Point) -> f64 {
        let Some(edge) = self.frame.edge else {
            return 0.0;
        };
        let [of_a, of_b] = [a, b].map(|place| {
            let made = edge.at(place) - edge.at(self.frame.centre);
            let [here, there] = [place, self.frame.centre].map(|place| edge.doubt(place));
            (made, [0, 1].map(|k| here[k] - there[k]))
        });
        let moved: f64 = (0..2).map(|k| of_a.1[k] * of_b.1[k]).sum();
        self.edge_doubt * of_a.0 * of_b.0 + self.step().powi(2) * moved
    }

    /// The step of the light at the edge of a shadow, a logarithm.
    fn step(&self) -> f64 {
        self.coefficients.iter().map(|c| c[EDGE]).sum::<f64>() / 3.0
    }

    /// Whether the edge of a shadow lies across some places.
    pub fn has_edge_across(&self, places: &[Point]) -> bool {
        let Some(edge) = self.frame.edge else {
            return false;
        };
        let made = || places.iter().map(|place| edge.at(*place));
        made().fold(0.0, f64::max) - made().fold(1.0, f64::min) > ACROSS
    }

    /// Whether the edge of a shadow may be that of the ground.
    pub fn has_doubtful_edge(&self) -> bool {
        self.edge_doubt > 0.0
    }

    /// The same where the edge of a shadow, if it is as fine as that of a thing, may as well
    /// be that of the ground: twice the doubt holds both.
    pub fn doubting_fine_edge(self) -> Self {
        let edge = self.frame.edge;
        if edge.is_none_or(|edge| edge.rim_px >= FINE * self.frame.unit_px) {
            return self;
        }
        Self {
            edge_doubt: (self.step() / 2.0).powi(2),
            ..self
        }
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
