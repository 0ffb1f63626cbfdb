//! What is kept, as a person reads it: recipes and plans are files of entries, and a find shows what
//! they say in words.

use crate::text;
use dyeing::Recipe;
use dyeing::recipe::Written;
use locale::capital;
use trial::plan::Plan;

/// A text as a person reads it.
pub(super) struct Readable {
    /// The name that it gives itself.
    pub(super) name: Option<String>,
    /// What it is about, shown with every find; may be empty.
    pub(super) head: String,
    /// What else it says, a line for each thing.
    pub(super) lines: Vec<String>,
}

impl Readable {
    /// What is kept of something of that kind.
    pub(super) fn of(kind: &str, body: &str) -> Self {
        let read = match kind {
            "recipe" => recipe(body),
            "plan" => plan(body),
            _ => {
                let words: Vec<&str> = body.split_whitespace().collect();
                return Self {
                    name: None,
                    head: String::new(),
                    lines: vec![words.join(" ")],
                };
            }
        };
        match read {
            Some(mut read) => {
                read.lines.extend(remarks(body));
                read.lines.retain(|line| !line.trim().is_empty());
                read
            }
            None => values(body),
        }
    }
}

fn recipe(body: &str) -> Option<Readable> {
    let written = Written::from_toml(body).ok()?;
    let recipe: Recipe = written.clone().recipe().ok()?;
    let goods = recipe.goods.mass.shown();
    let head = text::search::on_of_goods(
        capital(recipe.class.name()),
        &written.fibre,
        goods,
        recipe.goods.pieces,
    );
    let named = |name: &str, amount: &str| text::search::name_amount(name, amount);
    let mut lines: Vec<String> = Vec::new();
    lines.extend(written.dye.iter().map(|dye| named(&dye.name, &dye.amount)));
    lines.extend(recipe.auxiliaries.iter().map(|auxiliary| {
        let line = named(&auxiliary.name, &auxiliary.rule.text);
        // What a name of the person's own stands for is told too, since its word in the file is found.
        match auxiliary.material.as_ref().map(|material| material.name()) {
            Some(name) if !has(&line, name) => text::search::which_is(line, name),
            _ => line,
        }
    }));
    lines.extend(written.after.iter().map(|after| {
        text::search::after_treatment(&after.name, &after.amount, &after.temperature, &after.time)
    }));
    if !written.arms.is_empty() {
        let arms: Vec<&str> = written.arms.keys().map(String::as_str).collect();
        lines.push(text::search::arms(arms.join(", ")));
    }
    Some(Readable {
        name: Some(written.name),
        head,
        lines,
    })
}

fn plan(body: &str) -> Option<Readable> {
    let plan = Plan::from_toml(body).ok()?;
    let mut lines: Vec<String> = plan
        .arms
        .iter()
        .map(|arm| match arm.treatment.as_str() {
            "" => text::search::arm(&arm.name),
            treatment => text::search::arm_which_is(&arm.name, treatment),
        })
        .collect();
    lines.extend(
        plan.steps
            .iter()
            .filter(|step| !step.agent.is_empty())
            .map(|step| {
                let said = [step.agent.as_str(), step.amount.as_str()];
                let said: Vec<&str> = said.into_iter().filter(|part| !part.is_empty()).collect();
                text::search::step_with(capital(step.kind.words()), said.join(", "))
            }),
    );
    let loads = plan.steps.iter().flat_map(|step| &step.loads);
    lines.extend(joined(loads).map(text::search::loads));
    let shared = plan.circumstances.iter();
    lines.extend(shared.map(|shared| {
        text::search::name_amount(capital(shared.kind.words()), shared.values.join(", "))
    }));
    lines.extend([plan.dye_class, plan.fibre]);
    let title = Some(plan.title).filter(|title| !title.is_empty());
    Some(Readable {
        name: title,
        head: plan.question,
        lines,
    })
}

fn joined<'a>(names: impl Iterator<Item = &'a String>) -> Option<String> {
    let mut all: Vec<&str> = Vec::new();
    for name in names {
        if !all.contains(&name.as_str()) {
            all.push(name);
        }
    }
    (!all.is_empty()).then(|| all.join(", "))
}

