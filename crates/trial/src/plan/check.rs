//! Whether a plan can be worked with at all.

use super::{Plan, PlanError, PlannedArm, Scatter, dose};
use crate::new_trial::{
    LARGEST_MARGIN_DE00, LONGEST_NAME, LONGEST_TEXT, MOST_ARMS, MOST_PIECES, MOST_ROUNDS,
};
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
            return wrong(
                "question",
                "Write down the question the trial is to answer.",
            );
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
                format!(
                    "The margin must lie above 0 and at most at {LARGEST_MARGIN_DE00} CIEDE2000; 1 \
                     is a difference that can just be seen side by side."
                ),
            );
        }
        if !(1..=MOST_ROUNDS).contains(&self.rounds) {
            return wrong(
                "rounds",
                format!("Plan at least 1 round and at most {MOST_ROUNDS}."),
            );
        }
        if let Some(stage) = self.stages.iter().find(|stage| **stage > self.rounds) {
            return wrong(
                "stages",
                format!(
                    "Pieces can't be looked at after {stage} rounds where only {} are planned.",
                    self.rounds
                ),
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
            return wrong(
                "arms",
                "A trial compares: give it two arms at least, one of them without the extra step.",
            );
        }
        if self.arms.len() > MOST_ARMS {
            return wrong(
                "arms",
                format!(
                    "A trial can have {MOST_ARMS} arms at most, not {}.",
                    self.arms.len()
                ),
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
                format!(
                    "Only one arm can be the control; \"{}\" is the second one marked.",
                    arm.name
                ),
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
            labels(&format!("{at}.witnesses"), "witness cloth", &step.witnesses)?;
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
                return wrong(
                    field,
                    "Name at least one day, person or place here, or leave the entry out.",
                );
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
                    format!(
                        "The vessel \"{}\" names the load \"{load}\", which no step has.",
                        vessel.name
                    ),
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
                    "Say which product this instruction is for.",
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
                format!(
                    "There is no arm \"{name}\"; the arms are {}.",
                    list(self.arms.iter().map(|arm| arm.name.as_str()))
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
            format!("Fill in the name of arm {}.", i + 1),
        );
    }
    short(&format!("{at}.name"), name, LONGEST_NAME)?;
    if !names.insert(name) {
        return wrong(
            format!("{at}.name"),
            format!("Two arms are called \"{name}\": give each its own name."),
        );
    }
    if arm.pieces == 0 {
        return wrong(
            format!("{at}.pieces"),
            format!("The arm \"{name}\" has no test piece: give it 2 at least, better 4."),
        );
    }
    let all = arm.pieces.saturating_add(arm.keepers);
    if all > MOST_PIECES {
        return wrong(
            format!("{at}.pieces"),
            format!(
                "The arm \"{name}\" has {all} pieces; an arm can have {MOST_PIECES} at most. So \
                 many are never needed: a dozen show all that matters."
            ),
        );
    }
    if arm
        .depth_percent_owf
        .is_some_and(|depth| !(0.0..=DEEPEST_PERCENT).contains(&depth))
    {
        return wrong(
            format!("{at}.depth_percent_owf"),
            format!(
                "The depth of \"{name}\" must lie between 0 and {DEEPEST_PERCENT} percent on \
                 weight of fibre; 0.5 is pale, 4 deep."
            ),
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
            format!(
                "The arm \"{}\" has {all} pieces but {} codes: give each piece one, or none at all.",
                arm.name,
                arm.codes.len()
            ),
        );
    }
    for code in arm.codes.iter().map(|code| code.trim()) {
        if code.is_empty() {
            return wrong(
                field,
                format!("A piece of \"{}\" has an empty code.", arm.name),
            );
        }
        short(field, code, LONGEST_NAME)?;
        if !codes.insert(code) {
            return wrong(
                field,
                format!("Two pieces carry the code \"{code}\": give each its own."),
            );
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
                format!(
                    "A standard deviation lies between 0 and {LARGEST_MARGIN_DE00} CIEDE2000 \
                     units, not {sd}."
                ),
            );
        }
    }
    if scatter.piece_sd_de00 + scatter.reading_sd_de00 <= 0.0 {
        return wrong(
            "scatter",
            "Equal pieces never read alike to the last digit: give a scatter from piece to piece \
             or of reading above 0.",
        );
    }
    Ok(())
}

/// Names that are filled in, short, few, and each there once.
fn labels(field: &str, what: &str, names: &[String]) -> Result<(), PlanError> {
    if names.len() > MOST_LOADS {
        return wrong(
            field,
            format!(
                "{} entries are too many here; {MOST_LOADS} are possible.",
                names.len()
            ),
        );
    }
    let mut seen = HashSet::new();
    for name in names.iter().map(|name| name.trim()) {
        if name.is_empty() {
            return wrong(field, format!("A {what} has no name."));
        }
        short(field, name, LONGEST_NAME)?;
        if !seen.insert(name) {
            return wrong(field, format!("The {what} \"{name}\" is named twice."));
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
            "A step takes more than 0 minutes and at most a week.",
        );
    }
    if celsius.is_some_and(|celsius| !(0.0..=HOTTEST_C).contains(&celsius)) {
        return wrong(
            format!("{at}.temperature_c"),
            format!("A bath has between 0 and {HOTTEST_C} degrees Celsius."),
        );
    }
    Ok(())
}

fn few(field: &str, count: usize) -> Result<(), PlanError> {
    if count > MOST_ENTRIES {
        return wrong(
            field,
            format!("{count} entries are too many here; {MOST_ENTRIES} are possible."),
        );
    }
    Ok(())
}

fn short(field: &str, text: &str, most: usize) -> Result<(), PlanError> {
    if text.chars().count() > most {
        return wrong(field, format!("Keep this to {most} characters at most."));
    }
    Ok(())
}

/// `"a", "b" and "c"`.
pub(super) fn list<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let quoted: Vec<String> = names.map(|name| format!("\"{name}\"")).collect();
    match quoted.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
    }
}

fn wrong<T>(field: impl Into<String>, message: impl Into<String>) -> Result<T, PlanError> {
    Err(PlanError::new(field, message))
}
