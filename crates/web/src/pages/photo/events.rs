//! `GET /trials/{slug}/photos/events`: how far a trial's photos have come, told as it changes.

use crate::app::App;
use crate::error::Error;
use crate::phone::FromPhone;
use crate::progress::{self, Listener, Status};
use crate::text;
use axum::Extension;
use axum::extract::{Path, State};
use axum::response::sse::{Event, KeepAlive, Sse};
use axum::response::{IntoResponse, Response};
use futures_util::stream::{self, Stream};
use std::convert::Infallible;
use std::time::Duration;
use tokio::time::Instant;
use trial::TrialId;

/// How long one answer goes on; the browser then asks anew.
const LONGEST: Duration = Duration::from_secs(15 * 60);
/// Changes that follow each other this fast are told together.
const SETTLE: Duration = Duration::from_millis(100);

/// A page that watches the photos of a trial.
struct Watcher {
    app: App,
    trial: TrialId,
    listener: Listener,
    /// Whether it is on a phone, which may be cut off.
    is_phone: bool,
    until: Instant,
    /// What it was told last; none before the first time.
    told: Option<Vec<Status>>,
}

pub(crate) async fn stream(
    State(app): State<App>,
    Path(slug): Path<String>,
    phone: Option<Extension<FromPhone>>,
) -> Result<Response, Error> {
    let trial = app
        .at_bench(move |bench| crate::pages::trial::find(bench, &slug))
        .await?;
    let listener = app
        .progress
        .listen()
        .ok_or(Error::Busy(text::photo::too_many_pages_watch_photos()))?;
    let watcher = Watcher {
        app,
        trial: trial.id,
        listener,
        is_phone: phone.is_some(),
        until: Instant::now() + LONGEST,
        told: None,
    };
    // A comment now and then, so that a page that has gone is noticed and makes room.
    let alive = KeepAlive::new().interval(Duration::from_secs(10));
    Ok(Sse::new(watcher.events()).keep_alive(alive).into_response())
}

impl Watcher {
    fn events(self) -> impl Stream<Item = Result<Event, Infallible>> {
        stream::unfold(self, |mut watcher| async move {
            let event = watcher.next().await?;
            Some((Ok(event), watcher))
        })
    }

    /// The next thing to tell; none at the end.
    async fn next(&mut self) -> Option<Event> {
        loop {
            if self.told.is_some() {
                self.change().await?;
            }
            self.listener.changes.mark_unchanged();
            let trial = self.trial;
            let looked = self.app.at_bench(move |bench| Ok(bench.photos(trial)?));
            let photos = looked.await.ok()?;
            let all: Vec<Status> = photos.iter().map(|p| self.app.progress.of(p)).collect();
            let before = self.told.replace(all.clone()).unwrap_or_default();
            if before == all && !all.is_empty() {
                continue;
            }
            let changed: Vec<&Status> = all.iter().filter(|s| !before.contains(s)).collect();
            let news = serde_json::json!({
                "done": all.iter().filter(|status| status.done).count(),
                "total": all.len(),
                "sentence": progress::told(&all),
                "photos": changed,
            });
            return Some(Event::default().event("photos").data(news.to_string()));
        }
    }

    /// Waits for a change; none when it is time to end.
    async fn change(&mut self) -> Option<()> {
        tokio::select! {
            changed = self.listener.changes.changed() => changed.ok()?,
            _ = self.listener.ending.wait_for(|ending| *ending) => return None,
            _ = self.listener.cuts.changed(), if self.is_phone => return None,
            () = tokio::time::sleep_until(self.until) => return None,
        }
        tokio::time::sleep(SETTLE).await;
        Some(())
    }
}
