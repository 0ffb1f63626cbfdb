//! What the bench knows about the studio: how much equal pieces differ in it.

use crate::{Bench, StoreError};
use trial::plan::Scatter;

/// Trials that are looked back on, the newest.
const LOOKED_BACK_ON: usize = 20;
/// Trials among which they are looked for: invented ones don't count.
const LOOKED_AT: u32 = 100;

impl Bench {
    /// How much equal pieces differ, by the newest set-up check and the newest past
    /// trials; none where neither says anything.
    ///
    /// # Errors
    /// The database can't be read, or holds what can't be understood.
    pub fn studio_scatter(&self) -> Result<Option<Scatter>, StoreError> {
        let check = self.latest_setup_check()?;
        let mut past = Vec::new();
        let trials = self.trials_before(None, LOOKED_AT)?.into_iter();
        for summary in trials
            .filter(|summary| !summary.invented)
            .take(LOOKED_BACK_ON)
        {
            if let Some(trial) = self.trial_by_id(summary.id)? {
                let readings = self.current_readings(trial.id)?;
                past.push((trial, readings));
            }
        }
        let check = check.as_ref().map(|kept| (kept.name.as_str(), &kept.check));
        Ok(Scatter::of_studio(check, &past))
    }
}
