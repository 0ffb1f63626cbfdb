//! `POST /trials/{slug}/photos`: takes photos in, each for itself; of one that can't be read it says
//! why and keeps nothing.

use super::new::{NewPage, Typed};
use super::taken::{Refused, Said, Taken, oversized};
use crate::app::{App, now};
use crate::error::{Error, wants_json};
use crate::form::Problems;
use crate::pages::chart;
use crate::upload::{self, Upload};
use askama::Template;
use axum::Json;
use axum::extract::{Path, Request, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use photo::FlagCode;
use trial::{ChartId, PhotoId, Trial, on_board};

/// What became of a photo that can be read.
struct Kept {
    photo: PhotoId,
    /// Whether the very same file was here before.
    already: bool,
    /// Whether its pieces were told by a board's tags, so that it is read at once.
    marked: bool,
}

/// What came of a form's files, by their names.
#[derive(Default)]
struct Done {
    kept: Vec<(String, Kept)>,
    refused: Vec<(String, Refused)>,
}

pub(crate) async fn act(
    State(app): State<App>,
    Path(slug): Path<String>,
    headers: HeaderMap,
    request: Request,
) -> Result<Response, Error> {
    let json = wants_json(&headers);
    let (trial, charts) = app
        .at_bench(move |bench| {
            let trial = crate::pages::trial::find(bench, &slug)?;
            Ok((trial, bench.charts()?))
        })
        .await?;
    let mut typed = Typed::default();
    let mut done = Done::default();
    match Upload::receive(&app, &headers, request, &upload::PHOTO).await {
        Ok(form) => {
            typed = Typed::of(&form);
            match Said::of(&form, charts) {
                Ok(said) => done = take(&app, &trial, &said, form).await?,
                Err(refused) => done.refused.push((String::new(), refused)),
            }
        }
        Err(Error::TooLarge(message)) => {
            let refused = Refused::too_large(message);
            done.refused.push((String::new(), refused));
        }
        Err(error) => return Err(error),
    }
    if done.kept.iter().any(|(_, kept)| kept.marked) {
        // A script goes on to a page that tells when they are read.
        match json {
            true => app.start_reading(),
            false => app.read_waiting_a_while().await,
        }
    }
    if json {
        return Ok(done.told(&trial));
    }
    if done.refused.is_empty() {
        return Ok(Redirect::to(&done.next_page(&trial)).into_response());
    }
    again(&app, &trial, &typed, done).await
}

/// Looks at each file and keeps those that can be read.
async fn take(app: &App, trial: &Trial, said: &Said, form: Upload) -> Result<Done, Error> {
    let mut done = Done {
        refused: oversized(&form).collect(),
        ..Done::default()
    };
    for (name, bytes) in form.files {
        match said.look(name.clone(), bytes).await? {
            Ok(taken) => done.kept.push((name, keep(app, trial, said, taken).await?)),
            Err(refused) => done.refused.push((name, refused)),
        }
    }
    app.progress.changed();
    Ok(done)
}

async fn keep(app: &App, trial: &Trial, said: &Said, taken: Taken) -> Result<Kept, Error> {
    let told = taken
        .survey
        .board
        .as_ref()
        .map(|board| on_board(trial, taken.stage, board))
        .unwrap_or_default();
    let mut notices = told.notices;
    let unread = taken.survey.flags.iter();
    let unread = unread.filter(|flag| flag.code == FlagCode::BoardUnread);
    notices.extend(unread.map(|flag| flag.message.clone()));
    let (id, areas) = (trial.id, told.areas);
    let (chart, has_corners) = (said.chart, said.has_corners());
    app.at_bench(move |bench| {
        let new = store::NewPhoto {
            trial: id,
            stage: taken.stage,
            name: &taken.name,
            bytes: &taken.bytes,
            width: taken.survey.width,
            height: taken.survey.height,
            corners: Some(taken.survey.corners),
            chart,
            notices: &notices,
        };
        // With corners it may be another try at a photo whose chart was found wrongly.
        if !has_corners && let Some(photo) = bench.same_photo(&new)? {
            return Ok(Kept {
                photo,
                already: true,
                marked: false,
            });
        }
        let photo = bench.add_photo(new, &now())?;
        let marked = !areas.is_empty();
        if marked {
            bench.mark_areas(photo, areas, &now())?;
        }
        Ok(Kept {
            photo,
            already: false,
            marked,
        })
    })
    .await
}

impl Kept {
    fn url(&self, trial: &Trial) -> String {
        let already = if self.already { "?already" } else { "" };
        format!("/trials/{}/photos/{}{already}", trial.slug, self.photo)
    }
}

impl Done {
    /// The photo, or the list where there are several.
    fn next_page(&self, trial: &Trial) -> String {
        match self.kept.as_slice() {
            [(_, one)] => one.url(trial),
            _ => format!("/trials/{}/photos", trial.slug),
        }
    }

    /// The answer to a script: of one file by itself, of several as a list.
    fn told(&self, trial: &Trial) -> Response {
        let kept =
            |kept: &Kept| serde_json::json!({ "url": kept.url(trial), "already": kept.already });
        let refused = |refused: &Refused| {
            let Refused {
                code,
                message,
                retake,
                ..
            } = refused;
            serde_json::json!({ "refused": { "code": code, "message": message, "retake": retake } })
        };
        match (self.kept.as_slice(), self.refused.as_slice()) {
            ([(_, one)], []) => {
                let status = match one.already {
                    true => StatusCode::OK,
                    false => StatusCode::CREATED,
                };
                let place = [(header::LOCATION, one.url(trial))];
                (status, place, Json(kept(one))).into_response()
            }
            ([], [(_, one)]) => (one.status, Json(refused(one))).into_response(),
            _ => {
                let named = |name: &str, mut told: serde_json::Value| {
                    told["name"] = name.into();
                    told
                };
                let all = self.kept.iter().map(|(name, one)| named(name, kept(one)));
                let all = all.chain(self.refused.iter().map(|(n, one)| named(n, refused(one))));
                let photos: Vec<_> = all.collect();
                Json(serde_json::json!({ "photos": photos })).into_response()
            }
        }
    }
}

/// The form once more, with what was typed and what is wrong.
async fn again(app: &App, trial: &Trial, typed: &Typed, done: Done) -> Result<Response, Error> {
    let mut problems = Problems::default();
    let several = done.kept.len() + done.refused.len() > 1;
    for (name, refused) in &done.refused {
        let message = &refused.message;
        problems.add(
            refused.field,
            match several && !name.is_empty() {
                true => format!("{name}: {message}"),
                false => message.clone(),
            },
        );
    }
    let mut retake: Vec<&str> = Vec::new();
    for step in done.refused.iter().flat_map(|(_, refused)| &refused.retake) {
        if !retake.contains(step) {
            retake.push(step);
        }
    }
    let chosen = typed.chart.parse().ok().map(ChartId);
    let charts = app
        .at_bench(move |bench| Ok(chart::choices(bench, chosen)?))
        .await?;
    let page = NewPage {
        retake,
        kept: done.kept.len(),
        ..NewPage::of(app, trial, typed, &charts, &problems)
    };
    let status = done.refused.first().map(|(_, refused)| refused.status);
    let status = status.unwrap_or(StatusCode::UNPROCESSABLE_ENTITY);
    Ok((status, Html(page.render()?)).into_response())
}
