//! `GET /trials/{slug}/photos/{id}`: the photo, where the pieces lie on it, what was read.

use super::layers::Layers;
use crate::app::App;
use crate::areas;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::progress::Status;
use crate::text;
use crate::text::photo as say;
use askama::Template;
use axum::extract::{Path, RawQuery, State};
use axum::response::Html;
use photo::{PhotoMap, RefusalCode};
use report::parts::{self, PartTable};
use report::table::{self, ReadingRow};
use report::words;
use store::{Bench, PastOutcome, SaidStage, StoreError, Thing};
use trial::{Note, PartAtStage, Photo, PhotoState, Reading, Trial, parts_by_stage};

#[derive(Template)]
#[template(path = "photo/show.html")]
pub(crate) struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    trial: &'a Trial,
    photo: &'a Photo,
    when: String,
    /// Corners of the chart as SVG points.
    chart: Option<String>,
    fields: Vec<AreaField>,
    problems: &'a Problems,
    readings: Vec<ReadingRow>,
    parts: Option<PartTable>,
    pale_shows: &'static str,
    refusal: Option<&'a str>,
    flags: &'a [Note],
    notices: Vec<String>,
    fit: Option<String>,
    /// How to take a refused photo again, step by step.
    retake: Vec<&'static str>,
    layers: Option<Layers>,
    earlier: Vec<Earlier>,
    status: Status,
    /// Whether this very file was sent once more.
    already: bool,
    /// Whether it was moved to another stage a moment ago.
    moved: bool,
    stage: StageForm,
    binned: bool,
    waiting: bool,
    /// Size of letters on the photo, in its own pixels.
    letters: f64,
}

/// What is known of a photo beside where its pieces lie.
pub(crate) struct Seen {
    readings: Vec<Reading>,
    parts: Vec<PartAtStage>,
    notices: Vec<String>,
    /// The name of the person's own chart on it.
    chart: Option<String>,
    map: Option<PhotoMap>,
    outcomes: Vec<PastOutcome>,
    stages: Vec<SaidStage>,
    binned: bool,
}

impl Seen {
    pub(crate) fn of(bench: &Bench, photo: &Photo) -> Result<Self, StoreError> {
        let mut readings = bench.current_readings(photo.trial)?;
        // The start stays for the parts, whose change is against it.
        let of_photo = |r: &Reading| r.photo == Some(photo.id);
        readings.retain(|r| of_photo(r) || (r.stage == 0 && photo.stage > 0));
        let mut parts = parts_by_stage(&readings);
        parts.retain(|at| at.stage == photo.stage);
        readings.retain(of_photo);
        let chart = photo.chart.map(|id| bench.chart(id)).transpose()?.flatten();
        Ok(Self {
            readings,
            parts,
            notices: bench.notices(photo.id)?,
            chart: chart.map(|kept| kept.name),
            map: bench.photo_map(photo.id)?,
            outcomes: bench.outcomes(photo.id)?,
            stages: bench.said_stages(photo.id)?,
            binned: bench.is_binned(Thing::Photo(photo.id))?,
        })
    }
}

/// The form that says anew after how many rounds the photo was taken.
pub(crate) struct StageForm {
    pub(crate) typed: String,
    pub(crate) problem: Option<String>,
    /// What was said of it in turn, in words, where it was corrected.
    said: Vec<(String, String)>,
}

/// What came of the photo another time.
struct Earlier {
    at: String,
    /// What came of it, in a sentence.
    what: String,
    counts: bool,
    readings: Vec<ReadingRow>,
}

struct AreaField {
    id: i64,
    code: String,
    about: String,
    /// Corners as typed or as stored.
    text: String,
    /// Where its name goes, if it has a good area.
    at: Option<[f64; 2]>,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path((slug, id)): Path<(String, i64)>,
    RawQuery(query): RawQuery,
) -> Result<Html<String>, Error> {
    let (trial, photo, seen) = app
        .at_bench(move |bench| {
            let (trial, photo) = super::find(bench, &slug, id)?;
            let seen = Seen::of(bench, &photo)?;
            Ok((trial, photo, seen))
        })
        .await?;
    let problems = Problems::default();
    let page = ShowPage {
        already: query.as_deref() == Some("already"),
        moved: query.as_deref() == Some("moved"),
        ..ShowPage::of(&app, &trial, &photo, seen, stored(&photo), &problems)
    };
    Ok(Html(page.render()?))
}

