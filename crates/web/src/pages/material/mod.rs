//! Materials on the studio's shelves: dyes, auxiliaries, fibre, yarn and garments, with their lots.

pub(crate) mod act;
pub(crate) mod add;
pub(crate) mod list;
pub(crate) mod show;

use crate::error::Error;
use crate::text;
use store::{Bench, Material, MaterialKind};

/// The material of that number.
pub(crate) fn find(bench: &Bench, id: i64) -> Result<Material, Error> {
    bench.material(id)?.ok_or(Error::NotFound(
        text::material::there_is_no_material_of_that_number(),
    ))
}

/// A kind as headings call it.
pub(crate) fn heading(kind: MaterialKind) -> &'static str {
    match kind {
        MaterialKind::Dye => text::material::dyes(),
        MaterialKind::Auxiliary => text::material::auxiliaries(),
        MaterialKind::Fibre => text::material::fibre(),
        MaterialKind::Yarn => text::material::yarn(),
        MaterialKind::Garment => text::material::garments_and_cloth(),
    }
}

/// A kind as a form offers it.
pub(crate) fn offered(kind: MaterialKind) -> &'static str {
    match kind {
        MaterialKind::Dye => text::material::a_dye(),
        MaterialKind::Auxiliary => text::material::salt_soda_acid_mordant_soap(),
        MaterialKind::Fibre => text::material::loose_fibre(),
        MaterialKind::Yarn => text::material::yarn_2(),
        MaterialKind::Garment => text::material::garments_or_cloth(),
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
