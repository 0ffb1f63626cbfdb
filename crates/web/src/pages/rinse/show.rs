//! `GET /runs/{id}/rinse?clear=0.1`: the balance of a run's dye and what it rests on; with `.json`, the same as data.

use super::draft::Draft;
use super::note::Typed;
use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::form::Problems;
use crate::pages::run::{find, time};
use crate::text;
use crate::text::rinse as say;
use askama::Template;
use axum::Json;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use dyeing::{
    balance::{DyeBalance, StandingWater, Start, WaterEvent, WaterNote, standing},
    check::Level,
};
use locale::Locale;
use report::chart;
use serde::Deserialize;
use serde_json::json;
use store::{Bench, CLEAR, KeptRun};

/// Below which percentage of the dye a rinse is clear.
#[derive(Deserialize)]
pub(crate) struct Wanted {
    clear: Option<String>,
}

/// What the page shows of a run.
pub(crate) struct Shown {
    kept: KeptRun,
    start: Start,
    events: Vec<WaterEvent>,
    balance: Option<DyeBalance>,
    clear: f64,
}

impl Shown {
    pub(crate) fn of(bench: &Bench, id: i64, clear: f64) -> Result<Self, Error> {
        Ok(Self {
            kept: find(bench, id)?,
            start: bench.bath_of_run(id)?,
            events: bench.water_events(id)?,
            balance: bench.balance_of_run(id, clear)?,
            clear,
        })
    }
}

#[derive(Template)]
#[template(path = "rinse/show.html")]
struct ShowPage<'a> {
    assets: &'static Assets,
    token: &'a str,
    problems: &'a Problems,
    kept: &'a KeptRun,
    start: &'a Start,
    balance: Option<&'a DyeBalance>,
    plot: String,
    /// A new reading as it is typed.
    draft: Draft,
    cards: Vec<Card>,
    standards: String,
    /// Number of the standards' note, if there are any.
    calibrated: Option<u32>,
    next_rinse: usize,
    has_bath: bool,
    clear: String,
    events: Vec<String>,
}

/// A reading that counts.
struct Card {
    number: u32,
    name: String,
    words: String,
    corrected: bool,
    open: bool,
    draft: Draft,
}

