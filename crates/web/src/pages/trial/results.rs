//! A trial with everything that was found out about it.

use crate::error::Error;
use store::Bench;
use trial::decide::{Decision, decide};
use trial::{Photo, Reading, Trial};

/// What the trial's page, its JSON and its report all show.
#[derive(serde::Serialize)]
pub(crate) struct Results {
    pub(crate) trial: Trial,
    pub(crate) photos: Vec<Photo>,
    pub(crate) readings: Vec<Reading>,
    pub(crate) decision: Option<Decision>,
    /// Why there is no decision, in a sentence.
    pub(crate) undecided: Option<String>,
}

impl Results {
    pub(crate) fn of(bench: &mut Bench, slug: &str) -> Result<Self, Error> {
        let trial = super::find(bench, slug)?;
        let mut photos = bench.photos(trial.id)?;
        photos.sort_by_key(|p| (p.stage, p.id));
        let readings = bench.current_readings(trial.id)?;
        let (decision, undecided) = if readings.is_empty() {
            (
                None,
                Some("Nothing has been read yet. Add a photo of the pieces and mark where each lies.".to_owned()),
            )
        } else {
            match decide(&trial::rows(&trial, &readings), trial.margin_de00) {
                Ok(d) if d.comparisons.is_empty() => (
                    Some(d),
                    Some("There is no verdict yet: it takes readings of two arms after a round of washing.".to_owned()),
                ),
                Ok(d) => (Some(d), None),
                Err(error) => (None, Some(error.to_string())),
            }
        };
        Ok(Self {
            trial,
            photos,
            readings,
            decision,
            undecided,
        })
    }
}
