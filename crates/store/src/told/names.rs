//! What things of the journal are called: it keeps their numbers and addresses.

use crate::journal::Seen;
use dyeing::recipe::Written;
use rusqlite::{Connection, OptionalExtension, params};
use std::cell::RefCell;
use std::collections::HashMap;
use trial::plan::Plan;

/// Looks names up; those of files are read once.
pub(crate) struct Names<'d> {
    database: &'d Connection,
    files: RefCell<HashMap<(&'static str, String), String>>,
}

impl<'d> Names<'d> {
    pub(crate) fn new(database: &'d Connection) -> Self {
        Self {
            database,
            files: RefCell::default(),
        }
    }

    /// A word of a row; nothing where there is no such row, or it can't be read.
    fn look(&self, query: &str, key: &str) -> Option<String> {
        let mut query = self.database.prepare_cached(query).ok()?;
        query
            .query_row(params![key], |row| row.get(0))
            .optional()
            .ok()?
    }

    /// The name of the photo of that number, and where it is seen.
    pub(super) fn photo(&self, id: &str) -> Option<(String, Option<Seen>)> {
        let number = id.trim().parse().ok()?;
        let name = self.look("SELECT name FROM photo WHERE id = ?1", id.trim())?;
        Some((name, Some(Seen::Photo(number))))
    }

    /// The code of the piece of that number.
    pub(super) fn piece(&self, id: &str) -> Option<String> {
        self.look("SELECT code FROM piece WHERE id = ?1", id)
    }

    /// The name of the device of that number.
    pub(super) fn device(&self, id: &str) -> Option<String> {
        self.look("SELECT name FROM device WHERE id = ?1", id)
    }

    /// Where the material of that name is seen.
    pub(super) fn material(&self, name: &str) -> Option<Seen> {
        let query = "SELECT CAST(id AS TEXT) FROM material WHERE name = ?1 COLLATE NOCASE";
        Some(Seen::Material(self.look(query, name)?.parse().ok()?))
    }

    /// Where the material is seen that the lot of that number is of.
    pub(super) fn lot(&self, id: &str) -> Option<Seen> {
        let query = "SELECT CAST(material_id AS TEXT) FROM lot WHERE id = ?1";
        Some(Seen::Material(self.look(query, id)?.parse().ok()?))
    }

    /// The title of the trial or plan of that address.
    pub(super) fn trial_or_plan(&self, slug: &str) -> Option<String> {
        self.look("SELECT title FROM trial WHERE slug = ?1", slug)
            .or_else(|| self.titled(PLAN, slug))
    }

    /// What the plan of that address is called; its address where it can't be read.
    pub(crate) fn plan(&self, slug: &str) -> String {
        self.titled(PLAN, slug).unwrap_or_else(|| slug.to_owned())
    }

    /// The same of a recipe.
    pub(crate) fn recipe(&self, slug: &str) -> String {
        self.titled(RECIPE, slug).unwrap_or_else(|| slug.to_owned())
    }

    fn titled(&self, query: &'static str, slug: &str) -> Option<String> {
        let key = (query, slug.to_owned());
        if let Some(known) = self.files.borrow().get(&key) {
            return Some(known.clone());
        }
        let content = self.look(query, slug)?;
        let title = match query {
            PLAN => Plan::from_toml(&content)
                .ok()
                .map(|plan| match plan.title.trim() {
                    "" => plan.question,
                    _ => plan.title,
                }),
            _ => Written::from_toml(&content).ok().map(|recipe| recipe.name),
        }?;
        self.files.borrow_mut().insert(key, title.clone());
        Some(title)
    }
}

const PLAN: &str = "SELECT content FROM plan_revision JOIN plan ON plan.id = plan_id
     WHERE slug = ?1 ORDER BY number DESC LIMIT 1";
const RECIPE: &str = "SELECT content FROM recipe_revision JOIN recipe ON recipe.id = recipe_id
     WHERE slug = ?1 ORDER BY number DESC LIMIT 1";
