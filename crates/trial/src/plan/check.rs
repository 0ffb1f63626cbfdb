//! Whether a plan can be worked with at all.

use super::{Plan, PlanError, PlannedArm, Scatter, dose};
use crate::new_trial::{
    LARGEST_MARGIN_DE00, LONGEST_NAME, LONGEST_TEXT, MOST_ARMS, MOST_PIECES, MOST_ROUNDS,
};
use crate::text;
use std::collections::HashSet;

/// Steps, circumstances, vessels and instructions a plan may have of each.
const MOST_ENTRIES: usize = 100;
/// Loads a step may have.
const MOST_LOADS: usize = 200;
/// The greatest depth that makes sense, percent on weight of fibre.
const DEEPEST_PERCENT: f64 = 100.0;
/// The longest step, minutes: a week.
const LONGEST_MINUTES: f64 = 10_080.0;
/// The hottest bath, under pressure, degrees Celsius.
const HOTTEST_C: f64 = 150.0;

impl Plan {
    /// Whether the plan can be worked with. A weak plan passes: that is for
    /// [`critique`](super::critique()) to say.
    ///
    /// # Errors
    /// The first field that can't be taken: empty or overlong text, fewer than two
    /// arms, an arm without pieces, names or codes given twice, numbers out of
    /// range, a step for an arm that isn't there.
    pub fn check(&self) -> Result<(), PlanError> {
        if self.question.trim().is_empty() {
            return wrong("question", text::plan::write_down_the_question_the_trial());
        }
        for (field, text) in [
            ("title", &self.title),
            ("question", &self.question),
            ("fibre", &self.fibre),
            ("dye_class", &self.dye_class),
        ] {
            short(field, text, LONGEST_TEXT)?;
        }
        let margin = self.margin.de00();
        if !(margin > 0.0 && margin <= LARGEST_MARGIN_DE00) {
            return wrong(
                "margin",
                text::plan::the_margin_must_lie_above_0(LARGEST_MARGIN_DE00),
            );
        }
        if !(1..=MOST_ROUNDS).contains(&self.rounds) {
            return wrong("rounds", text::plan::plan_at_least_1_round(MOST_ROUNDS));
        }
        if let Some(stage) = self.stages.iter().find(|stage| **stage > self.rounds) {
            return wrong(
                "stages",
                text::plan::pieces_cant_be_looked_at_after_rounds(stage, self.rounds),
            );
        }
        self.check_arms()?;
        self.check_steps()?;
        self.check_circumstances()?;
        self.check_vessels()?;
        self.check_instructions()?;
        self.scatter.as_ref().map_or(Ok(()), check_scatter)
    }

    fn check_arms(&self) -> Result<(), PlanError> {
        if self.arms.len() < 2 {
            return wrong("arms", text::plan::a_trial_compares_give_it_two_arms());
        }
        if self.arms.len() > MOST_ARMS {
            return wrong(
                "arms",
                text::plan::a_trial_can_have_arms_at_most(MOST_ARMS, self.arms.len()),
            );
        }
        let mut names = HashSet::new();
        let mut codes = HashSet::new();
        for (i, arm) in self.arms.iter().enumerate() {
            check_arm(i, arm, &mut names, &mut codes)?;
        }
        let mut controls = self.arms.iter().enumerate().filter(|(_, arm)| arm.control);
        if let Some((i, arm)) = controls.nth(1) {
            return wrong(
                format!("arms[{i}].control"),
                text::plan::only_one_arm_can_be_the_control(&arm.name),
            );
        }
        Ok(())
    }

    fn check_steps(&self) -> Result<(), PlanError> {
        few("steps", self.steps.len())?;
        for (i, step) in self.steps.iter().enumerate() {
            let at = format!("steps[{i}]");
            self.known_arms(&at, &step.arms)?;
            labels(&format!("{at}.loads"), "load", &step.loads)?;
            labels(
                &format!("{at}.witnesses"),
                text::plan::witness_cloth(),
                &step.witnesses,
            )?;
            for text in [&step.agent, &step.amount, &step.water] {
                short(&at, text, LONGEST_NAME)?;
            }
            amounts(&at, &step.amount, &step.water)?;
            heat_and_time(&at, step.minutes, step.temperature_c)?;
        }
        Ok(())
    }

