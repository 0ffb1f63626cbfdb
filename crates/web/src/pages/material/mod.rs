//! Materials on the studio's shelves: dyes, auxiliaries, fibre, yarn and garments, with their lots.

pub(crate) mod act;
pub(crate) mod add;
pub(crate) mod list;
pub(crate) mod show;

use crate::error::Error;
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
        return "no lot yet".to_owned();
    }
    if left.iter().all(|stock| stock.amount == 0.0) {
        return "used up".to_owned();
    }
    if left.iter().any(|stock| stock.amount < 0.0) {
        return "more was taken than there was: count it".to_owned();
    }
    let each: Vec<String> = left.iter().map(ToString::to_string).collect();
    format!("{} left", each.join(", "))
}
