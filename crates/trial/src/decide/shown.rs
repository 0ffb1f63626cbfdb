//! What the difference of two arms shows, and with what chance of erring.
//!
//! Cloth that fades goes one way, towards the undyed. Where that way is clear, it
//! is looked along first: a number with a sign has a far sharper test than a vector.
//! Of the 5 times in 100 that chance may show a difference where there is none, 4
//! are spent on that way and 1 on all others together. Where no way is clear, all
//! directions are looked in alike.

use super::{
    UNBOUNDED_DE00,
    arm_change::bounded,
    change::Change,
    design::Contrast,
    ruler::{Ruler, Step},
};
use inference::{Interval, length::Length, quantile};
use nalgebra::Vector3;
use serde::{Deserialize, Serialize};

/// How often either end of an interval may miss.
const TAIL: f64 = 0.025;
/// How often the way of the fade alone may show a difference that isn't there, to
/// either side together.
pub(crate) const TAIL_OF_FADE: f64 = 0.04;
/// The same on one side.
const TAIL_ALONG: f64 = TAIL_OF_FADE / 2.0;
/// How often all directions together may show too much beside it.
pub(crate) const TAIL_AROUND_FADE: f64 = 0.01;
/// Confidence of the one-sided bound that shows equivalence.
const CONFIDENCE: f64 = 0.95;
/// Standard errors that a fade has to reach for its way to be clear.
const CLEAR: f64 = 3.0;

/// The difference of two arms along the way both fade.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Along {
    /// How much further the second arm has faded than the first, CIEDE2000 units;
    /// negative: less far.
    pub de00: f64,
    /// Lower end of its 96 % interval.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// How often chance alone shows as much, either way, 0 to 1.
    pub p: f64,
}

/// What a difference shows.
pub(super) struct Shown {
    /// Ends of the 95 % interval of the difference, CIEDE2000.
    pub low: f64,
    pub high: f64,
    /// One-sided 95 % bound that equivalence rests on.
    pub below: f64,
    /// The difference along the way of the fade, where that is clear.
    pub along: Option<Along>,
    /// The difference as a length; none where nothing is known of the scatter.
    pub length: Option<Length>,
    step: Option<Step>,
}

impl Shown {
    pub fn of(ruler: &Ruler, contrast: &Contrast, arms: [&Change; 2]) -> Self {
        let Some(length) = ruler.length(&contrast.errors) else {
            return Self {
                low: 0.0,
                high: UNBOUNDED_DE00,
                below: UNBOUNDED_DE00,
                along: None,
                length: None,
                step: None,
            };
        };
        let step = way(ruler, &length, arms).and_then(|way| ruler.along(way, &contrast.errors));
        // The search for the lower end costs most of all: it is made once.
        let around = if step.is_some() {
            TAIL_AROUND_FADE
        } else {
            TAIL
        };
        let mut interval = Interval {
            low: length.lower(1.0 - around),
            high: length.upper(1.0 - TAIL),
        };
        let mut below = length.upper(CONFIDENCE);
        let along = step.map(|step| {
            let reach = quantile::student(1.0 - TAIL_ALONG, step.df) * step.standard_error;
            interval.low = interval.low.max(step.de00.abs() - reach);
            let bound = |confidence| {
                step.de00.abs() + quantile::student(confidence, step.df) * step.standard_error
            };
            interval.high = interval.high.max(bound(1.0 - TAIL));
            below = below.max(bound(CONFIDENCE));
            Along {
                de00: step.de00,
                low: step.de00 - reach,
                high: step.de00 + reach,
                p: 2.0 * tail(&step, 0.0),
            }
        });
        let (low, high) = bounded(ruler.de00, interval);
        Self {
            low,
            high,
            below: below.max(ruler.de00),
            along,
            step,
            length: Some(length),
        }
    }

    /// How often so much would be seen if the true difference were this; 0.025 or
    /// less exactly where the lower end of the interval lies at or above it.
    pub fn chance_of(&self, true_de00: f64) -> f64 {
        let Some(length) = &self.length else {
            return 1.0;
        };
        let around = length.as_great(true_de00);
        match &self.step {
            None => around,
            Some(step) => {
                let along = tail(step, true_de00) * (TAIL / TAIL_ALONG);
                along.min(around * (TAIL / TAIL_AROUND_FADE)).min(1.0)
            }
        }
    }
}

/// How often so much along the way, to the side seen, comes of a true difference.
fn tail(step: &Step, true_de00: f64) -> f64 {
    let t = (step.de00.abs() - true_de00) / step.standard_error;
    quantile::student_above(t, step.df)
}

/// The way both arms have gone from their start, in CIELAB; none if it isn't clear.
///
/// Each arm counts by how well its change is known: such a mean tells nothing of
/// the arms' difference, so that looking along it favours no answer.
fn way(ruler: &Ruler, length: &Length, arms: [&Change; 2]) -> Option<Vector3<f64>> {
    let variance = |arm: &Change| {
        let scatter = arm.piece_scatter().covariance()?;
        Some(scatter.trace() / arm.pieces.len() as f64)
    };
    let [a, b] = arms;
    // The second arm's share is the first's part of the variance.
    let share = match (variance(a), variance(b)) {
        (Some(of_a), Some(of_b)) if of_a + of_b > 0.0 => of_a / (of_a + of_b),
        _ => 0.5,
    };
    let way = a.mean * (1.0 - share) + b.mean * share;
    (ruler.in_de00(way).norm() > CLEAR * length.standard_error()).then_some(way)
}
