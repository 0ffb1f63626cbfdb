//! What is the same split as the arms, wholly or in part.

use super::{Finding, FindingCode, carry};
use crate::plan::{CircumstanceKind, Column, Kind, Mend, Plan, Sharing, check::list};
use crate::text;
use inference::alias::{Kept, kept};

/// A pair of arms that keeps less than this share of its information is told.
/// Two of three arms in each load, a balanced design, keep three quarters.
const UNEVEN: f64 = 0.7;

/// Columns that hide the arms' difference, alone or together.
pub(super) fn aliased(plan: &Plan, sharing: &Sharing) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    let mut open = Vec::new();
    for column in &sharing.columns {
        let of_column = Of::new(plan, sharing, column);
        match of_column.finding() {
            Some(finding) => found.push(finding),
            None if of_column.crossed() => open.push(column),
            None => {}
        }
    }
    if open.len() > 1 {
        found.extend(together(plan, sharing, &open));
    }
    found
}

/// A column and the arms that have it.
struct Of<'a> {
    plan: &'a Plan,
    column: &'a Column,
    /// Arm and the names that its test pieces have, for arms of which all have one.
    arms: Vec<(usize, Vec<usize>)>,
    pairs: Vec<Kept>,
}

impl<'a> Of<'a> {
    fn new(plan: &'a Plan, sharing: &Sharing, column: &'a Column) -> Self {
        let arms: Vec<(usize, Vec<usize>)> = (0..plan.arms.len())
            .map(|arm| (arm, column.names_of_arm(sharing, arm)))
            .filter(|(_, names)| !names.is_empty())
            .collect();
        let (of_arm, of_name): (Vec<usize>, Vec<usize>) = sharing
            .test_pieces()
            .filter_map(|i| Some((sharing.pieces[i].arm, column.of_piece[i]?)))
            .unzip();
        // Too many names to work out are many loads, which hide nothing.
        let pairs = kept(&of_arm, &[&of_name]).unwrap_or_default();
        Self {
            plan,
            column,
            arms,
            pairs,
        }
    }

    /// A load or day is one of many that might have been, so that several of them
    /// in an arm show how much they differ. People and places are what they are.
    fn one_of_many(&self) -> bool {
        !matches!(
            self.column.kind,
            Kind::Circumstance(CircumstanceKind::Person | CircumstanceKind::Place)
        )
    }

    fn names_of(&self, arm: usize) -> &[usize] {
        let found = self.arms.iter().find(|(other, _)| *other == arm);
        found.map_or(&[], |(_, names)| names)
    }

    /// Arms that nothing tells from what they have to themselves in this column.
    fn hidden(&self) -> Vec<usize> {
        let mut hidden: Vec<usize> = self
            .pairs
            .iter()
            .filter(|pair| pair.efficiency == 0.0)
            .flat_map(|pair| [pair.arms.0, pair.arms.1])
            .filter(|arm| !self.one_of_many() || self.names_of(*arm).len() < 2)
            .collect();
        // A step that one arm alone has can't be weighed against another's.
        if let [(arm, names)] = self.arms.as_slice()
            && self.one_of_many()
            && names.len() < 2
        {
            hidden.push(*arm);
        }
        hidden.retain(|arm| self.plan.arms[*arm].pieces > 1);
        hidden.sort_unstable();
        hidden.dedup();
        hidden
    }

    /// Whether arms share its names, so that it can be allowed for.
    fn crossed(&self) -> bool {
        self.arms.len() == self.plan.arms.len()
            && self.column.names.len() > 1
            && self.pairs.iter().all(|pair| pair.efficiency > 0.0)
    }

    fn finding(&self) -> Option<Finding> {
        let hidden = self.hidden();
        if !hidden.is_empty() {
            return Some(self.whole(&hidden));
        }
        let worst = self
            .pairs
            .iter()
            .filter(|pair| pair.efficiency > 0.0 && pair.efficiency < UNEVEN)
            .min_by(|a, b| a.efficiency.total_cmp(&b.efficiency))?;
        Some(self.part(worst))
    }