pub(crate) async fn page(
    State(app): State<App>,
    Path(id): Path<i64>,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Error> {
    let asked = wanted.clear.unwrap_or_default();
    let percent = asked.trim().trim_end_matches('%').trim().replace(',', ".");
    let clear = match percent.as_str() {
        "" => Some(CLEAR),
        text => text.parse().ok().map(|p: f64| p / 100.0),
    };
    let clear = clear.filter(|share| *share > 0.0 && *share < 1.0);
    let shown = app
        .at_bench(move |bench| Shown::of(bench, id, clear.unwrap_or(CLEAR)))
        .await?;
    let mut problems = Problems::default();
    if clear.is_some() {
        let page = render(&app, &shown, &problems, &Typed::default())?;
        return Ok(page.into_response());
    }
    problems.add("clear", text::rinse::give_a_share_of_the_dye());
    let typed = Typed {
        clear: Some(asked),
        ..Typed::default()
    };
    let page = render(&app, &shown, &problems, &typed)?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}

pub(crate) async fn data(
    State(app): State<App>,
    Path(id): Path<i64>,
) -> Result<Json<serde_json::Value>, Error> {
    let shown = app
        .at_bench(move |bench| locale::within(Locale::DATA, || Shown::of(bench, id, CLEAR)))
        .await?;
    Ok(Json(json!({
        "title": shown.kept.title,
        "start": shown.start,
        "events": shown.events,
        "counts": standing(&shown.events),
        "balance": shown.balance,
    })))
}

/// The page with what is wrong and what was typed.
pub(crate) fn render(
    app: &App,
    shown: &Shown,
    problems: &Problems,
    typed: &Typed,
) -> Result<Html<String>, Error> {
    let stand = standing(&shown.events);
    let calibration = stand.iter().find_map(|note| match &note.what {
        WaterNote::Calibration(written) => Some((note.number, written.standards.join("\n"))),
        _ => None,
    });
    let cards = cards(&stand, typed);
    let has_bath = cards.iter().any(|card| card.draft.water == "bath");
    let new = typed.reading.clone().filter(|_| typed.of.is_none());
    let now_s = time::now_s();
    let page = ShowPage {
        assets: Assets::get(),
        token: app.token.as_str(),
        problems,
        kept: &shown.kept,
        start: &shown.start,
        plot: shown
            .balance
            .as_ref()
            .map_or(String::new(), chart::dye_balance),
        balance: shown.balance.as_ref(),
        draft: new.unwrap_or_else(|| Draft {
            water: if has_bath { "rinse" } else { "bath" }.to_owned(),
            ..Draft::default()
        }),
        next_rinse: cards.len() + 1 - usize::from(has_bath),
        has_bath,
        cards,
        standards: typed
            .standards
            .clone()
            .or_else(|| calibration.clone().map(|(_, text)| text))
            .unwrap_or_default(),
        calibrated: calibration.map(|(number, _)| number),
        clear: typed
            .clear
            .clone()
            .unwrap_or_else(|| format!("{}", (1e6 * shown.clear).round() / 1e4)),
        events: shown.events.iter().map(|e| told(e, now_s)).collect(),
    };
    Ok(Html(page.render()?))
}

/// Every reading that counts: the bath first, then rinses as they came.
fn cards(stand: &[StandingWater], typed: &Typed) -> Vec<Card> {
    let of = |note: &StandingWater, name: String, draft: Draft| {
        let open = typed.of == Some(note.number);
        Card {
            number: note.number,
            words: told_draft(&draft),
            name,
            corrected: note.corrected,
            open,
            draft: typed.reading.clone().filter(|_| open).unwrap_or(draft),
        }
    };
    let bath = stand.iter().filter_map(|note| match &note.what {
        WaterNote::Bath(reading) => Some(of(
            note,
            text::rinse::spent_bath().to_owned(),
            Draft::of("bath", reading),
        )),
        _ => None,
    });
    let rinses = stand.iter().filter_map(|note| match &note.what {
        WaterNote::Rinse(reading) => Some((note, Draft::of("rinse", reading))),
        _ => None,
    });
    let rinses = rinses
        .zip(1..)
        .map(|((note, draft), k)| of(note, text::rinse::rinse_numbered(k), draft));
    bath.chain(rinses).collect()
}

/// A reading in words.
fn told_draft(draft: &Draft) -> String {
    let mut words = vec![draft.volume.clone()];
    let mut add = |before: &str, text: &str, after: &str| {
        if !text.is_empty() {
            words.push(format!("{before}{text}{after}"));
        }
    };
    add(text::rinse::looks_like(), &draft.looks_like, "");
    add(text::rinse::absorbance_before(), &draft.absorbance, "");
    add("", &draft.concentration, "");
    add(text::rinse::sample_diluted(), &draft.dilution, "");
    add(text::rinse::strength_give_or_take_2(), &draft.spread, "");
    add(
        text::rinse::volume_give_or_take_2(),
        &draft.volume_spread,
        "",
    );
    words.join(", ")
}

/// A note with everything that is kept of it.
fn told(event: &WaterEvent, now_s: i64) -> String {
    let what = match &event.what {
        WaterNote::Bath(reading) => {
            text::rinse::spent_bath_2(told_draft(&Draft::of("bath", reading)))
        }
        WaterNote::Rinse(reading) => text::rinse::rinse_2(told_draft(&Draft::of("rinse", reading))),
        WaterNote::Calibration(written) => text::rinse::standards(written.standards.join("; ")),
        WaterNote::Withdrawn(_) => text::rinse::taken_back().to_owned(),
    };
    let of = event.of.map_or(String::new(), text::rinse::instead_of_note);
    format!("{}: {what}{of}", time::of_day(event.noted_s, now_s))
}
