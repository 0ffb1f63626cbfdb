//! A run sheet on one sheet of paper: cautions first, then steps with room to write or with what
//! was noted.

use crate::ReportError;
use crate::text;
use crate::text::run_sheet as say;
use askama::Template;
use dyeing::{Celsius, run_sheet::Step};
use photo::board::Paper;

/// What is printed.
pub struct PrintedSheet<'a> {
    /// Name of the recipe or the run.
    pub title: &'a str,
    /// What is dyed and how, in a line.
    pub about: &'a str,
    /// What else belongs at the top, such as the trial and the day.
    pub more: String,
    /// Cautions for all of it, once each.
    pub cautions: Vec<String>,
    /// The steps.
    pub steps: &'a [Step],
    /// What was noted of each step, in the same order; empty cells leave room to write.
    pub notes: Vec<StepNotes>,
    /// Notes on the whole.
    pub whole: Vec<String>,
    /// The paper.
    pub paper: Paper,
}

/// What was noted of one step, as it is printed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StepNotes {
    /// When it began and stopped, time of day.
    pub times: String,
    /// Temperatures, as in `58 °C`.
    pub warmth: String,
    /// Departures and remarks.
    pub words: String,
}

/// Sizes of letters from which the largest that fits is taken, points.
const SIZES_PT: [f64; 8] = [9.5, 9.0, 8.5, 8.0, 7.5, 7.0, 6.0, 5.0];
/// White at the edge of the sheet, mm.
const EDGE_MM: f64 = 11.0;
/// A point, mm.
const PT_MM: f64 = 25.4 / 72.0;
/// Width of an average letter of a wide face and height of a line, as shares of the letters' size.
const LETTER: [f64; 2] = [0.6, 1.25];

#[derive(Template)]
#[template(path = "run_sheet.html")]
struct SheetPage<'a> {
    sheet: &'a PrintedSheet<'a>,
    rows: Vec<Row<'a>>,
    width: f64,
    height: f64,
    edge: f64,
    size: f64,
}

struct Row<'a> {
    step: &'a Step,
    /// When it is planned to begin and for how long.
    planned: String,
    warmth: String,
    notes: &'a StepNotes,
}

/// The sheet as a page to print: nothing fetched, no scripts, one page of its paper.
///
/// # Errors
/// Only if the page's template can't be filled in, which is a fault of this program.
pub fn run_sheet(sheet: &PrintedSheet<'_>) -> Result<String, ReportError> {
    let [width, height] = sheet.paper.size_mm();
    let none = StepNotes::default();
    let rows = sheet.steps.iter().enumerate().map(|(k, step)| Row {
        planned: planned(step),
        warmth: warmth(step),
        notes: sheet.notes.get(k).unwrap_or(&none),
        step,
    });
    let page = SheetPage {
        rows: rows.collect(),
        size: letters_pt(sheet, width, height),
        edge: EDGE_MM,
        sheet,
        width,
        height,
    };
    Ok(page.render()?)
}

fn planned(step: &Step) -> String {
    // Numbers stay on one line with their units.
    let begins = format!("at\u{a0}{:.0}\u{a0}min", step.begins_min);
    match step.minutes {
        Some(minutes) => text::run_sheet::min(&begins, format_args!("{minutes:.0}")),
        None => text::run_sheet::until_done(&begins),
    }
}

fn warmth(step: &Step) -> String {
    match (step.from_c, step.to_c) {
        (Some(from), Some(to)) if from != to => {
            let [from, to] = [from, to].map(Celsius::local_degrees);
            text::run_sheet::to(
                format_args!("{from:.0}"),
                format_args!("{to:.0}"),
                Celsius::local_scale(),
            )
        }
        (_, Some(at)) => format!("{:.0}\u{a0}{}", at.local_degrees(), Celsius::local_scale()),
        _ => String::new(),
    }
}

/// The largest letters at which everything fits, by an estimate on the safe side.
fn letters_pt(sheet: &PrintedSheet<'_>, width_mm: f64, height_mm: f64) -> f64 {
    let room_mm = height_mm - 2.0 * EDGE_MM;
    let fits = |size: &&f64| height_at(sheet, **size, width_mm - 2.0 * EDGE_MM) < room_mm;
    let smallest = SIZES_PT[SIZES_PT.len() - 1];
    SIZES_PT.iter().find(fits).copied().unwrap_or(smallest)
}

/// How high everything is at a size of letters, mm.
fn height_at(sheet: &PrintedSheet<'_>, size_pt: f64, width_mm: f64) -> f64 {
    let [letter, line] = LETTER.map(|share| share * size_pt * PT_MM);
    let lines = |text: &str, room_mm: f64| {
        let letters = (room_mm / letter).max(1.0);
        (text.chars().count() as f64 / letters).ceil().max(1.0)
    };
    // Cautions stand in two columns.
    let cautions: f64 = sheet
        .cautions
        .iter()
        .map(|text| lines(text, 0.46 * width_mm) * line)
        .sum();
    let steps: f64 = sheet
        .steps
        .iter()
        .enumerate()
        .map(|(k, step)| {
            let text = format!("{} {}", step.title, step.text);
            let said = sheet.notes.get(k).map_or("", |notes| notes.words.as_str());
            let warm = sheet.notes.get(k).map_or("", |notes| notes.warmth.as_str());
            let times = sheet.notes.get(k).map_or("", |notes| notes.times.as_str());
            let most = lines(&text, 0.43 * width_mm)
                .max(lines(said, 0.13 * width_mm))
                .max(lines(warm, 0.055 * width_mm))
                .max(lines(times, 0.095 * width_mm))
                .max(2.0);
            most * line + 1.6
        })
        .sum();
    let whole: f64 = sheet
        .whole
        .iter()
        .map(|text| lines(text, width_mm) * line)
        .sum();
    let head = 22.0 + lines(sheet.about, width_mm) * line;
    head + cautions / 2.0 + line + steps + whole + 12.0
}
