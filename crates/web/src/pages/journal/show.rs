//! `GET /journal` and `GET /trials/{slug}/journal`: every change in words, newest first.

use crate::app::App;
use crate::assets::Assets;
use crate::error::Error;
use crate::text::journal as say;
use askama::Template;
use axum::extract::{Path, Query, State};
use axum::response::Html;
use serde::Deserialize;
use store::{Entry, Place, RevisedThing, Seen, SeenRevision};
use trial::Trial;

/// Entries on a page.
const MOST: u32 = 200;

#[derive(Template)]
#[template(path = "journal/show.html")]
struct JournalPage<'a> {
    assets: &'static Assets,
    /// The trial it is about; none for the journal of the bench.
    trial: Option<&'a Trial>,
    days: Vec<Day>,
    /// The place of the last entry shown, if there may be older ones.
    older: Option<Place>,
    first: bool,
}

/// The entries of a day.
struct Day {
    day: String,
    entries: Vec<Entry>,
}

/// Where the page begins.
#[derive(Deserialize)]
pub(crate) struct From {
    /// Only entries before that place.
    before: Option<String>,
}

impl From {
    fn place(&self) -> Result<Place, Error> {
        let place = self.before.as_deref().map(str::parse).transpose();
        let place = place.map_err(|_| Error::Malformed(say::there_is_no_such_place().to_owned()));
        Ok(place?.unwrap_or(Place::NEWEST))
    }
}

pub(crate) async fn page(
    State(app): State<App>,
    Query(from): Query<From>,
) -> Result<Html<String>, Error> {
    let before = from.place()?;
    let entries = app
        .at_bench(move |bench| Ok(bench.journal(None, before, MOST)?))
        .await?;
    show(None, entries, before == Place::NEWEST)
}

pub(crate) async fn of_trial(
    State(app): State<App>,
    Path(slug): Path<String>,
    Query(from): Query<From>,
) -> Result<Html<String>, Error> {
    let before = from.place()?;
    let (trial, entries) = app
        .at_bench(move |bench| {
            let trial = crate::pages::trial::find(bench, &slug)?;
            let entries = bench.journal(Some(trial.id), before, MOST)?;
            Ok((trial, entries))
        })
        .await?;
    show(Some(&trial), entries, before == Place::NEWEST)
}

fn show(trial: Option<&Trial>, entries: Vec<Entry>, first: bool) -> Result<Html<String>, Error> {
    let full = entries.len() == MOST as usize;
    let older = entries.last().filter(|_| full).map(|entry| entry.place);
    let mut days: Vec<Day> = Vec::new();
    for entry in entries {
        let day = report::words::day(&entry.at);
        match days.last_mut().filter(|last| last.day == day) {
            Some(last) => last.entries.push(entry),
            None => days.push(Day {
                day,
                entries: vec![entry],
            }),
        }
    }
    let page = JournalPage {
        assets: Assets::get(),
        trial,
        days,
        older,
        first,
    };
    Ok(Html(page.render()?))
}

/// The time of day of an RFC 3339 time in UTC, to the minute.
fn time(at: &str) -> String {
    locale::time_at(at).unwrap_or_default()
}

/// Where the thing of an entry is shown, and the words of the link to it.
fn link(entry: &Entry) -> Option<(String, &'static str)> {
    Some(match entry.see.as_ref()? {
        Seen::Photo(id) => {
            let (slug, _) = entry.trial.as_ref()?;
            (format!("/trials/{slug}/photos/{id}"), say::see_the_photo())
        }
        Seen::Plan(slug) => (format!("/plans/{slug}"), say::see_the_plan()),
        Seen::Recipe(slug) => (format!("/recipes/{slug}"), say::see_the_recipe()),
        Seen::Material(id) => (format!("/materials/{id}"), say::see_the_material()),
        Seen::Run(id) => (format!("/runs/{id}"), say::see_the_run()),
        Seen::Revision(revision) => (address(revision), say::see_the_revision()),
    })
}

/// Where a revision is shown.
fn address(revision: &SeenRevision) -> String {
    let place = match revision.of {
        RevisedThing::Plan => "plans",
        RevisedThing::Recipe => "recipes",
    };
    let (slug, number) = (&revision.slug, revision.number);
    format!("/{place}/{slug}?revision={number}")
}