    fn whole(&self, hidden: &[usize]) -> Finding {
        let kind = self.column.kind;
        let own: Vec<String> = hidden
            .iter()
            .map(|arm| {
                let names = self
                    .names_of(*arm)
                    .iter()
                    .map(|n| self.column.names[*n].as_str());
                text::plan::has(&self.plan.arms[*arm].name, list(names))
            })
            .collect();
        let own = own.join(", ");
        let (code, sentence) = match kind {
            Kind::Load(..) if self.arms.len() == 1 => (
                FindingCode::LoadIsArm,
                text::plan::all_pieces_of_one_arm_share(kind, &own),
            ),
            Kind::Load(..) => (
                FindingCode::LoadIsArm,
                text::plan::in_the_arms_have_one_load(kind, &own),
            ),
            Kind::Circumstance(CircumstanceKind::Day) => (
                FindingCode::DayIsArm,
                text::plan::arms_are_worked_on_days(&own),
            ),
            Kind::Circumstance(CircumstanceKind::Person) => (
                FindingCode::PersonIsArm,
                text::plan::arms_are_worked_by_people(&own),
            ),
            Kind::Circumstance(CircumstanceKind::Place) => (
                FindingCode::PlaceIsArm,
                text::plan::arms_lie_at_places_of_their_own(&own),
            ),
        };
        Finding {
            code,
            sentence,
            consequence: text::plan::a_difference_goes_with_the_treatment(kind),
            arms: hidden
                .iter()
                .map(|arm| self.plan.arms[*arm].name.clone())
                .collect(),
            mends: self.mends(),
        }
    }

    fn mends(&self) -> Vec<Mend> {
        let kind = self.column.kind;
        let all = self.arms.len() == self.plan.arms.len();
        let mut mends = Vec::new();
        let blocks = match kind {
            Kind::Load(..) => all && carry::may_share(&self.plan.arms),
            Kind::Circumstance(_) => all,
        };
        if blocks {
            mends.push(Mend::SplitInBlocks { kind });
        }
        if matches!(kind, Kind::Load(..)) {
            mends.push(Mend::AddLoads { kind });
        }
        if let Kind::Load(step, _) = kind
            && !step.every_round()
        {
            mends.push(Mend::EachByItself { kind });
        }
        mends
    }

    fn part(&self, pair: &Kept) -> Finding {
        let kind = self.column.kind;
        let arms = [pair.arms.0, pair.arms.1].map(|arm| self.plan.arms[arm].name.clone());
        Finding {
            code: FindingCode::Uneven,
            sentence: text::plan::the_is_spread_unevenly_over(
                kind,
                list(arms.iter().map(String::as_str)),
            ),
            consequence: text::plan::allowing_for_the_costs_of_what_these(
                kind,
                format_args!("{:.0}", 100.0 * (1.0 - pair.efficiency)),
            ),
            arms: arms.into(),
            mends: vec![Mend::SplitInBlocks { kind }],
        }
    }
}

/// Arms whose difference no column hides alone, but all of them together do.
fn together(plan: &Plan, sharing: &Sharing, columns: &[&Column]) -> Option<Finding> {
    let complete: Vec<usize> = sharing
        .test_pieces()
        .filter(|i| columns.iter().all(|column| column.of_piece[*i].is_some()))
        .collect();
    let arms: Vec<usize> = complete.iter().map(|i| sharing.pieces[*i].arm).collect();
    let factors: Vec<Vec<usize>> = columns
        .iter()
        .map(|column| {
            complete
                .iter()
                .filter_map(|i| column.of_piece[*i])
                .collect()
        })
        .collect();
    let factors: Vec<&[usize]> = factors.iter().map(Vec::as_slice).collect();
    let pairs = kept(&arms, &factors).ok()?;
    let pair = pairs.iter().find(|pair| pair.efficiency == 0.0)?;
    let names = [pair.arms.0, pair.arms.1].map(|arm| plan.arms[arm].name.clone());
    let kinds: Vec<String> = columns
        .iter()
        .map(|column| column.kind.to_string())
        .collect();
    Some(Finding {
        code: FindingCode::Tangled,
        sentence: text::plan::cant_be_told_apart_once_are_allowed(
            list(names.iter().map(String::as_str)),
            kinds.join(text::plan::and_2()),
        ),
        consequence: text::plan::none_of_them_hides_the_difference_alone().to_owned(),
        arms: names.into(),
        mends: columns
            .iter()
            .map(|column| Mend::SplitInBlocks { kind: column.kind })
            .collect(),
    })
}
