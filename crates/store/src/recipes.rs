//! Recipes on the bench: every revision is kept as it was written, the newest counts.

use crate::Thing;
use crate::text;
use crate::{Bench, RecipeAim, StoreError, journal, runs::RunSummary, slug};
use dyeing::{DyeingError, Plan, Recipe};
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::HashSet;

/// A recipe as a list shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct RecipeSummary {
    /// Its name in addresses.
    pub slug: String,
    /// What the person calls it.
    pub name: String,
    /// Name of its class of dye.
    pub class: String,
    /// Dry weight of its goods.
    pub goods: String,
    /// How many revisions there are.
    pub revisions: u32,
    /// How many runs were begun by it.
    pub runs: u32,
    /// The plan or trial it is for.
    pub aim: RecipeAim,
}

/// A recipe with its history.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptRecipe {
    /// Its name in addresses.
    pub slug: String,
    /// The revision that is shown, from 1.
    pub number: u32,
    /// The recipe as it was written, TOML.
    pub text: String,
    /// What the text means.
    pub recipe: Recipe,
    /// All revisions, newest first.
    pub revisions: Vec<RecipeRevision>,
    /// The plan or trial it is for.
    pub aim: RecipeAim,
    /// Runs begun by any of its revisions, newest first.
    pub runs: Vec<RunSummary>,
    /// Whether it lies in the bin.
    pub binned: bool,
}

/// One revision of a recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecipeRevision {
    /// Its number, from 1.
    pub number: u32,
    /// What is new in it.
    pub change: String,
    /// When it was made, RFC 3339.
    pub made_at: String,
}

const KEEP: &str = "keep a recipe";
const READ: &str = "read a recipe";
/// A recipe of more bytes is none.
const MOST_BYTES: usize = 100_000;

impl Bench {
    /// Keeps a new recipe, as it was written in TOML, and gives its slug.
    ///
    /// # Errors
    /// The recipe can't be worked out, or the database can't be written.
    pub fn keep_recipe(&mut self, text: &str, why: &str, now: &str) -> Result<String, StoreError> {
        let recipe = worked_out(text)?;
        let change = self.change()?;
        let slug = insert(&change, &recipe.name, now)
            .and_then(|(id, slug)| revise(&change, (id, 1), text, why, now).map(|()| slug))
            .map_err(StoreError::database(KEEP))?;
        change.commit().map_err(StoreError::database(KEEP))?;
        Ok(slug)
    }

    /// Keeps a new revision of a recipe and gives its number; earlier ones stay.
    ///
    /// # Errors
    /// There is no such recipe, `upon` is no longer its newest revision, the recipe can't be
    /// worked out, or the database can't be written.
    pub fn revise_recipe(
        &mut self,
        slug: &str,
        upon: u32,
        text: &str,
        why: &str,
        now: &str,
    ) -> Result<u32, StoreError> {
        worked_out(text)?;
        let change = self.change()?;
        let newest = newest(&change, slug).map_err(StoreError::database(KEEP))?;
        let Some((id, number)) = newest else {
            return Err(StoreError::input(
                "recipe",
                text::recipes::there_is_no_such_recipe(),
            ));
        };
        if number != upon {
            return Err(StoreError::input(
                "revision",
                text::recipes::the_recipe_was_changed_in_the_meantime(upon, number),
            ));
        }
        revise(&change, (id, number + 1), text, why, now)
            .and_then(|()| journal::note(&change, now, "recipe changed", &format!("{slug}: {why}")))
            .map_err(StoreError::database(KEEP))?;
        change.commit().map_err(StoreError::database(KEEP))?;
        Ok(number + 1)
    }

    /// Every recipe, newest first.
    ///
    /// # Errors
    /// The database can't be read, or holds a recipe that can't be understood.
    pub fn recipes(&self) -> Result<Vec<RecipeSummary>, StoreError> {
        type Row = (i64, String, String, u32, u32);
        let read = || -> rusqlite::Result<Vec<Row>> {
            self.database
                .prepare_cached(
                    "SELECT recipe.id, slug, content, number,
                        (SELECT count(*) FROM run JOIN recipe_revision AS other
                            ON other.id = revision_id WHERE other.recipe_id = recipe.id)
                     FROM recipe JOIN recipe_revision ON recipe_id = recipe.id
                     WHERE number = (SELECT max(number) FROM recipe_revision
                                     WHERE recipe_id = recipe.id)
                        AND recipe.id NOT IN (SELECT thing FROM binned WHERE kind = 'recipe')
                     ORDER BY recipe.id DESC",
                )?
                .query_map([], |row| {
                    Ok((
                        row.get(0)?,
                        row.get(1)?,
                        row.get(2)?,
                        row.get(3)?,
                        row.get(4)?,
                    ))
                })?
                .collect()
        };
        let rows = read().map_err(StoreError::database("list its recipes"))?;
        rows.into_iter()
            .map(|(id, slug, content, revisions, runs)| {
                let recipe = understood(&content)?;
                Ok(RecipeSummary {
                    slug,
                    name: recipe.name,
                    class: recipe.class.name,
                    goods: recipe.goods.mass.shown(),
                    revisions,
                    runs,
                    aim: self.aim_of(id)?,
                })
            })
            .collect()
    }

