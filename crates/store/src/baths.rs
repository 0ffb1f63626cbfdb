//! The baths of a trial: recipes that its runs followed, and those that are for it.

use crate::text;
use crate::{Bench, CLEAR, StoreError};
use dyeing::Plan;
use trial::{Bath, TrialId};

/// A recipe's name in addresses, its revision, and a run's number and title.
type RevisionRun = (String, u32, (i64, String));
/// A recipe's name in addresses, the revision that counts, and the runs that followed it.
type Followed = (String, Option<u32>, Vec<(i64, String)>);

impl Bench {
    /// The recipes that a trial's runs followed, as of the revisions they followed, then the newest
    /// revisions of recipes for it that no run followed yet.
    ///
    /// # Errors
    /// The database can't be read, or holds a recipe that can't be understood.
    pub(crate) fn baths_of_trial(&self, trial: TrialId) -> Result<Vec<Bath>, StoreError> {
        let mut followed: Vec<Followed> = Vec::new();
        for (recipe, revision, run) in self.revisions_run(trial)? {
            let known = followed
                .iter_mut()
                .find(|(slug, number, _)| *slug == recipe && *number == Some(revision));
            match known {
                Some((_, _, runs)) => runs.push(run),
                None => followed.push((recipe, Some(revision), vec![run])),
            }
        }
        for recipe in self.recipes_for_trial(trial)? {
            if followed.iter().all(|(slug, _, _)| *slug != recipe) {
                followed.push((recipe, None, Vec::new()));
            }
        }
        let mut baths = Vec::new();
        for (recipe, number, runs) in followed {
            let Some(kept) = self.recipe(&recipe, number)? else {
                continue;
            };
            let plan = Plan::of(&kept.recipe).map_err(|error| StoreError::Stored {
                what: text::thing::recipe(),
                cause: error.to_string(),
            })?;
            let mut balances = Vec::new();
            for (run, title) in &runs {
                if let Some(balance) = self.balance_of_run(*run, CLEAR)? {
                    balances.push((title.clone(), balance));
                }
            }
            baths.push(Bath {
                recipe,
                revision: kept.number,
                runs: runs.len(),
                plan,
                balances,
            });
        }
        Ok(baths)
    }

    /// Slugs of the recipes for a trial and of those that its runs followed.
    ///
    /// # Errors
    /// The database can't be read.
    pub fn recipes_of_trial(&self, trial: TrialId) -> Result<Vec<String>, StoreError> {
        let mut slugs = self.recipes_for_trial(trial)?;
        for (followed, ..) in self.revisions_run(trial)? {
            if !slugs.contains(&followed) {
                slugs.push(followed);
            }
        }
        Ok(slugs)
    }

    /// Recipe, revision, number and title of each run of a trial, oldest first.
    fn revisions_run(&self, trial: TrialId) -> Result<Vec<RevisionRun>, StoreError> {
        let read = || -> rusqlite::Result<Vec<RevisionRun>> {
            self.database
                .prepare_cached(
                    "SELECT slug, number, run.id, run.title FROM run
                     JOIN recipe_revision ON recipe_revision.id = revision_id
                     JOIN recipe ON recipe.id = recipe_id
                     WHERE trial_id = ?1 ORDER BY run.id",
                )?
                .query_map([trial.0], |row| {
                    Ok((row.get(0)?, row.get(1)?, (row.get(2)?, row.get(3)?)))
                })?
                .collect()
        };
        read().map_err(StoreError::database(
            text::doing::read_which_recipes_were_run(),
        ))
    }
}