    fn check_circumstances(&self) -> Result<(), PlanError> {
        few("circumstances", self.circumstances.len())?;
        for (i, circumstance) in self.circumstances.iter().enumerate() {
            let at = format!("circumstances[{i}]");
            self.known_arms(&at, &circumstance.arms)?;
            let field = format!("{at}.values");
            if circumstance.values.is_empty() {
                return wrong(field, text::plan::name_at_least_one_day_person());
            }
            labels(&field, circumstance.kind.words(), &circumstance.values)?;
        }
        Ok(())
    }

    fn check_vessels(&self) -> Result<(), PlanError> {
        few("vessels", self.vessels.len())?;
        let loads: HashSet<&str> = self
            .steps
            .iter()
            .flat_map(|step| &step.loads)
            .map(String::as_str)
            .collect();
        for (i, vessel) in self.vessels.iter().enumerate() {
            let field = format!("vessels[{i}].order");
            labels(&field, "load", &vessel.order)?;
            if let Some(load) = vessel
                .order
                .iter()
                .find(|load| !loads.contains(load.as_str()))
            {
                return wrong(
                    field,
                    text::plan::the_vessel_names_the_load(&vessel.name, load),
                );
            }
        }
        Ok(())
    }

    fn check_instructions(&self) -> Result<(), PlanError> {
        few("instructions", self.instructions.len())?;
        for (i, instruction) in self.instructions.iter().enumerate() {
            let at = format!("instructions[{i}]");
            if instruction.agent.trim().is_empty() {
                return wrong(
                    format!("{at}.agent"),
                    text::plan::say_which_product_this_instruction(),
                );
            }
            for text in [&instruction.agent, &instruction.amount, &instruction.water] {
                short(&at, text, LONGEST_NAME)?;
            }
            amounts(&at, &instruction.amount, &instruction.water)?;
            heat_and_time(&at, instruction.minutes, instruction.temperature_c)?;
        }
        Ok(())
    }

    fn known_arms(&self, at: &str, names: &[String]) -> Result<(), PlanError> {
        let unknown = |name: &&String| self.arms.iter().all(|arm| arm.name != **name);
        match names.iter().find(unknown) {
            Some(name) => wrong(
                format!("{at}.arms"),
                text::plan::there_is_no_arm_the_arms(
                    name,
                    list(self.arms.iter().map(|arm| arm.name.as_str())),
                ),
            ),
            None => Ok(()),
        }
    }
}

fn check_arm<'a>(
    i: usize,
    arm: &'a PlannedArm,
    names: &mut HashSet<&'a str>,
    codes: &mut HashSet<&'a str>,
) -> Result<(), PlanError> {
    let at = format!("arms[{i}]");
    let name = arm.name.trim();
    if name.is_empty() {
        return wrong(
            format!("{at}.name"),
            text::plan::fill_in_the_name_of_arm(i + 1),
        );
    }
    short(&format!("{at}.name"), name, LONGEST_NAME)?;
    if !names.insert(name) {
        return wrong(
            format!("{at}.name"),
            text::plan::two_arms_are_called_give(name),
        );
    }
    if arm.pieces == 0 {
        return wrong(
            format!("{at}.pieces"),
            text::plan::the_arm_has_no_test_piece_give(name),
        );
    }
    let all = arm.pieces.saturating_add(arm.keepers);
    if all > MOST_PIECES {
        return wrong(
            format!("{at}.pieces"),
            text::plan::the_arm_has_pieces_an_arm(name, all, MOST_PIECES),
        );
    }
    if arm
        .depth_percent_owf
        .is_some_and(|depth| !(0.0..=DEEPEST_PERCENT).contains(&depth))
    {
        return wrong(
            format!("{at}.depth_percent_owf"),
            text::plan::the_depth_of_must_lie_between_0(name, DEEPEST_PERCENT),
        );
    }
    check_codes(&format!("{at}.codes"), arm, all, codes)
}