    /// The recipe of that slug as of a revision, the newest where none is named; none if there is
    /// no such recipe or revision.
    ///
    /// # Errors
    /// The database can't be read, or holds a recipe that can't be understood.
    pub fn recipe(
        &self,
        slug: &str,
        number: Option<u32>,
    ) -> Result<Option<KeptRecipe>, StoreError> {
        let read = || -> rusqlite::Result<Option<(i64, u32, String)>> {
            self.database
                .prepare_cached(
                    "SELECT recipe.id, number, content
                     FROM recipe JOIN recipe_revision ON recipe_id = recipe.id
                     WHERE slug = ?1 AND (?2 IS NULL OR number = ?2) ORDER BY number DESC LIMIT 1",
                )?
                .query_row(params![slug, number], |row| {
                    Ok((row.get(0)?, row.get(1)?, row.get(2)?))
                })
                .optional()
        };
        let Some((id, number, text)) = read().map_err(StoreError::database(READ))? else {
            return Ok(None);
        };
        Ok(Some(KeptRecipe {
            slug: slug.to_owned(),
            number,
            recipe: understood(&text)?,
            text,
            revisions: self
                .recipe_revisions(id)
                .map_err(StoreError::database(READ))?,
            aim: self.aim_of(id)?,
            runs: self.runs_of_recipe(id)?,
            binned: self.is_binned(Thing::Recipe(slug))?,
        }))
    }

    fn recipe_revisions(&self, recipe: i64) -> rusqlite::Result<Vec<RecipeRevision>> {
        self.database
            .prepare_cached(
                "SELECT number, change, made_at FROM recipe_revision WHERE recipe_id = ?1
                 ORDER BY number DESC",
            )?
            .query_map([recipe], |row| {
                Ok(RecipeRevision {
                    number: row.get(0)?,
                    change: row.get(1)?,
                    made_at: row.get(2)?,
                })
            })?
            .collect()
    }
}

/// The recipe, if everything that follows from it can be worked out.
fn worked_out(text: &str) -> Result<Recipe, StoreError> {
    if text.len() > MOST_BYTES {
        return Err(StoreError::input(
            "recipe",
            text::recipes::a_recipe_of_more_than_bytes_isnt(MOST_BYTES),
        ));
    }
    let read = || -> Result<Recipe, DyeingError> {
        let recipe = Recipe::read(text)?;
        Plan::of(&recipe)?;
        Ok(recipe)
    };
    read().map_err(|error| StoreError::input("recipe", error.to_string()))
}

fn understood(content: &str) -> Result<Recipe, StoreError> {
    Recipe::read(content).map_err(|error| StoreError::Stored {
        what: "recipe",
        cause: error.to_string(),
    })
}

/// Number in the database and newest revision of a recipe.
pub(crate) fn newest(change: &Connection, slug: &str) -> rusqlite::Result<Option<(i64, u32)>> {
    change
        .prepare_cached(
            "SELECT recipe.id, max(number) FROM recipe JOIN recipe_revision
             ON recipe_id = recipe.id WHERE slug = ?1 GROUP BY recipe.id",
        )?
        .query_row([slug], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()
}

fn insert(change: &Connection, name: &str, now: &str) -> rusqlite::Result<(i64, String)> {
    let taken = change
        .prepare_cached("SELECT slug FROM recipe")?
        .query_map([], |row| row.get(0))?
        .collect::<rusqlite::Result<HashSet<String>>>()?;
    let slug = slug::free(&slug::plain(name), &taken);
    change.execute(
        "INSERT INTO recipe (slug, made_at) VALUES (?1, ?2)",
        params![slug, now],
    )?;
    let id = change.last_insert_rowid();
    journal::note(change, now, "recipe kept", &format!("\"{name}\" ({slug})"))?;
    Ok((id, slug))
}

fn revise(
    change: &Connection,
    (recipe, number): (i64, u32),
    content: &str,
    why: &str,
    now: &str,
) -> rusqlite::Result<()> {
    change
        .prepare_cached(
            "INSERT INTO recipe_revision (recipe_id, number, content, change, made_at)
             VALUES (?1, ?2, ?3, ?4, ?5)",
        )?
        .execute(params![recipe, number, content, why, now])?;
    Ok(())
}
