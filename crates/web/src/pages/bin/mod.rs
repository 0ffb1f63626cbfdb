//! The bin: things that were put away, and putting them away.

pub(crate) mod act;
pub(crate) mod show;

use store::Thing;
use trial::PhotoId;

/// What a form or an entry means by a kind and a name; none for what there is no bin for.
pub(crate) fn thing<'a>(kind: &str, name: &'a str) -> Option<Thing<'a>> {
    match kind {
        "trial" => Some(Thing::Trial(name)),
        "plan" => Some(Thing::Plan(name)),
        "recipe" => Some(Thing::Recipe(name)),
        "photo" => name.parse().ok().map(|id| Thing::Photo(PhotoId(id))),
        _ => None,
    }
}
