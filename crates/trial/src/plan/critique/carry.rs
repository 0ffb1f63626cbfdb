//! Where dye can travel: from piece to piece in a shared load, from load to load
//! in a shared vessel.

use super::{Finding, FindingCode};
use crate::plan::{Kind, Mend, Plan, PlannedArm, Sharing, Step, StepKind, Vessel, check::list};
use crate::text;
use serde::Serialize;
use std::collections::BTreeSet;

/// A colour this many times as deep as another is deep beside it.
const DEEP_RATIO: f64 = 2.0;

/// A way on which dye of one arm can come onto another arm's pieces.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Carried {
    /// The arm that dye comes from.
    pub from: String,
    /// The arm that it comes onto.
    pub to: String,
    /// The load that both share, or the vessel that both use in turn.
    pub through: String,
    /// Whether it would show: from deep to pale, between different dyes, or onto
    /// pale areas.
    pub shows: bool,
}

/// All ways on which dye can travel between arms, those that would show first.
pub fn carried(plan: &Plan) -> Vec<Carried> {
    let sharing = Sharing::of(plan);
    let mut ways = in_loads(plan, &sharing);
    for vessel in plan.vessels.iter().filter(|vessel| !vessel.cleaned) {
        ways.extend(in_vessel(plan, &sharing, vessel));
    }
    ways.sort_by(|a, b| b.shows.cmp(&a.shows).then_with(|| a.cmp(b)));
    ways.dedup();
    ways
}

/// Whether any two arms may lie wet together without harm.
pub(in crate::plan) fn may_share(arms: &[PlannedArm]) -> bool {
    arms.iter().enumerate().all(|(i, from)| {
        let mut others = arms.iter().enumerate().filter(|(j, _)| *j != i);
        others.all(|(_, to)| !shows(from, to))
    })
}

/// One finding for each step in which dye that would show can travel.
pub(super) fn onto_others(plan: &Plan, sharing: &Sharing) -> Vec<Finding> {
    let mut found = Vec::new();
    let showing: Vec<Carried> = in_loads(plan, sharing)
        .into_iter()
        .filter(|way| way.shows)
        .collect();
    for column in &sharing.columns {
        let Kind::Load(step, _) = column.kind else {
            continue;
        };
        let ways: Vec<&Carried> = showing
            .iter()
            .filter(|way| column.names.contains(&way.through))
            .collect();
        if ways.is_empty() || !is_wet(step) {
            continue;
        }
        let names = |pick: fn(&Carried) -> &String| -> BTreeSet<&str> {
            ways.iter().map(|way| pick(way).as_str()).collect()
        };
        let through = names(|way| &way.through);
        let arms: BTreeSet<&str> = names(|way| &way.from)
            .union(&names(|way| &way.to))
            .copied()
            .collect();
        found.push(Finding {
            code: FindingCode::DeepWithPale,
            sentence: text::plan::in_the_lie_wet_together_in_though(
                column.kind,
                list(arms.iter().copied()),
                list(through.into_iter()),
            ),
            consequence: text::plan::dye_from_can_settle_on_into_iter2(
                list(names(|way| &way.from).into_iter()),
                list(names(|way| &way.to).into_iter()),
            ),
            arms: arms.into_iter().map(str::to_owned).collect(),
            mends: vec![Mend::AddLoads { kind: column.kind }],
        });
    }
    found
}

fn in_loads(plan: &Plan, sharing: &Sharing) -> Vec<Carried> {
    let mut ways = Vec::new();
    for column in &sharing.columns {
        let Kind::Load(kind, _) = column.kind else {
            continue;
        };
        if !is_wet(kind) {
            continue;
        }
        for (number, load) in column.names.iter().enumerate() {
            let here: BTreeSet<usize> = sharing
                .test_pieces()
                .filter(|i| column.of_piece[*i] == Some(number))
                .map(|i| sharing.pieces[i].arm)
                .filter(|arm| dyed_before(plan, &plan.arms[*arm], load))
                .collect();
            for &from in &here {
                for &to in here.iter().filter(|to| **to != from) {
                    ways.push(way(&plan.arms[from], &plan.arms[to], load));
                }
            }
        }
    }
    ways
}

/// From every load of a vessel into those after it.
fn in_vessel(plan: &Plan, sharing: &Sharing, vessel: &Vessel) -> Vec<Carried> {
    let of_load = |load: &String| arms_in(sharing, load);
    let mut ways = Vec::new();
    for (place, earlier) in vessel.order.iter().enumerate() {
        for later in &vessel.order[place + 1..] {
            for from in of_load(earlier) {
                for to in of_load(later).into_iter().filter(|to| *to != from) {
                    ways.push(way(&plan.arms[from], &plan.arms[to], &vessel.name));
                }
            }
        }
    }
    ways
}

/// The arms of which test pieces are in the load of that name.
pub(super) fn arms_in(sharing: &Sharing, load: &str) -> BTreeSet<usize> {
    sharing
        .columns
        .iter()
        .filter(|column| matches!(column.kind, Kind::Load(..)))
        .flat_map(|column| {
            sharing
                .test_pieces()
                .filter(move |i| column.name_of(*i) == Some(load))
        })
        .map(|i| sharing.pieces[i].arm)
        .collect()
}

fn way(from: &PlannedArm, to: &PlannedArm, through: &str) -> Carried {
    Carried {
        from: from.name.clone(),
        to: to.name.clone(),
        through: through.to_owned(),
        shows: shows(from, to),
    }
}

/// Whether dye of one arm would show on another's pieces.
fn shows(from: &PlannedArm, to: &PlannedArm) -> bool {
    let other_dye = !from.dye.is_empty() && !to.dye.is_empty() && from.dye != to.dye;
    let deeper = match (from.depth_percent_owf, to.depth_percent_owf) {
        (Some(from), Some(to)) => from > 0.0 && from >= DEEP_RATIO * to,
        _ => false,
    };
    other_dye || deeper || to.pale_areas
}

const fn is_wet(kind: StepKind) -> bool {
    !matches!(kind, StepKind::Dye | StepKind::Dry)
}

/// Whether the arm's pieces are dyed when they come into a load: its dye bath, if
/// the plan has one, lies before.
fn dyed_before(plan: &Plan, arm: &PlannedArm, load: &str) -> bool {
    let own: Vec<&Step> = plan
        .steps
        .iter()
        .filter(|step| step.is_of(&arm.name))
        .collect();
    let dyed = own.iter().position(|step| step.kind == StepKind::Dye);
    let here = own
        .iter()
        .position(|step| step.loads.iter().any(|name| name == load));
    match (dyed, here) {
        (Some(dyed), Some(here)) => dyed < here,
        _ => true,
    }
}