fn check_codes<'a>(
    field: &str,
    arm: &'a PlannedArm,
    all: usize,
    codes: &mut HashSet<&'a str>,
) -> Result<(), PlanError> {
    if !arm.codes.is_empty() && arm.codes.len() != all {
        return wrong(
            field,
            text::plan::the_arm_has_pieces_but_codes_give(&arm.name, all, arm.codes.len()),
        );
    }
    for code in arm.codes.iter().map(|code| code.trim()) {
        if code.is_empty() {
            return wrong(field, text::plan::a_piece_of_has_an_empty_code(&arm.name));
        }
        short(field, code, LONGEST_NAME)?;
        if !codes.insert(code) {
            return wrong(field, text::plan::two_pieces_carry_the_code_give(code));
        }
    }
    Ok(())
}

fn check_scatter(scatter: &Scatter) -> Result<(), PlanError> {
    let all = [
        ("scatter.piece_sd_de00", scatter.piece_sd_de00),
        ("scatter.load_sd_de00", scatter.load_sd_de00),
        ("scatter.reading_sd_de00", scatter.reading_sd_de00),
    ];
    for (field, sd) in all {
        if !(0.0..=LARGEST_MARGIN_DE00).contains(&sd) {
            return wrong(
                field,
                text::plan::a_standard_deviation_lies_between_0(LARGEST_MARGIN_DE00, sd),
            );
        }
    }
    if scatter.piece_sd_de00 + scatter.reading_sd_de00 <= 0.0 {
        return wrong("scatter", text::plan::equal_pieces_never_read_alike());
    }
    Ok(())
}

/// Names that are filled in, short, few, and each there once.
fn labels(field: &str, what: &str, names: &[String]) -> Result<(), PlanError> {
    if names.len() > MOST_LOADS {
        return wrong(
            field,
            text::plan::entries_are_too_many_here_are_possible(names.len(), MOST_LOADS),
        );
    }
    let mut seen = HashSet::new();
    for name in names.iter().map(|name| name.trim()) {
        if name.is_empty() {
            return wrong(field, text::plan::a_has_no_name(what));
        }
        short(field, name, LONGEST_NAME)?;
        if !seen.insert(name) {
            return wrong(field, text::plan::the_is_named_twice(what, name));
        }
    }
    Ok(())
}

pub(super) fn amounts(at: &str, amount: &str, water: &str) -> Result<(), PlanError> {
    for (field, text) in [("amount", amount), ("water", water)] {
        if !text.trim().is_empty() {
            dose::amount(text).map_err(|why| PlanError::new(format!("{at}.{field}"), why))?;
        }
    }
    Ok(())
}

pub(super) fn heat_and_time(
    at: &str,
    minutes: Option<f64>,
    celsius: Option<f64>,
) -> Result<(), PlanError> {
    if minutes.is_some_and(|minutes| !(minutes > 0.0 && minutes <= LONGEST_MINUTES)) {
        return wrong(
            format!("{at}.minutes"),
            text::plan::a_step_takes_more_than_0_minutes(),
        );
    }
    if celsius.is_some_and(|celsius| !(0.0..=HOTTEST_C).contains(&celsius)) {
        return wrong(
            format!("{at}.temperature_c"),
            text::plan::a_bath_has_between_0_and_degrees(HOTTEST_C),
        );
    }
    Ok(())
}

fn few(field: &str, count: usize) -> Result<(), PlanError> {
    if count > MOST_ENTRIES {
        return wrong(
            field,
            text::plan::entries_are_too_many_here_are_possible_2(count, MOST_ENTRIES),
        );
    }
    Ok(())
}

fn short(field: &str, text: &str, most: usize) -> Result<(), PlanError> {
    if text.chars().count() > most {
        return wrong(field, text::plan::keep_this_to_characters_at_most(most));
    }
    Ok(())
}

/// `"a", "b" and "c"`.
pub(super) fn list<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let quoted: Vec<String> = names.map(|name| format!("\"{name}\"")).collect();
    joined(&quoted)
}

/// `a, b and c`.
pub(super) fn joined(parts: &[String]) -> String {
    match parts.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => text::plan::and(rest.join(", "), last),
    }
}

fn wrong<T>(field: impl Into<String>, message: impl Into<String>) -> Result<T, PlanError> {
    Err(PlanError::new(field, message))
}
