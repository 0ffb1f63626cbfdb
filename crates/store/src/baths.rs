//! The baths of a trial: recipes that its runs followed, and those that are for it.

use crate::{Bench, StoreError};
use dyeing::Plan;
use trial::{Bath, TrialId};

impl Bench {
    /// The recipes that a trial's runs followed, as of the revisions they followed, then the newest
    /// revisions of recipes for it that no run followed yet.
    ///
    /// # Errors
    /// The database can't be read, or holds a recipe that can't be understood.
    pub(crate) fn baths_of_trial(&self, trial: TrialId) -> Result<Vec<Bath>, StoreError> {
        let mut followed: Vec<(String, Option<u32>, usize)> = Vec::new();
        for (recipe, revision) in self.revisions_run(trial)? {
            let known = followed
                .iter_mut()
                .find(|(slug, number, _)| *slug == recipe && *number == Some(revision));
            match known {
                Some((_, _, runs)) => *runs += 1,
                None => followed.push((recipe, Some(revision), 1)),
            }
        }
        for recipe in self.recipes_for_trial(trial)? {
            if followed.iter().all(|(slug, _, _)| *slug != recipe) {
                followed.push((recipe, None, 0));
            }
        }
        let mut baths = Vec::new();
        for (recipe, number, runs) in followed {
            let Some(kept) = self.recipe(&recipe, number)? else {
                continue;
            };
            let plan = Plan::of(&kept.recipe).map_err(|error| StoreError::Stored {
                what: "recipe",
                cause: error.to_string(),
            })?;
            baths.push(Bath {
                recipe,
                revision: kept.number,
                runs,
                plan,
            });
        }
        Ok(baths)
    }

    /// Recipe and revision of each run of a trial, oldest first.
    fn revisions_run(&self, trial: TrialId) -> Result<Vec<(String, u32)>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(String, u32)>> {
            self.database
                .prepare_cached(
                    "SELECT slug, number FROM run
                     JOIN recipe_revision ON recipe_revision.id = revision_id
                     JOIN recipe ON recipe.id = recipe_id
                     WHERE trial_id = ?1 ORDER BY run.id",
                )?
                .query_map([trial.0], |row| Ok((row.get(0)?, row.get(1)?)))?
                .collect()
        };
        read().map_err(StoreError::database("read which recipes were run"))
    }
}
