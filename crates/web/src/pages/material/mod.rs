//! Materials on the studio's shelves: dyes, auxiliaries, fibre, yarn and garments, with their lots.

pub(crate) mod act;
pub(crate) mod add;
pub(crate) mod list;
pub(crate) mod show;

use crate::error::Error;
use crate::text;
use store::{Bench, Material, MaterialKind};

const UNKNOWN: &str = "There is no material of that number on this bench. The list of materials shows those that are here.";

/// The material of that number.
pub(crate) fn find(bench: &Bench, id: i64) -> Result<Material, Error> {
    bench.material(id)?.ok_or(Error::NotFound(UNKNOWN))
}

/// A kind as headings call it.
pub(crate) const fn heading(kind: MaterialKind) -> &'static str {
    match kind {
        MaterialKind::Dye => "Dyes",
        MaterialKind::Auxiliary => "Auxiliaries",
        MaterialKind::Fibre => "Fibre",
        MaterialKind::Yarn => "Yarn",
        MaterialKind::Garment => "Garments and cloth",
    }
}

/// A kind as a form offers it.
pub(crate) const fn offered(kind: MaterialKind) -> &'static str {
    match kind {
        MaterialKind::Dye => "a dye",
        MaterialKind::Auxiliary => "salt, soda, acid, mordant, soap and the like",
        MaterialKind::Fibre => "loose fibre",
        MaterialKind::Yarn => "yarn",
        MaterialKind::Garment => "garments or cloth",
    }
}

/// What is left of a material, in words.
pub(crate) fn left(material: &Material) -> String {
    let left = material.left();
    if left.is_empty() {
        return text::material::no_lot_yet().to_owned();
    }
    if left.iter().all(|stock| stock.amount == 0.0) {
        return text::material::used_up().to_owned();
    }
    if left.iter().any(|stock| stock.amount < 0.0) {
        return text::material::more_was_taken_than_there_was_count().to_owned();
    }
    let each: Vec<String> = left.iter().map(ToString::to_string).collect();
    text::material::left(each.join(", "))
}
