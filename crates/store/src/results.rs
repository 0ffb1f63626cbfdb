//! A trial's results, put together from what the bench holds.

use crate::{Bench, StoreError};
use trial::{Planned, Results, decide::Repeatability, eyes::Eyes, plan::critique};

impl Bench {
    /// The trial of that slug with all that was found out about it, if there is one.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn results(&self, slug: &str) -> Result<Option<Results>, StoreError> {
        let Some(trial) = self.trial(slug)? else {
            return Ok(None);
        };
        let photos = self.photos(trial.id)?;
        let readings = self.current_readings(trial.id)?;
        let eye_grades = self.eye_grades(trial.id)?;
        let planned = self.plan_of_trial(trial.id)?.map(|from| Planned {
            slug: from.slug,
            revision: from.number,
            findings: critique(&from.plan),
        });
        // An invented trial's photos were not taken with the studio's set-up.
        let check = match trial.invented {
            true => None,
            false => self.latest_setup_check()?,
        };
        let known = check.map(|kept| Repeatability::from(&kept.check));
        let mut results = Results::of(trial, photos, readings, eye_grades, known.as_ref());
        let sessions = self.eye_sessions(results.trial.id)?;
        let eyes = Eyes::of(
            &results.trial,
            &sessions,
            &results.eye_grades,
            &results.readings,
        );
        results.add_eyes(eyes);
        results.planned = planned;
        results.baths = self.baths_of_trial(results.trial.id)?;
        results.departures = self.departures_of_trial(results.trial.id)?;
        Ok(Some(results))
    }
}
