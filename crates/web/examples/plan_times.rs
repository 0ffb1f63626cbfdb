//! Prints how long a plan's page takes the first time, later, and after the program was started anew.
//!
//! Run it with `cargo run --release -p web --example plan_times`. Wall time of whole requests inside the
//! program, one after another, each plan of the documentation with seeds of its own, on a bench of its own.

use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use http_body_util::BodyExt;
use std::error::Error;
use std::path::Path;
use std::sync::{Arc, Mutex};
use std::time::Instant;
use store::Bench;
use tower::ServiceExt;
use trial::plan::Plan;

const SEEDS: u32 = 30;
const PORT: u16 = 4817;
const PLANS: [(&str, &str); 3] = [
    (
        "two arms",
        include_str!("../../../docs/plans/two-arms.toml"),
    ),
    (
        "after-treatments by temperature",
        include_str!("../../../docs/plans/after-treatments-by-temperature.toml"),
    ),
    (
        "a shade ladder",
        include_str!("../../../docs/plans/shade-ladder.toml"),
    ),
];

#[tokio::main]
async fn main() -> Result<(), Box<dyn Error>> {
    let home = tempfile::tempdir()?;
    println!("| plan | first, ms | later, ms | first / later | after a restart, ms |");
    println!("|---|---|---|---|---|");
    for (name, text) in PLANS {
        let mut bench = Bench::open(home.path())?;
        let mut slugs = Vec::new();
        for seed in 0..SEEDS {
            let mut plan = Plan::from_toml(text)?;
            plan.seed = seed;
            slugs.push(bench.keep_plan(&plan, "Timed", "2030-01-01T00:00:00Z")?);
        }
        drop(bench);
        let app = router(home.path())?;
        let first_ms = median_ms(&app, &slugs).await?;
        let later_ms = median_ms(&app, &slugs).await?;
        let restarted_ms = median_ms(&router(home.path())?, &slugs).await?;
        println!(
            "| {name} | {first_ms:.1} | {later_ms:.1} | {:.1} | {restarted_ms:.1} |",
            first_ms / later_ms
        );
    }
    Ok(())
}

fn router(home: &Path) -> Result<axum::Router, Box<dyn Error>> {
    let bench = Arc::new(Mutex::new(Bench::open(home)?));
    let demo = Arc::new(|_: &mut Bench| Err("none".to_owned()));
    Ok(web::router(bench, demo, PORT))
}

/// The median time of the plans' pages, ms.
async fn median_ms(app: &axum::Router, slugs: &[String]) -> Result<f64, Box<dyn Error>> {
    let mut times_ms = Vec::new();
    for slug in slugs {
        let request = Request::get(format!("/plans/{slug}"))
            .header(header::HOST, format!("127.0.0.1:{PORT}"))
            .body(Body::empty())?;
        let start = Instant::now();
        let response = app.clone().oneshot(request).await?;
        if response.status() != StatusCode::OK {
            return Err(format!("{slug} answered {}", response.status()).into());
        }
        response.into_body().collect().await?;
        times_ms.push(1e3 * start.elapsed().as_secs_f64());
    }
    times_ms.sort_by(f64::total_cmp);
    Ok(times_ms[times_ms.len() / 2])
}
