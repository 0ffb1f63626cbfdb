//! The report: one file that reads anywhere, on paper too.

use crate::agreement;
use crate::baths::BathSection;
use crate::eyes::{self, EyeSection};
use crate::fade::{self, FadeSection};
use crate::parts::{self, PartTable};
use crate::staining::{self, StainRow};
use crate::swatch::ArmSwatches;
use crate::table::{ChangeRow, EyeGradeRow, ReadingRow, VerdictRow};
use crate::text;
use crate::text::report as say;
use crate::{ReportError, chart, limits, swatch, table, words};
use askama::Template;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use trial::decide::Decision;
use trial::{Results, Role, Trial};

/// Everything a report is made from.
pub struct Published<'a> {
    /// The trial with all that was found out about it.
    pub results: &'a Results,
    /// Its photos, made small enough to be sent along.
    pub photos: Vec<PublishedPhoto>,
    /// When the report is made, RFC 3339.
    pub made_at: &'a str,
}

/// A photo to be put into a report.
pub struct PublishedPhoto {
    /// Rounds gone through when it was taken.
    pub stage: u32,
    /// Its file name.
    pub name: String,
    /// An upright sRGB JPEG.
    pub jpeg: Vec<u8>,
}

/// Writes the report as one HTML file: pictures inside, no scripts, nothing fetched, a print stylesheet.
///
/// # Errors
/// Only if the page's template can't be filled in, which is a fault of this program.
pub fn publish(published: &Published<'_>) -> Result<String, ReportError> {
    let results = published.results;
    let trial = &results.trial;
    let empty = Decision::default();
    let decision = results.decision.as_ref().unwrap_or(&empty);
    let (latest, earlier) = table::by_recency(table::verdicts(results));
    let page = ReportPage {
        trial,
        margin: words::number(trial.margin_de00),
        arms: arms(trial),
        latest,
        earlier,
        over_rounds: results
            .decision
            .as_ref()
            .map(words::over_rounds)
            .unwrap_or_default(),
        eyes: eyes::section(results).filter(|section| !section.is_silent()),
        about_eyes: eyes::about(),
        about_agreement: agreement::about(),
        changes: table::changes(trial, decision),
        plot: chart::change_by_round(trial, decision),
        fades: fade::section(trial, results.fades.as_ref()),
        stains: staining::rows(&results.stains),
        about_stains: staining::about(),
        stages: swatch::stages(&results.readings)
            .into_iter()
            .map(words::stage_heading)
            .collect(),
        swatches: swatch::by_stage(trial, &results.readings),
        parts: parts::by_stage(trial, &results.parts),
        pale_shows: parts::pale_shows(),
        readings: table::readings(trial, &results.readings),
        eye_grades: table::eye_grades(trial, &results.eye_grades),
        photos: published
            .photos
            .iter()
            .map(|p| Picture {
                when: words::stage_heading(p.stage),
                name: p.name.clone(),
                data: STANDARD.encode(&p.jpeg),
            })
            .collect(),
        baths: BathSection::all(&results.baths),
        limits: limits::of(results),
        entered_on: words::day(&trial.made_at),
        made_on: words::day(published.made_at),
        order_of_days: locale::current().dates.order(),
        style: include_str!("../templates/report.css"),
    };
    Ok(crate::typeset(&page.render()?))
}

#[derive(Template)]
#[template(path = "report.html")]
struct ReportPage<'a> {
    trial: &'a Trial,
    margin: String,
    arms: Vec<ArmRow>,
    latest: Vec<VerdictRow>,
    earlier: Vec<VerdictRow>,
    over_rounds: Vec<String>,
    eyes: Option<EyeSection>,
    about_eyes: &'static str,
    about_agreement: &'static str,
    changes: Vec<ChangeRow>,
    plot: String,
    fades: Option<FadeSection>,
    stains: Vec<StainRow>,
    about_stains: &'static str,
    stages: Vec<String>,
    swatches: Vec<ArmSwatches>,
    parts: Option<PartTable>,
    pale_shows: &'static str,
    readings: Vec<ReadingRow>,
    eye_grades: Vec<EyeGradeRow>,
    photos: Vec<Picture>,
    baths: Vec<BathSection>,
    limits: Vec<String>,
    entered_on: String,
    made_on: String,
    /// How its days are written, where they could be misread.
    order_of_days: Option<&'static str>,
    style: &'static str,
}

struct ArmRow {
    name: String,
    treatment: String,
    test: String,
    others: String,
}

struct Picture {
    when: String,
    name: String,
    data: String,
}

fn arms(trial: &Trial) -> Vec<ArmRow> {
    trial
        .arms
        .iter()
        .map(|arm| {
            let list = |test: bool| {
                trial
                    .pieces_of(arm.id)
                    .filter(|p| (p.role == Role::Test) == test)
                    .map(|p| {
                        let load = p.load.as_ref().map(text::publish::load);
                        let role = (!test).then(|| words::role(p.role).to_owned());
                        let about: Vec<String> = role.into_iter().chain(load).collect();
                        if about.is_empty() {
                            p.code.clone()
                        } else {
                            format!("{} ({})", p.code, about.join(", "))
                        }
                    })
                    .collect::<Vec<_>>()
                    .join(", ")
            };
            ArmRow {
                name: arm.name.clone(),
                treatment: arm.treatment.clone(),
                test: list(true),
                others: list(false),
            }
        })
        .collect()
}
