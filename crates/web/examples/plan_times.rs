//! Prints how long a plan's page takes the first time, later, and after the program was started anew, and
//! when what the plan can show is there.
//!
//! Run it with `cargo run --release -p web --example plan_times`. Wall time of whole requests inside the
//! program, one after another, plans of several kinds with seeds of their own, on a bench of its own.

#[path = "../../trial/benches/kinds/mod.rs"]
mod kinds;

use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use http_body_util::BodyExt;
use std::error::Error;
use std::path::Path;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};
use store::Bench;
use tower::ServiceExt;

const SEEDS: u32 = 30;
const PORT: u16 = 4817;

#[tokio::main]
async fn main() -> Result<(), Box<dyn Error>> {
    let home = tempfile::tempdir()?;
    println!(
        "| plan | first, ms | most | figures there, ms | most | later, ms | after a restart, ms |"
    );
    println!("|---|---|---|---|---|---|---|");
    for (name, plan) in kinds::plans() {
        let mut bench = Bench::open(home.path())?;
        let mut pages = Vec::new();
        for seed in 0..SEEDS {
            let mut plan = plan.clone();
            plan.seed = seed;
            let slug = bench.keep_plan(&plan, "Timed", "2030-01-01T00:00:00Z")?;
            pages.push(format!("/plans/{slug}"));
        }
        drop(bench);
        let app = router(home.path())?;
        let (mut first, mut there) = (Vec::new(), Vec::new());
        for page in &pages {
            let start = Instant::now();
            get(&app, page).await?;
            first.push(ms(start));
            while get(&app, &format!("{page}/power")).await? == StatusCode::ACCEPTED {
                tokio::time::sleep(Duration::from_millis(1)).await;
            }
            there.push(ms(start));
        }
        let later = times(&app, &pages).await?;
        let restarted = times(&router(home.path())?, &pages).await?;
        let ([first, first_most], [there, there_most]) = (told(first), told(there));
        let ([later, _], [restarted, _]) = (told(later), told(restarted));
        println!(
            "| {name} | {first:.1} | {first_most:.1} | {there:.1} | {there_most:.1} | {later:.1} | {restarted:.1} |"
        );
    }
    Ok(())
}

fn router(home: &Path) -> Result<axum::Router, Box<dyn Error>> {
    let bench = Arc::new(Mutex::new(Bench::open(home)?));
    let demo = Arc::new(|_: &mut Bench| Err("none".to_owned()));
    Ok(web::router(bench, demo, PORT))
}

async fn times(app: &axum::Router, pages: &[String]) -> Result<Vec<f64>, Box<dyn Error>> {
    let mut times_ms = Vec::new();
    for page in pages {
        let start = Instant::now();
        get(app, page).await?;
        times_ms.push(ms(start));
    }
    Ok(times_ms)
}

async fn get(app: &axum::Router, page: &str) -> Result<StatusCode, Box<dyn Error>> {
    let request = Request::get(page)
        .header(header::HOST, format!("127.0.0.1:{PORT}"))
        .body(Body::empty())?;
    let response = app.clone().oneshot(request).await?;
    let status = response.status();
    if !status.is_success() {
        return Err(format!("{page} answered {status}").into());
    }
    response.into_body().collect().await?;
    Ok(status)
}

/// The median and the most of some times, ms.
fn told(mut times_ms: Vec<f64>) -> [f64; 2] {
    times_ms.sort_by(f64::total_cmp);
    [times_ms[times_ms.len() / 2], times_ms[times_ms.len() - 1]]
}

fn ms(since: Instant) -> f64 {
    1e3 * since.elapsed().as_secs_f64()
}
