//! What every page has at hand.

use crate::error::Error;
use crate::phone::Phones;
use crate::previews::Previews;
use crate::progress::Progress;
use crate::promises::Promises;
use crate::tiles::TileStore;
use crate::token::Token;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;
use store::Bench;

/// A bench that pages take turns at.
pub type SharedBench = Arc<Mutex<Bench>>;

/// Lays the demo trial on a bench and gives its slug, or says why it can't.
pub type Demo = Arc<dyn Fn(&mut Bench) -> Result<String, String> + Send + Sync>;

/// How long a page waits for a photo to be read before it says that it is being read.
const PATIENCE: Duration = Duration::from_secs(20);

/// The app's state; a handle that is cheap to clone.
#[derive(Clone)]
pub(crate) struct App {
    bench: SharedBench,
    pub(crate) demo: Demo,
    pub(crate) token: Arc<Token>,
    pub(crate) port: u16,
    pub(crate) previews: Arc<Previews>,
    pub(crate) tiles: Arc<TileStore>,
    pub(crate) progress: Arc<Progress>,
    pub(crate) phones: Arc<Phones>,
    pub(crate) promises: Arc<Promises>,
}

impl App {
    pub(crate) fn new(bench: SharedBench, demo: Demo, port: u16) -> Self {
        Self {
            bench,
            demo,
            token: Arc::new(Token::random()),
            port,
            previews: Arc::default(),
            tiles: Arc::default(),
            progress: Arc::default(),
            phones: Arc::default(),
            promises: Arc::default(),
        }
    }

    /// Does work at the bench on a thread that may block.
    pub(crate) async fn at_bench<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Bench) -> Result<T, Error> + Send + 'static,
    ) -> Result<T, Error> {
        let own = self.clone();
        blocking(move || own.at_bench_here(work)).await?
    }

    /// Does work at the bench on this thread, which therefore has to be one that may block.
    pub(crate) fn at_bench_here<T>(
        &self,
        work: impl FnOnce(&mut Bench) -> Result<T, Error>,
    ) -> Result<T, Error> {
        // A page that died at the bench left the database whole: each change is one transaction.
        let mut bench = self.bench.lock().unwrap_or_else(PoisonError::into_inner);
        work(&mut bench)
    }

    /// Reads every waiting photo, oldest first. The bench is free for pages while one is read.
    ///
    /// Only one reads at a time; whoever comes later finds what is left.
    pub(crate) async fn read_waiting(self) {
        let progress = Arc::clone(&self.progress);
        let _turn = progress.reader.lock().await;
        loop {
            match self.read_one().await {
                Ok(true) => {}
                Ok(false) => return,
                Err(error) => {
                    tracing::error!(?error, "a waiting photo could not be read");
                    return;
                }
            }
        }
    }

    /// Reads the photo that has waited longest; false if none waits.
    async fn read_one(&self) -> Result<bool, Error> {
        let Some(waiting) = self.at_bench(|bench| Ok(bench.next_waiting()?)).await? else {
            return Ok(false);
        };
        self.progress.set_reading(Some(waiting.photo().id));
        let read = blocking(move || {
            let outcome = waiting.read(&photo::read);
            (waiting, outcome)
        })
        .await;
        let recorded = match read {
            // One that was taken out or marked anew meanwhile is let go by the bench.
            Ok((waiting, outcome)) => {
                self.at_bench(move |bench| Ok(bench.record(&waiting, outcome, &now())?))
                    .await
            }
            Err(error) => Err(error),
        };
        self.progress.set_reading(None);
        recorded.map(|_| true)
    }

    /// Starts the reading of waiting photos in the background.
    pub(crate) fn start_reading(&self) {
        tokio::spawn(self.clone().read_waiting());
    }

    /// Starts the reading of waiting photos and waits for it, but not for ever.
    pub(crate) async fn read_waiting_a_while(&self) {
        let reading = tokio::spawn(self.clone().read_waiting());
        // A time-out leaves the reading at work; the page then says that it is being read.
        let _ = tokio::time::timeout(PATIENCE, reading).await;
    }
}

/// Runs work that blocks (database, decoding) off the threads that serve.
pub(crate) async fn blocking<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Error> {
    tokio::task::spawn_blocking(work)
        .await
        .map_err(Error::broken)
}

/// The time now, RFC 3339, to the second.
pub(crate) fn now() -> String {
    jiff::Timestamp::now()
        .strftime("%Y-%m-%dT%H:%M:%SZ")
        .to_string()
}