fn has(line: &str, name: &str) -> bool {
    line.to_lowercase().contains(&name.to_lowercase())
}

/// What a person wrote beside the entries.
fn remarks(body: &str) -> Vec<String> {
    let remarks = body.lines().filter_map(|line| parted(line).1);
    remarks.map(|remark| remark.trim().to_owned()).collect()
}

/// A line's entry and its remark: what stands behind the first `#` that isn't within quotation marks.
fn parted(line: &str) -> (&str, Option<&str>) {
    let (mut open, mut is_escaped) = (None, false);
    for (at, letter) in line.char_indices() {
        match (open, letter) {
            (None, '#') => return (&line[..at], Some(&line[at + 1..])),
            (None, '"' | '\'') => open = Some(letter),
            // Only text in double marks has signs behind a backslash.
            (Some('"'), '\\') if !is_escaped => {
                is_escaped = true;
                continue;
            }
            (Some(mark), letter) if mark == letter && !is_escaped => open = None,
            _ => {}
        }
        is_escaped = false;
    }
    (line, None)
}

/// The values of a file that can't be understood any more, without its signs.
fn values(body: &str) -> Readable {
    let bare = |value: &str| -> String {
        let value: String = value.chars().filter(|c| !"\"[]{}".contains(*c)).collect();
        value.trim().trim_end_matches(',').to_owned()
    };
    let lines = body.lines().map(str::trim);
    let name = lines.clone().find_map(|line| {
        line.strip_prefix("name = ")
            .or(line.strip_prefix("title = "))
    });
    let values = lines
        .filter(|line| !line.starts_with(['#', '[']))
        .map(|line| {
            let line = parted(line).0;
            bare(line.split_once(" = ").map_or(line, |(_, value)| value))
        });
    Readable {
        name: name.map(|value| bare(parted(value).0)),
        head: String::new(),
        lines: values.filter(|value| !value.is_empty()).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");

    #[test]
    fn a_recipe_reads_as_its_page_tells_it() {
        let read = Readable::of("recipe", NAPKINS);
        assert_eq!(read.name.as_deref(), Some("green napkins"));
        assert_eq!(
            read.head,
            "Warm reactive dye on cotton, 250 g of goods in 5 pieces"
        );
        assert_eq!(read.lines[0], "yellow: 0.8 % owf");
        let all = read.lines.join("\n");
        assert!(
            !all.contains(" = ") && !all.contains('"') && !all.contains('{'),
            "{all}"
        );
    }

    #[test]
    fn what_cant_be_understood_any_more_is_shown_without_its_signs() {
        let broken = NAPKINS.replace("reactive-warm", "ractive");
        let read = Readable::of("recipe", &broken);
        assert_eq!(read.name.as_deref(), Some("green napkins"));
        assert!(read.lines.contains(&"ractive".to_owned()));
        assert!(!read.lines.join(" ").contains(['=', '"', '{']));
    }

    #[test]
    fn a_remark_begins_at_the_first_sign_outside_quotation_marks() {
        for (line, entry, remark) in [
            (
                "name = \"lot #3\" # of # spring",
                "name = \"lot #3\" ",
                Some(" of # spring"),
            ),
            (
                "name = 'it \"is' # blue",
                "name = 'it \"is' ",
                Some(" blue"),
            ),
            (
                "name = \"a \\\" # b\" # c",
                "name = \"a \\\" # b\" ",
                Some(" c"),
            ),
            ("name = 'a\\' # c", "name = 'a\\' ", Some(" c")),
            ("name = \"x # y\"", "name = \"x # y\"", None),
            ("# it's all", "", Some(" it's all")),
            ("", "", None),
        ] {
            assert_eq!(parted(line), (entry, remark), "{line}");
        }
    }

    #[test]
    fn a_plan_is_told_by_its_question_and_arms() {
        let plan = include_str!("../../../../docs/plans/two-arms.toml");
        let read = Readable::of("plan", plan);
        assert!(read.head.ends_with('?'), "{}", read.head);
        assert!(!read.lines.is_empty());
        assert!(!read.lines.join("\n").contains(" = "));
    }
}
