//! Whether one arm always comes before another in the same vessel.

use super::{Finding, FindingCode, carry};
use crate::plan::{Mend, Plan, Sharing, Vessel};
use crate::text;

/// One finding for each vessel that isn't cleaned and has its arms in a set order.
pub(super) fn of_use(plan: &Plan, sharing: &Sharing) -> Vec<Finding> {
    let vessels = plan.vessels.iter().filter(|vessel| !vessel.cleaned);
    vessels
        .filter_map(|vessel| set_order(plan, sharing, vessel))
        .collect()
}

fn set_order(plan: &Plan, sharing: &Sharing, vessel: &Vessel) -> Option<Finding> {
    // Places in the order of use, for each arm.
    let mut places: Vec<Vec<usize>> = vec![Vec::new(); plan.arms.len()];
    for (place, load) in vessel.order.iter().enumerate() {
        for arm in carry::arms_in(sharing, load) {
            places[arm].push(place);
        }
    }
    let arms = 0..plan.arms.len();
    let (first, last) = arms
        .clone()
        .flat_map(|a| arms.clone().map(move |b| (a, b)))
        .find(|(a, b)| matches!((places[*a].iter().max(), places[*b].iter().min()), (Some(a), Some(b)) if a < b))?;
    let (first, last) = (&plan.arms[first].name, &plan.arms[last].name);
    let mut mends = vec![Mend::Clean {
        vessel: vessel.name.clone(),
    }];
    if places
        .iter()
        .filter(|places| !places.is_empty())
        .all(|places| places.len() > 1)
    {
        mends.push(Mend::Alternate {
            vessel: vessel.name.clone(),
        });
    }
    Some(Finding {
        code: FindingCode::OrderOfUse,
        sentence: text::plan::in_the_pieces_of_always_come_before(&vessel.name, first, last),
        consequence: text::plan::what_leaves_behind_comes_onto_a(first, last),
        arms: vec![first.clone(), last.clone()],
        mends,
    })
}
