//! Recipes on the bench: every revision is kept as it was written, the newest counts.

use crate::Thing;
use crate::revisions::{Revised, Revision};
use crate::text;
use crate::{Bench, RecipeAim, StoreError, journal, runs::RunSummary};
use dyeing::{DyeingError, Plan, Recipe};
use rusqlite::Connection;

/// A recipe as a list shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct RecipeSummary {
    /// Its name in addresses.
    pub slug: String,
    /// What the person calls it; its slug where its text can't be understood.
    pub name: String,
    /// What it dyes, or a sentence why its text can't be understood.
    pub bath: Result<BathSummary, String>,
    /// How many revisions there are.
    pub revisions: u32,
    /// How many runs were begun by it.
    pub runs: u32,
    /// The plan or trial it is for.
    pub aim: RecipeAim,
}

/// What a recipe dyes, as a list shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BathSummary {
    /// Name of its class of dye.
    pub class: String,
    /// Dry weight of its goods.
    pub goods: String,
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
    pub revisions: Vec<Revision>,
    /// The plan or trial it is for.
    pub aim: RecipeAim,
    /// Runs begun by any of its revisions, newest first.
    pub runs: Vec<RunSummary>,
    /// Whether it lies in the bin.
    pub binned: bool,
}

pub(crate) const RECIPE: Revised = Revised("recipe");
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
            .and_then(|(id, slug)| {
                RECIPE.revise(&change, (id, 1), text, why, now)?;
                Ok(slug)
            })
            .map_err(StoreError::database(text::doing::keep_a_recipe()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_recipe()))?;
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
        let (id, number) = RECIPE.next_upon(&change, slug, upon, text::doing::keep_a_recipe())?;
        RECIPE
            .revise(&change, (id, number), text, why, now)
            .and_then(|()| journal::note(&change, now, "recipe changed", &format!("{slug}: {why}")))
            .map_err(StoreError::database(text::doing::keep_a_recipe()))?;
        change
            .commit()
            .map_err(StoreError::database(text::doing::keep_a_recipe()))?;
        Ok(number)
    }

    /// Every recipe, newest first; one that can't be understood is among them and says why.
    ///
    /// # Errors
    /// The database can't be read.
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
        let rows = read().map_err(StoreError::database(text::doing::list_its_recipes()))?;
        rows.into_iter()
            .map(|(id, slug, content, revisions, runs)| {
                let (name, bath) = match understood(&content) {
                    Ok(recipe) => {
                        let (class, goods) =
                            (recipe.class.name().to_owned(), recipe.goods.mass.shown());
                        (recipe.name, Ok(BathSummary { class, goods }))
                    }
                    Err(error) => (slug.clone(), Err(error.to_string())),
                };
                Ok(RecipeSummary {
                    slug,
                    name,
                    bath,
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
        let found = self.revision(RECIPE, slug, number);
        let Some((id, number, text)) =
            found.map_err(StoreError::database(text::doing::read_a_recipe()))?
        else {
            return Ok(None);
        };
        Ok(Some(KeptRecipe {
            slug: slug.to_owned(),
            number,
            recipe: understood(&text)?,
            text,
            revisions: self
                .revisions(RECIPE, id)
                .map_err(StoreError::database(text::doing::read_a_recipe()))?,
            aim: self.aim_of(id)?,
            runs: self.runs_of_recipe(id)?,
            binned: self.is_binned(Thing::Recipe(slug))?,
        }))
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
        what: text::thing::recipe(),
        cause: error.to_string(),
    })
}

fn insert(change: &Connection, name: &str, now: &str) -> rusqlite::Result<(i64, String)> {
    let (id, slug) = RECIPE.begin(change, name, now)?;
    journal::note(change, now, "recipe kept", &format!("\"{name}\" ({slug})"))?;
    Ok((id, slug))
}
