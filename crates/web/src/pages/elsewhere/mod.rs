//! Readings from elsewhere and grades by eye: adding them, withdrawing them.

pub(crate) mod add;
pub(crate) mod grade;
pub(crate) mod new;
pub(crate) mod preview;
pub(crate) mod sheet;
pub(crate) mod withdraw;

use crate::error::Error;
use store::Bench;
use trial::{EyeGrade, Reading, Trial};

/// A trial with what was read and judged of it, before anything follows from that.
pub(crate) struct Known {
    pub(crate) trial: Trial,
    pub(crate) readings: Vec<Reading>,
    pub(crate) eye_grades: Vec<EyeGrade>,
    /// The last stage of which anything is known.
    pub(crate) last_stage: u32,
}

impl Known {
    pub(crate) fn of(bench: &mut Bench, slug: &str) -> Result<Self, Error> {
        let trial = crate::pages::trial::find(bench, slug)?;
        let readings = bench.current_readings(trial.id)?;
        let photos = bench.photos(trial.id)?;
        let stages = photos.iter().map(|photo| photo.stage);
        let stages = stages.chain(readings.iter().map(|reading| reading.stage));
        Ok(Self {
            last_stage: stages.max().unwrap_or(0),
            eye_grades: bench.eye_grades(trial.id)?,
            readings,
            trial,
        })
    }
}
