//! At which field of the form a fault of a recipe stands.

use super::draft::Draft;
use crate::form::Problems;
use dyeing::{Added, DyeingError, Entry, Part, Place};

/// The fault with the field where it belongs.
pub(crate) fn problem(draft: &Draft, error: &DyeingError) -> Problems {
    let mut problems = Problems::default();
    let field = error.place().and_then(|place| field(draft, place));
    // What belongs nowhere stands at the first field.
    let field = field.unwrap_or_else(|| "name".to_owned());
    problems.add(field, sentence(&error.at_its_place()));
    problems
}

/// The field of a place, if the form has one.
fn field(draft: &Draft, place: &Place) -> Option<String> {
    let entry = place.entry.map(Entry::key);
    match &place.part {
        Part::Recipe | Part::Goods | Part::Process => entry.map(str::to_owned),
        Part::Water => Some("water-amount".to_owned()),
        Part::Pot => Some(match place.entry {
            Some(Entry::Headroom) => "headroom".to_owned(),
            Some(Entry::Heater) => "heater".to_owned(),
            _ => "pot".to_owned(),
        }),
        Part::Arm(name) => {
            let rows = draft.used("arm").into_iter();
            let mut named = rows.filter(|row| draft.at(&format!("arm-{row}-name")) == name);
            named.next().map(|row| format!("arm-{row}-pieces"))
        }
        Part::Added { kind, row, .. } => {
            let kind = match kind {
                Added::Dye => "dye",
                Added::Auxiliary => "auxiliary",
                Added::AfterTreatment => "after",
            };
            let row = *draft.used(kind).get(*row)?;
            let entry = match place.entry {
                Some(Entry::Stock | Entry::Liquid | Entry::Strength) => "strength",
                Some(other) => other.key(),
                None => "amount",
            };
            Some(format!("{kind}-{row}-{entry}"))
        }
        Part::Reading
        | Part::SpentBath
        | Part::Rinse(_)
        | Part::Calibration
        | Part::Standard(_) => None,
    }
}

/// With a capital and a full stop.
pub(crate) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string());
    let end = if text.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    format!("{}{}{end}", first.unwrap_or_default(), letters.as_str())
}
