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

/// Recipes of the documentation to start from: name in addresses, what each shows, text.
pub(crate) const EXAMPLES: [(&str, &str, &str); 3] = [
    (
        "napkins",
        "Napkins by weight, from two stock solutions",
        include_str!("../../../../../docs/recipes/napkins.toml"),
    ),
    (
        "shirts",
        "Shirts by the label of a bottle, in two arms",
        include_str!("../../../../../docs/recipes/shirts.toml"),
    ),
    (
        "scarf",
        "A silk scarf in a bath that is used again",
        include_str!("../../../../../docs/recipes/scarf.toml"),
    ),
];

/// A recipe as of a revision, the newest where none is named.
pub(crate) fn find(bench: &Bench, slug: &str, number: Option<u32>) -> Result<KeptRecipe, Error> {
    bench.recipe(slug, number)?.ok_or(Error::NotFound(
        text::recipe::there_is_no_recipe_of_that_name(),
    ))
}
