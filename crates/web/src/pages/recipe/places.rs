//! At which field of the form a fault of a recipe stands.

use super::draft::Draft;
use crate::form::Problems;
use crate::text;
use dyeing::DyeingError;

/// The fault with the field where it belongs.
pub(crate) fn problem(draft: &Draft, error: &DyeingError) -> Problems {
    let mut problems = Problems::default();
    let (field, message) = match error.placed() {
        Some((place, why)) => (field(draft, place), why.to_string()),
        None => (unplaced(draft, &error.to_string()), error.to_string()),
    };
    problems.add(field, sentence(&message));
    problems
}

fn field(draft: &Draft, place: &str) -> String {
    let plain = match place {
        "class" | "fibre" => Some(place),
        "goods, weight" => Some("weight"),
        "goods, typical" => Some("typical"),
        "water" | "water, liquor_ratio" | "water, volume" => Some("water-amount"),
        "pot, capacity" => Some("pot"),
        "process, presoak" => Some("presoak"),
        "process, hold" => Some("hold"),
        "process, time" => Some("time"),
        _ => None,
    };
    if let Some(plain) = plain {
        return plain.to_owned();
    }
    // As in: dye "yellow", amount.
    let mut parts = place.split('"');
    let kind = parts.next().unwrap_or("").trim();
    let name = parts.next().unwrap_or("");
    let entry = parts.next().unwrap_or("").trim_start_matches([',', ' ']);
    let kinds: &[&str] = match kind {
        "dye" => &["dye"],
        "auxiliary" => &["auxiliary"],
        "after-treatment" => &["after"],
        _ => &["auxiliary", "after"],
    };
    for kind in kinds {
        for row in draft.used(kind) {
            if draft.at(&format!("{kind}-{row}-name")) == name {
                let entry = match entry {
                    "stock" | "liquid" | "strength_percent" => "strength",
                    "" => "amount",
                    other => other,
                };
                return format!("{kind}-{row}-{entry}");
            }
        }
    }
    "name".to_owned()
}

/// Faults without a place say what they are about.
fn unplaced(draft: &Draft, message: &str) -> String {
    for (kind, words) in [
        ("dye", "dye"),
        ("auxiliary", "auxiliary"),
        ("after", "after-treatment"),
    ] {
        for (k, row) in draft.used(kind).into_iter().enumerate() {
            let nameless = [
                text::recipe::the_has_no_name(words),
                text::recipe::has_no_name(words, k + 1),
            ];
            if nameless.iter().any(|start| message.starts_with(start)) {
                return format!("{kind}-{row}-name");
            }
        }
    }
    let about = [
        ("headroom", "headroom"),
        ("heater", "heater"),
        (text::recipe::the_pot(), "pot"),
        ("pH", "ph"),
        (text::recipe::arm(), "arm-1-name"),
        ("pieces", "pieces"),
        ("piece", "pieces"),
        (text::recipe::the_goods(), "weight"),
        ("water", "water-amount"),
        ("solutions", "water-amount"),
    ];
    let found = about.into_iter().find(|(words, _)| message.contains(words));
    found.map_or("name", |(_, field)| field).to_owned()
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
