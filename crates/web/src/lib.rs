//! The app in a browser: pages that render here and read without scripts.
//!
//! In: addresses, forms, uploads, who may ask. Out: every rule about trials, photos and
//! verdicts; a page shows what `trial`, `store`, `photo` and `report` say.
//! The caller binds the listener, and binds it to loopback; a second one, for paired phones, is
//! begun and ended from a page. Start with [`serve`] and [`Config`];
//! [`router`] is the same app without a socket.

mod app;
mod areas;
mod assets;
mod error;
mod form;
mod guard;
mod pages;
mod phone;
mod previews;
mod progress;
mod promises;
mod rewritten;
mod routes;
mod text;
mod tiles;
mod token;
mod typed;
mod upload;
mod way;

pub use app::{Demo, SharedBench};
pub use routes::router;
pub use upload::MOST_BYTES;

/// What the app needs to run.
pub struct Config {
    /// Where it listens; on a loopback address.
    pub listener: tokio::net::TcpListener,
    /// The bench it shows and fills.
    pub bench: SharedBench,
    /// Lays the demo trial on the bench and gives its slug; or says why it can't.
    pub demo: Demo,
}

/// Serves the app until it is interrupted (Ctrl-C).
///
/// Photos that were still waiting when the program last ended are read first, in the background, and
/// what plans promise that nobody has worked out yet is.
///
/// # Errors
/// Only if the listener fails.
pub async fn serve(config: Config) -> std::io::Result<()> {
    let port = config.listener.local_addr()?.port();
    let app = app::App::new(config.bench, config.demo, port);
    app.start_reading();
    promises::catch_up(&app).await;
    phone::start(&app).await;
    let progress = std::sync::Arc::clone(&app.progress);
    axum::serve(config.listener, routes::of(app))
        .with_graceful_shutdown(async move {
            if let Err(error) = tokio::signal::ctrl_c().await {
                tracing::warn!(%error, "no interrupt will be noticed");
                std::future::pending::<()>().await;
            }
            progress.end();
        })
        .await
}
