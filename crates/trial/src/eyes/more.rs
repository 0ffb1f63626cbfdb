//! What more it would take where grades leave a question open.

use super::contrast::{Contrast, Units};
use crate::text;

/// Units per arm above which nothing is proposed.
const MOST_UNITS: usize = 24;
/// People above which nothing is proposed.
const MOST_JUDGES: usize = 6;

/// A sentence on how many more pieces (witness cloths, for staining) or people would
/// probably settle it, if the difference seen is the true one.
pub(super) fn advice(contrast: &Contrast, margin: f64, staining: bool) -> String {
    // A key, by which the messages choose their words.
    let unit = match contrast.units {
        Units::Loads => "load",
        _ if staining => "cloth",
        _ => "piece",
    };
    let (now, people) = (contrast.fewest().max(1), contrast.judges);
    let settles = |units: usize, judges: usize| settled(contrast, margin, units, judges);
    let pieces = |judges| (now.max(2)..=MOST_UNITS).find(|&units| settles(units, judges));
    if let Some(enough) = pieces(people) {
        let more = text::eyes::more_units(unit, enough.max(now + 1) - now);
        return text::eyes::about_per_arm_would_probably_settle(&more);
    }
    let with_people = (people + 1..=MOST_JUDGES).find_map(|judges| Some((judges, pieces(judges)?)));
    match with_people {
        Some((judges, enough)) if enough <= now => {
            text::eyes::about_of_the_same_pieces_would_probably(text::eyes::more_people_judging(
                judges - people,
            ))
        }
        Some((judges, enough)) => text::eyes::about_per_arm_and_would_probably_settle(
            text::eyes::more_units(unit, enough - now),
            text::eyes::more_people(judges - people),
        ),
        None if contrast.coarseness() > 0.5 * margin => {
            text::eyes::half_steps_of_a_grey_scale(MOST_UNITS, unit, MOST_JUDGES)
        }
        None => text::eyes::the_difference_lies_so_near_the_margin(unit, MOST_UNITS, MOST_JUDGES),
    }
}

/// Whether the interval would come clear of the margin.
fn settled(contrast: &Contrast, margin: f64, units: usize, judges: usize) -> bool {
    let size = contrast.difference().abs();
    let counts = [0, 1].map(|arm| contrast.of_units[arm].len().max(units));
    let half = |level| contrast.half(counts, judges, level);
    let room = contrast.coarseness();
    if size > margin {
        half(0.95).is_some_and(|half| size - half - room > margin)
    } else {
        half(0.90).is_some_and(|half| size + half + room < margin)
    }
}
