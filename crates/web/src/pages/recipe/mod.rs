//! Recipes: all of them, one worked out, a form for the usual case, their runs.

pub(crate) mod aim;
pub(crate) mod amounts;
pub(crate) mod begin;
pub(crate) mod create;
pub(crate) mod draft;
pub(crate) mod edit;
pub(crate) mod list;
pub(crate) mod new;
pub(crate) mod places;
pub(crate) mod print;
pub(crate) mod revise;
pub(crate) mod show;

use crate::error::Error;
use crate::text;
use store::{Bench, KeptRecipe};

/// A recipe of the documentation to start from.
pub(crate) struct Example {
    /// Its name in addresses.
    pub(crate) name: &'static str,
    title: fn() -> &'static str,
    /// The recipe as TOML.
    pub(crate) text: &'static str,
}

impl Example {
    /// What it shows.
    pub(crate) fn title(&self) -> &'static str {
        (self.title)()
    }
}

/// Those that are offered.
pub(crate) static EXAMPLES: [Example; 3] = [
    Example {
        name: "napkins",
        title: text::recipe::napkins_by_weight,
        text: include_str!("../../../../../docs/recipes/napkins.toml"),
    },
    Example {
        name: "shirts",
        title: text::recipe::shirts_by_the_label,
        text: include_str!("../../../../../docs/recipes/shirts.toml"),
    },
    Example {
        name: "scarf",
        title: text::recipe::a_silk_scarf,
        text: include_str!("../../../../../docs/recipes/scarf.toml"),
    },
];

/// A recipe as of a revision, the newest where none is named.
pub(crate) fn find(bench: &Bench, slug: &str, number: Option<u32>) -> Result<KeptRecipe, Error> {
    bench.recipe(slug, number)?.ok_or(Error::NotFound(
        text::recipe::there_is_no_recipe_of_that_name(),
    ))
}
