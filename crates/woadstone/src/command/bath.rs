//! `woadstone bath RECIPE.toml [--goods "2.5 kg"] [--rinses FILE] [--json]`.

mod balance;

use crate::text;
use std::{fmt::Write, path::Path};

use dyeing::{
    DyeingError, Plan, Recipe,
    balance::Start,
    check::{Check, Level},
    plan::Line,
    scale,
};
use serde_json::json;

use crate::{
    cli::BathArgs,
    command::file,
    outcome::{Outcome, Stop, print, print_json},
};

/// Prints what follows from a recipe.
pub fn run(args: &BathArgs) -> Outcome {
    let refused = |e| refused(&args.recipe, e);
    let mut recipe = Recipe::read(&text(&args.recipe)?).map_err(refused)?;
    let mut plan = Plan::of(&recipe).map_err(refused)?;
    let mut scaling = Vec::new();
    if let Some(goods) = args.goods {
        recipe = recipe.scaled_to(goods).map_err(refused)?;
        let lot = Plan::of(&recipe).map_err(refused)?;
        let heater_kw = recipe.pot.and_then(|p| p.heater_kw);
        scaling = scale::checks(&plan, &lot, heater_kw);
        plan = lot;
    }
    let balance = match &args.rinses {
        Some(path) => Some(balance::of(
            path,
            &Start::of(&recipe, &plan),
            args.clear_below,
        )?),
        None => None,
    };
    if !args.json {
        let balance = balance.as_ref().map_or(String::new(), balance::table);
        return print(&format!("{}{balance}", table(&plan, &scaling)));
    }
    match (args.goods, balance) {
        (None, None) => print_json(&plan),
        (None, Some(balance)) => print_json(&json!({ "plan": plan, "balance": balance })),
        (Some(_), None) => print_json(&json!({ "plan": plan, "scaling": scaling })),
        (Some(_), Some(balance)) => {
            print_json(&json!({ "plan": plan, "scaling": scaling, "balance": balance }))
        }
    }
}

/// The text of a file that a person named.
fn text(path: &Path) -> Result<String, Stop> {
    String::from_utf8(file(path)?)
        .map_err(|_| Stop::refused(text::command::is_not_text_in_utf_8(path.display())))
}

/// What is wrong with a file, with a mark below the character at fault.
fn refused(path: &Path, error: DyeingError) -> Stop {
    let pointed = error.pointed().map_or(String::new(), |p| format!("\n{p}"));
    Stop::refused(format!("{}: {error}{pointed}", path.display()))
}

/// The plan as text for a terminal.
fn table(plan: &Plan, scaling: &[Check]) -> String {
    let mut text = format!(
        "{}\n{}",
        plan.name,
        text::command::class_on_goods(&plan.class, plan.goods.mass)
    );
    let guess = if plan.goods.typical.is_some() {
        text::command::a_guess_not_weighed()
    } else {
        ""
    };
    let _ = writeln!(
        text,
        "{}",
        text::command::liquor_ratio(guess, pieces(plan.goods.pieces), plan.baths.ratio)
    );
    checks(&mut text, text::command::look_at_this_first(), &plan.checks);
    checks(
        &mut text,
        text::command::from_the_sample_to_this_lot(),
        scaling,
    );
    bath(&mut text, plan);
    let _ = writeln!(
        text,
        "\n{}\n  {}",
        text::command::where_the_dye_goes(),
        plan.uptake.sentence
    );
    programme(&mut text, plan);
    steps(&mut text, plan);
    let _ = writeln!(text, "\n{}", text::command::cautions());
    for caution in &plan.cautions {
        let because = if caution.because.is_empty() {
            String::new()
        } else {
            format!(" ({})", caution.because.join(", "))
        };
        let _ = writeln!(text, "  - {}{because}", caution.sentence);
    }
    cost(&mut text, plan);
    let _ = writeln!(
        text,
        "\n{}",
        text::command::usual_fastness_to_washing_to_light(
            &plan.fastness.wash,
            &plan.fastness.light
        )
    );
    text
}

fn checks(text: &mut String, title: &str, checks: &[Check]) {
    if checks.is_empty() {
        return;
    }
    let _ = writeln!(text, "\n{title}");
    told(text, checks);
}