/// The text of a piece's area as it is stored, by the piece's number.
fn stored(photo: &Photo) -> impl Fn(i64) -> String {
    |piece| {
        let areas = photo.areas.iter();
        let of_piece = areas.filter(|area| area.piece.0 == piece);
        of_piece.map(|area| areas::write(&area.polygon)).collect()
    }
}

impl<'a> ShowPage<'a> {
    /// The page with what is wrong with a stage.
    pub(crate) fn with_stage(
        app: &'a App,
        trial: &'a Trial,
        photo: &'a Photo,
        seen: Seen,
        (typed, problem): (String, String),
        none: &'a Problems,
    ) -> Self {
        let page = Self::of(app, trial, photo, seen, stored(photo), none);
        let stage = StageForm {
            typed,
            problem: Some(problem),
            ..page.stage
        };
        Self { stage, ..page }
    }

    /// `typed` gives the text of a piece's area by the piece's number.
    pub(crate) fn of(
        app: &'a App,
        trial: &'a Trial,
        photo: &'a Photo,
        seen: Seen,
        typed: impl Fn(i64) -> String,
        problems: &'a Problems,
    ) -> Self {
        let (refusal, flags, fit) = match &photo.state {
            PhotoState::Refused { message, .. } => (Some(message.as_str()), &[][..], None),
            PhotoState::Read {
                flags,
                loo_de00_median,
                model,
            } => (
                None,
                flags.as_slice(),
                Some(text::photo::corrected_by_a_patch_left_out(
                    seen.chart.as_ref().map_or_else(
                        || text::photo::the_chart().to_owned(),
                        text::photo::the_chart_2,
                    ),
                    model,
                    words::number(*loo_de00_median),
                )),
            ),
            PhotoState::Unmarked | PhotoState::Waiting | PhotoState::TakenOut => {
                (None, &[][..], None)
            }
        };
        Self {
            assets: Assets::get(),
            token: app.token.as_str(),
            trial,
            photo,
            when: words::stage_heading(photo.stage),
            chart: photo.corners.as_ref().map(|c| areas::write(c)),
            fields: fields(trial, photo, typed),
            problems,
            readings: table::readings(trial, &seen.readings),
            parts: parts::by_stage(trial, &seen.parts),
            pale_shows: parts::pale_shows(),
            refusal,
            notices: seen.notices,
            flags,
            fit,
            retake: retake(&photo.state),
            layers: seen.map.map(|map| Layers::of(trial, photo, &map)),
            earlier: earlier(trial, seen.outcomes),
            status: app.progress.of(photo),
            already: false,
            moved: false,
            stage: StageForm {
                typed: photo.stage.to_string(),
                problem: None,
                said: said(&seen.stages),
            },
            binned: seen.binned,
            waiting: photo.state == PhotoState::Waiting,
            letters: f64::from(photo.width.max(photo.height)) / 50.0,
        }
    }
}

/// When a photo was said to be of which stage; empty where that was said once.
fn said(stages: &[SaidStage]) -> Vec<(String, String)> {
    let said = |said: &SaidStage| (words::moment(&said.at), words::stage(said.stage));
    match stages {
        [_] => Vec::new(),
        stages => stages.iter().map(said).collect(),
    }
}

fn retake(state: &PhotoState) -> Vec<&'static str> {
    match state {
        PhotoState::Refused { code, .. } => {
            RefusalCode::named(code).map_or_else(Vec::new, RefusalCode::retake)
        }
        _ => Vec::new(),
    }
}

/// What came of the photo the times before the newest one.
fn earlier(trial: &Trial, outcomes: Vec<PastOutcome>) -> Vec<Earlier> {
    outcomes
        .into_iter()
        .skip(1)
        .map(|outcome| Earlier {
            what: match &outcome.state {
                PhotoState::Refused { message, .. } => text::photo::refused(message),
                _ => text::photo::read(words::pieces(outcome.readings.len())),
            },
            at: words::moment(&outcome.at),
            counts: outcome.counts,
            readings: table::readings(trial, &outcome.readings),
        })
        .collect()
}

fn fields(trial: &Trial, photo: &Photo, typed: impl Fn(i64) -> String) -> Vec<AreaField> {
    trial
        .pieces
        .iter()
        .map(|piece| {
            let text = typed(piece.id.0);
            let arm = trial.arm(piece.arm).map_or("", |a| a.name.as_str());
            AreaField {
                id: piece.id.0,
                code: piece.code.clone(),
                about: format!("{arm}, {}", words::role(piece.role)),
                at: areas::parse(&text, photo.width, photo.height)
                    .ok()
                    .map(|corners| areas::middle(&corners)),
                text,
            }
        })
        .collect()
}
