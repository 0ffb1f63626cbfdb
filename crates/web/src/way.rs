//! The way through a trial, shown on every page that is part of one.
//!
//! Pages don't know of it: their frame leaves a place open, and [`show`] fills it by the
//! address that was asked for.

use crate::app::App;
use crate::error::Error;
use crate::rewritten;
use crate::text;
use askama::Template;
use axum::body::Body;
use axum::extract::{Request, State};
use axum::middleware::Next;
use axum::response::Response;
use store::{Bench, PartOfTrial, TrialWay};
use trial::Trial;
use trial::way::{PLACES, Place, Progress, State as Far, Step};

/// What a page's frame has where the way goes.
const OPEN: &str = "<!--way-->";

#[derive(Template)]
#[template(path = "_way.html")]
struct Way {
    title: Option<String>,
    stops: Vec<Stop>,
    next: Option<(String, String)>,
}

struct Stop {
    name: &'static str,
    /// For the style sheet.
    class: &'static str,
    /// The state in words.
    state: &'static str,
    said: String,
    address: Option<String>,
    here: bool,
}

/// Fills in the way where a page has left it open.
pub(crate) async fn show(State(app): State<App>, request: Request, next: Next) -> Response {
    let path = request.uri().path().to_owned();
    let query = request.uri().query().unwrap_or_default().to_owned();
    let response = next.run(request).await;
    let (head, bytes) = match rewritten::taken(response).await {
        Ok(page) => page,
        Err(other) => return other,
    };
    let html = String::from_utf8_lossy(&bytes);
    let Some((before, after)) = html.split_once(OPEN) else {
        return Response::from_parts(head, Body::from(bytes));
    };
    let way = match app.at_bench(move |bench| of(bench, &path, &query)).await {
        Ok(way) => way,
        // The page itself is there; it goes without.
        Err(error) => {
            tracing::error!(?error, "the way of a trial could not be shown");
            String::new()
        }
    };
    rewritten::with(head, [before, &way, after].concat())
}

/// The way for the page at that path; empty where it is part of no trial. Of the query the plan or
/// the trial counts that a recipe is to be written for.
fn of(bench: &mut Bench, path: &str, query: &str) -> Result<String, Error> {
    let mut parts = path.split('/').skip(1);
    let (kind, name, more) = (parts.next(), parts.next(), parts.next());
    let (trial, here) = match (kind, name) {
        (Some("ask"), _) | (Some("trials"), Some("new")) => return before(Place::Ask),
        (Some("trials"), Some(slug)) => (Some(slug.to_owned()), of_page(more)),
        (Some("plans"), Some(slug)) => match bench.trial_of(PartOfTrial::Plan(slug))? {
            Some(trial) => (Some(trial), Some(Place::Plan)),
            None => return before(Place::Plan),
        },
        (Some("recipes"), Some("new")) => match asked_for(query) {
            ("trial", slug) => (Some(slug.to_owned()), Some(Place::Baths)),
            ("plan", slug) => match bench.trial_of(PartOfTrial::Plan(slug))? {
                Some(trial) => (Some(trial), Some(Place::Baths)),
                None => return before(Place::Baths),
            },
            _ => (None, None),
        },
        (Some("recipes"), Some(slug)) => (
            bench.trial_of(PartOfTrial::Recipe(slug))?,
            Some(Place::Baths),
        ),
        (Some("runs"), Some(id)) => {
            let id = id.parse().unwrap_or_default();
            (bench.trial_of(PartOfTrial::Run(id))?, Some(Place::Run))
        }
        _ => (None, None),
    };
    let Some(trial) = trial.map(|slug| bench.trial(&slug)).transpose()?.flatten() else {
        return Ok(String::new());
    };
    let way = bench.way_of_trial(&trial)?;
    let steps = way.progress.way();
    let links = Links::of(&trial, way);
    let next = steps.iter().find(|step| step.state == Far::Next);
    let next = next.map(|step| (links.to(step.place), step.said.clone()));
    let stops = steps.iter();
    let way = Way {
        stops: stops
            .map(|step| Stop::of(step, Some(links.to(step.place)), here))
            .collect(),
        // Pages below a trial's address say its title themselves.
        title: (kind != Some("trials")).then_some(trial.title),
        next,
    };
    Ok(way.render()?)
}

