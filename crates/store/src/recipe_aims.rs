//! What a recipe is for: a plan, a trial, or neither.

use crate::journal::About;
use crate::text;
use crate::{Bench, StoreError, journal, recipes};
use rusqlite::{OptionalExtension, params};
use trial::TrialId;

/// What a recipe is for.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum RecipeAim {
    /// Nothing in particular.
    #[default]
    Nothing,
    /// A plan, and every trial started from it.
    Plan {
        /// The plan's name in addresses.
        slug: String,
    },
    /// A trial.
    Trial {
        /// The trial's name in addresses.
        slug: String,
        /// Its title.
        title: String,
    },
}

impl Bench {
    /// Says that a recipe is for a plan or trial of that slug, or for nothing any more.
    ///
    /// # Errors
    /// There is no such recipe, plan or trial, or the database can't be written.
    pub fn aim_recipe(
        &mut self,
        recipe: &str,
        plan: Option<&str>,
        trial: Option<&str>,
        now: &str,
    ) -> Result<(), StoreError> {
        let change = self.change()?;
        let found = |table: &str, slug: Option<&str>| -> Result<Option<i64>, StoreError> {
            let Some(slug) = slug else { return Ok(None) };
            let id = change
                .query_row(
                    &format!("SELECT id FROM {table} WHERE slug = ?1"),
                    [slug],
                    |row| row.get(0),
                )
                .optional()
                .map_err(StoreError::database(text::doing::say_what_a_recipe()))?;
            let missing = || StoreError::input("aim", text::recipe_aims::there_is(table, slug));
            id.map(Some).ok_or_else(missing)
        };
        let (plan_id, trial_id) = (found("plan", plan)?, found("trial", trial)?);
        let newest = recipes::RECIPE
            .newest(&change, recipe)
            .map_err(StoreError::database(text::doing::say_what_a_recipe()))?;
        let Some((id, _)) = newest else {
            return Err(StoreError::input(
                "recipe",
                text::recipe_aims::there_is_no_such_recipe(),
            ));
        };
        let aim = plan
            .or(trial)
            .unwrap_or(text::recipe_aims::nothing_in_particular());
        change
            .execute(
                "INSERT INTO recipe_aim (recipe_id, plan_id, trial_id, made_at)
                 VALUES (?1, ?2, ?3, ?4)",
                params![id, plan_id, trial_id, now],
            )
            .and_then(|_| {
                let about = trial_id.map_or(About::Bench, About::Trial);
                journal::note_about(
                    &change,
                    about,
                    now,
                    "recipe is for",
                    &format!("{recipe}: {aim}"),
                )
            })
            .map_err(StoreError::database(text::doing::say_what_a_recipe()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::say_what_a_recipe()))
    }

    /// What the recipe of that number is for.
    pub(crate) fn aim_of(&self, recipe: i64) -> Result<RecipeAim, StoreError> {
        let read = || -> rusqlite::Result<Option<RecipeAim>> {
            self.database
                .prepare_cached(
                    "SELECT plan.slug, trial.slug, trial.title FROM recipe_aim
                     LEFT JOIN plan ON plan.id = plan_id LEFT JOIN trial ON trial.id = trial_id
                     WHERE recipe_id = ?1 ORDER BY recipe_aim.id DESC LIMIT 1",
                )?
                .query_row([recipe], |row| {
                    let plan: Option<String> = row.get(0)?;
                    let trial: Option<String> = row.get(1)?;
                    Ok(match (plan, trial) {
                        (Some(slug), _) => RecipeAim::Plan { slug },
                        (None, Some(slug)) => RecipeAim::Trial {
                            slug,
                            title: row.get(2)?,
                        },
                        (None, None) => RecipeAim::Nothing,
                    })
                })
                .optional()
        };
        Ok(read()
            .map_err(StoreError::database(text::doing::say_what_a_recipe()))?
            .unwrap_or_default())
    }

    /// Slugs of the recipes for a trial, or for the plan that it was started from, oldest first.
    pub(crate) fn recipes_for_trial(&self, trial: TrialId) -> Result<Vec<String>, StoreError> {
        self.aimed(
            "SELECT slug FROM recipe JOIN recipe_aim ON recipe_id = recipe.id
             WHERE recipe_aim.id = (SELECT max(id) FROM recipe_aim WHERE recipe_id = recipe.id)
               AND (trial_id = ?1 OR plan_id = (
                    SELECT plan_id FROM planned_trial
                    JOIN plan_revision ON plan_revision.id = revision_id
                    WHERE planned_trial.trial_id = ?1))
             ORDER BY recipe.id",
            trial.0,
        )
    }

    /// Slugs of the recipes for the plan of that slug, oldest first.
    pub(crate) fn recipes_for_plan(&self, plan: &str) -> Result<Vec<String>, StoreError> {
        self.aimed(
            "SELECT recipe.slug FROM recipe JOIN recipe_aim ON recipe_id = recipe.id
             JOIN plan ON plan.id = plan_id
             WHERE recipe_aim.id = (SELECT max(id) FROM recipe_aim WHERE recipe_id = recipe.id)
               AND plan.slug = ?1
             ORDER BY recipe.id",
            plan,
        )
    }

    fn aimed(&self, query: &str, at: impl rusqlite::ToSql) -> Result<Vec<String>, StoreError> {
        let read = || -> rusqlite::Result<Vec<String>> {
            self.database
                .prepare_cached(query)?
                .query_map([at], |row| row.get(0))?
                .collect()
        };
        read().map_err(StoreError::database(text::doing::list_recipes()))
    }
}
