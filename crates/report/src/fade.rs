//! Fade curves laid out for a page or a report.

use crate::text;
use crate::text::fade as say;
use crate::{chart, words};
use askama::Template;
use trial::Trial;
use trial::fade::{ArmFade, FadeCurve, Fades, FoundShape};

/// How to read the plots, in a sentence or two.
pub fn how_to_read() -> &'static str {
    text::fade::marks_are_means_of_the_arms_pieces()
}

/// The fade of one arm.
pub struct FadeCard {
    /// Name of the arm.
    pub arm: String,
    /// Its curve, SVG; empty where there is none.
    pub plot: String,
    /// What it means, in a few sentences.
    pub plain: String,
    /// The figures with what they rest on.
    pub technical: String,
    /// Last round looked at and the strength left then.
    pub left: String,
    /// What it levels off at.
    pub floor: String,
    /// Which shape fits best.
    pub shape: &'static str,
    /// When each grade is passed: the grade and the words.
    pub passes: Vec<String>,
}

/// The fades of all arms.
pub struct FadeSection {
    /// Grades of the columns, such as `4`.
    pub grades: Vec<String>,
    /// A card for each arm.
    pub cards: Vec<FadeCard>,
    /// How to read them.
    pub how_to_read: &'static str,
    /// Their figures, as a table in HTML.
    pub table: String,
}

#[derive(Template)]
#[template(path = "_fades.html")]
struct Table<'a> {
    grades: &'a [String],
    cards: &'a [FadeCard],
}

/// The fades laid out; none where no arm has a curve.
pub fn section(trial: &Trial, fades: Option<&Fades>) -> Option<FadeSection> {
    let fades = fades?;
    if fades
        .arms
        .iter()
        .all(|a| a.strength.is_none() && a.change.is_none())
    {
        return None;
    }
    let bottom = chart::lowest_share(fades);
    let grades: Vec<String> = fades
        .arms
        .iter()
        .find(|arm| !arm.passes.is_empty())
        .map(|arm| arm.passes.iter().map(|p| p.grade.clone()).collect())
        .unwrap_or_default();
    let arms = fades.arms.iter();
    let cards: Vec<FadeCard> = arms.map(|arm| card(trial, arm, bottom)).collect();
    let table = Table {
        grades: &grades,
        cards: &cards,
    };
    Some(FadeSection {
        // A string takes everything that is written to it.
        table: table.render().unwrap_or_default(),
        how_to_read: how_to_read(),
        grades,
        cards,
    })
}

fn card(trial: &Trial, fade: &ArmFade, bottom: f64) -> FadeCard {
    let index = trial.arms.iter().position(|arm| arm.name == fade.arm);
    let curve = fade.strength.as_ref();
    FadeCard {
        arm: fade.arm.clone(),
        plot: chart::strength_by_round(fade, index.unwrap_or(0), bottom),
        plain: under_its_name(&fade.arm, &fade.plain),
        technical: fade.technical.clone(),
        left: curve.map_or_else(not_told, |curve| {
            let range = range(curve.at_last.value, curve.at_last.interval);
            format!("{range} {}", words::stage(curve.last_round))
        }),
        floor: curve.map_or_else(not_told, floor),
        shape: curve.map_or(text::fade::not_told(), shape),
        passes: fade.passes.iter().map(words::passed_at).collect(),
    }
}

/// The sentence as it reads below a heading that names the arm.
fn under_its_name(arm: &str, plain: &str) -> String {
    let after = plain
        .strip_prefix(arm)
        .and_then(|rest| rest.strip_prefix(": "));
    after.map_or_else(|| plain.to_owned(), locale::capital)
}

fn not_told() -> String {
    text::fade::not_told().to_owned()
}

fn floor(curve: &FadeCurve) -> String {
    match curve.shape {
        FoundShape::LevelsOff | FoundShape::AtOnce => range(curve.floor, curve.floor_interval),
        FoundShape::NoFloor => text::fade::not_told_by_these_looks().to_owned(),
        FoundShape::Flat | FoundShape::Rising => text::fade::no_loss_shown().to_owned(),
    }
}

fn range(value: f64, interval: Option<[f64; 2]>) -> String {
    match interval {
        Some([low, high]) => text::fade::to(
            words::percent(value),
            format_args!("{:.0}", 100.0 * low),
            words::percent(high),
        ),
        None => text::fade::one_piece(words::percent(value)),
    }
}

fn shape(curve: &FadeCurve) -> &'static str {
    match curve.shapes.map(|shapes| shapes.best) {
        Some("no_change") => text::fade::no_change(),
        Some("line") => text::fade::a_straight_line(),
        Some(_) => text::fade::the_curve(),
        None => text::fade::too_few_looks(),
    }
}