/// Kind and slug of what a recipe is to be written for; slugs are never escaped.
fn asked_for(query: &str) -> (&str, &str) {
    let fields = query.split('&').filter_map(|field| field.split_once('='));
    let mut wanted = fields.filter(|(name, _)| ["plan", "trial"].contains(name));
    wanted.next().unwrap_or_default()
}

/// The way of a trial that isn't there yet.
fn before(here: Place) -> Result<String, Error> {
    let steps = Progress::default().way();
    let stops = PLACES.iter().zip(&steps).map(|(place, step)| {
        let (state, said) = match place.cmp(&here) {
            std::cmp::Ordering::Less => (Far::Done, String::new()),
            std::cmp::Ordering::Equal => (Far::Next, String::new()),
            std::cmp::Ordering::Greater => (Far::Later, String::new()),
        };
        let step = Step {
            state,
            said,
            ..step.clone()
        };
        Stop::of(&step, None, Some(here))
    });
    let way = Way {
        title: None,
        stops: stops.collect(),
        next: None,
    };
    Ok(way.render()?)
}

/// The place that a page of a trial belongs to, by the third part of its path.
fn of_page(part: Option<&str>) -> Option<Place> {
    match part? {
        "photos" | "elsewhere" | "board" | "tags" | "eyes" => Some(Place::Look),
        "boards" | "packing" | "blind" => Some(Place::Plan),
        "compare" => Some(Place::Decide),
        _ => None,
    }
}

impl Stop {
    fn of(step: &Step, address: Option<String>, here: Option<Place>) -> Self {
        let (class, state) = match step.state {
            Far::Done => ("done", "done"),
            Far::Next => ("next", "next"),
            Far::Later => ("later", "later"),
            Far::LeftOut => ("without", text::way::left_out()),
        };
        Self {
            name: match step.place {
                Place::Ask => text::way::ask(),
                Place::Plan => text::way::plan(),
                Place::Baths => text::way::baths(),
                Place::Run => text::way::run(),
                Place::Look => text::way::look(),
                Place::Decide => text::way::decide(),
                Place::Publish => text::way::publish(),
            },
            class,
            state,
            said: step.said.clone(),
            address,
            here: here == Some(step.place),
        }
    }
}

/// Where each place of a trial is.
struct Links {
    trial: String,
    plan: Option<String>,
    recipes: Vec<String>,
    run: Option<i64>,
    /// Whether photos are there whose pieces are not marked.
    unmarked: bool,
}

impl Links {
    fn of(trial: &Trial, way: TrialWay) -> Self {
        let TrialWay {
            progress,
            plan,
            recipes,
            runs,
        } = way;
        let run = match &runs[..] {
            [only] => Some(only.id),
            _ => runs.iter().find(|run| !run.finished).map(|run| run.id),
        };
        Self {
            trial: format!("/trials/{}", trial.slug),
            plan,
            recipes,
            run,
            unmarked: progress.unmarked > 0,
        }
    }

    fn to(&self, place: Place) -> String {
        let Self { trial, .. } = self;
        match (place, &self.plan, &self.recipes[..], self.run) {
            (Place::Plan, Some(plan), ..) => format!("/plans/{plan}"),
            (Place::Plan, None, ..) => format!("{trial}#arms"),
            (Place::Baths, _, [only], _) => format!("/recipes/{only}"),
            (Place::Baths, _, [], _) => {
                let slug = trial.trim_start_matches("/trials/");
                format!("/recipes/new?trial={slug}")
            }
            (Place::Run, .., Some(run)) => format!("/runs/{run}"),
            (Place::Run, _, [only], None) => format!("/recipes/{only}"),
            (Place::Baths | Place::Run, ..) => format!("{trial}#baths"),
            (Place::Ask, ..) => trial.clone(),
            (Place::Look, ..) if self.unmarked => format!("{trial}/photos"),
            (Place::Look, ..) => format!("{trial}/photos/new"),
            (Place::Decide, ..) => format!("{trial}#verdict"),
            (Place::Publish, ..) => format!("{trial}/report"),
        }
    }
}