/// A line for each check.
fn told(text: &mut String, checks: &[Check]) {
    for check in checks {
        let level = match check.level {
            Level::Wrong => text::command::wrong(),
            Level::Doubtful => text::command::doubtful(),
            Level::Note => text::command::note_2(),
        };
        let _ = writeln!(text, "  {level}: {}", check.sentence);
    }
}

fn bath(text: &mut String, plan: &Plan) {
    let b = &plan.baths;
    let _ = writeln!(
        text,
        "\n{}",
        text::command::dye_bath_of_liquor(&b.metric, &b.kitchen)
    );
    if b.count > 1 {
        let _ = writeln!(
            text,
            "  {}",
            text::command::baths_of_with_of_goods(b.count, b.each_liquor, b.each_goods)
        );
    }
    for one in &plan.lines {
        line(text, one);
    }
    let _ = writeln!(
        text,
        "  {:<22} {}",
        text::command::water_to_top_up(),
        plan.top_up
    );
    for after in &plan.after {
        let _ = writeln!(
            text,
            "\n{}",
            text::command::after_treatment_for_of_water(
                after.arms.join(", "),
                after.liquor,
                &after.kitchen,
                after.temperature,
                after.time
            )
        );
        line(text, &after.line);
    }
}

fn line(text: &mut String, line: &Line) {
    let _ = write!(text, "  {:<22} {}", line.name, line.metric);
    if let Some(pounds) = &line.pounds {
        let _ = write!(text, " = {pounds}");
    }
    let _ = writeln!(text, "   [{}]", line.rule);
    let more = |what: String| format!("  {:<22} {what}\n", "");
    match (&line.kitchen, &line.off) {
        (Some(measure), Some(off)) => text.push_str(&more(text::command::or(measure, off))),
        (Some(measure), None) => text.push_str(&more(text::command::or_2(measure))),
        _ => {}
    }
    if let Some(each) = &line.each_bath {
        text.push_str(&more(text::command::to_each_bath(each)));
    }
    if let Some(note) = &line.note {
        text.push_str(&more(note.clone()));
    }
}

fn programme(text: &mut String, plan: &Plan) {
    let _ = writeln!(text, "\n{}", text::command::temperature());
    for point in &plan.programme.points {
        let _ = write!(
            text,
            "  {}",
            text::command::min_2(format_args!("{:>4.0}", point.minute), point.celsius)
        );
        let here = plan
            .programme
            .additions
            .iter()
            .find(|a| a.minute == point.minute);
        if let Some(addition) = here {
            let _ = write!(text, "  {}", text::command::add(addition.what.join(", ")));
        }
        text.push('\n');
    }
}

fn steps(text: &mut String, plan: &Plan) {
    let _ = writeln!(text, "\n{}", text::command::run_sheet());
    for step in &plan.steps {
        let time = step
            .minutes
            .map_or(text::command::until_done().into(), |m| {
                text::command::min(format_args!("{m:.0}"))
            });
        let arms = if step.arms.is_empty() {
            String::new()
        } else {
            format!(" [{}]", step.arms.join(", "))
        };
        let _ = writeln!(
            text,
            "  {}\n      {}",
            text::command::step_at(
                format_args!("{:>2}", step.number),
                format_args!("{:>3.0}", step.begins_min),
                time,
                &step.title,
                arms
            ),
            step.text
        );
    }
}

fn cost(text: &mut String, plan: &Plan) {
    let cost = &plan.cost;
    if cost.lines.is_empty() {
        return;
    }
    let _ = writeln!(
        text,
        "\n{}",
        text::command::cost(if cost.currency.is_empty() {
            text::command::no_currency_named()
        } else {
            &cost.currency
        })
    );
    for line in &cost.lines {
        let _ = writeln!(text, "  {:<22} {:>8}", line.name, line.money.to_string());
    }
    let _ = writeln!(
        text,
        "  {:<22} {:>8}",
        text::command::together(),
        cost.total.to_string()
    );
    for arm in &cost.arms {
        let _ = writeln!(
            text,
            "  {}",
            text::command::for_each(&arm.arm, arm.money, pieces(arm.pieces), arm.per_piece)
        );
    }
    for step in &cost.steps {
        let _ = writeln!(text, "  {}", step.sentence);
    }
    if !cost.unpriced.is_empty() {
        let _ = writeln!(
            text,
            "  {}",
            text::command::without_a_price(cost.unpriced.join(", "))
        );
    }
    let _ = writeln!(text, "  {}", cost.rounding);
}

fn pieces(count: u32) -> String {
    text::command::pieces(count)
}
