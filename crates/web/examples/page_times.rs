//! Prints how long pages take on a bench of 10,000 trials and 1,000,000 readings, and what they weigh.
//!
//! Run it with `cargo run --release -p store --example large_bench -- large` and
//! `cargo run --release -p web --example page_times -- large`. Wall time of whole requests inside the
//! program, one after another, each time for another trial; beside it the time on the processor,
//! on average, which hardly depends on what else the machine does (on Linux; 0 elsewhere). Words after
//! the folder name the pages that are asked for: those whose address has one of them.

#[path = "../../trial/benches/kinds/mod.rs"]
mod kinds;

use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use http_body_util::BodyExt;
use std::error::Error;
use std::path::PathBuf;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};
use store::Bench;
use tower::ServiceExt;

const TIMES: usize = 200;
const PORT: u16 = 4817;
const DIED: &str = "A page died at the bench.";

/// Addresses, with `{}` for a trial's number.
const PAGES: [&str; 18] = [
    "/",
    "/trials/trial-{}",
    "/trials/trial-{}/photos/new",
    "/trials/trial-{}/photos/{}0",
    "/trials/trial-{}/elsewhere",
    "/trials/trial-{}/board",
    "/trials/trial-{}/journal",
    "/ask",
    "/recipes",
    "/studio",
    "/journal",
    "/bin",
    "/charts",
    "/setup",
    "/materials",
    "/search?q=trial",
    "/search?q=arm+{}",
    "/search?lab=45.{}+5.{}+12.{}",
];

#[tokio::main]
async fn main() -> Result<(), Box<dyn Error>> {
    let home = std::env::args().nth(1).map(PathBuf::from);
    let home = home.ok_or("Name the folder that the example large_bench has filled.")?;
    let start = Instant::now();
    let bench = Arc::new(Mutex::new(Bench::open(&home)?));
    let own = Arc::clone(&bench);
    let app = web::router(bench, Arc::new(|_| Err("none".to_owned())), PORT);
    get(&app, "/").await?;
    println!(
        "from opening the bench to the first page: {:.0} ms\n",
        ms(start)
    );
    println!("| page | median, ms | 99 %, ms | most, ms | processor, ms | weight, kB |");
    println!("|---|---|---|---|---|---|");
    let named: Vec<String> = std::env::args().skip(2).collect();
    for page in PAGES {
        if !named.is_empty() && !named.iter().any(|word| page.contains(word)) {
            continue;
        }
        let numbers = (0..TIMES).map(|n| n * 37 + 11);
        let paths = numbers.map(|n| page.replace("{}", &n.to_string()));
        row(&app, &page.replace("{}", "N"), &paths.collect::<Vec<_>>()).await?;
    }
    if named.is_empty() || named.iter().any(|word| "/plans".contains(word.as_str())) {
        let plans = plans(&own)?;
        row(&app, "a plan, first view", &plans).await?;
        // Those that were shown without their figures are still being drawn.
        while !own
            .lock()
            .map_err(|_| DIED)?
            .unpromised_plans(1)?
            .plans
            .is_empty()
        {
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        row(&app, "a plan, later", &plans).await?;
    }
    Ok(())
}

/// Asks for each address once and prints what that took.
async fn row(app: &axum::Router, name: &str, paths: &[String]) -> Result<(), Box<dyn Error>> {
    let before_ms = processor_ms();
    let mut times = Vec::new();
    let mut bytes = 0;
    for path in paths {
        let start = Instant::now();
        bytes = bytes.max(get(app, path).await?);
        times.push(ms(start));
    }
    times.sort_by(f64::total_cmp);
    println!(
        "| {name} | {:.1} | {:.1} | {:.1} | {:.1} | {:.0} |",
        times[times.len() / 2],
        times[times.len() * 99 / 100],
        times[times.len() - 1],
        (processor_ms() - before_ms) / times.len() as f64,
        bytes as f64 / 1e3
    );
    Ok(())
}

/// Keeps plans that nobody has looked at, and gives their addresses.
fn plans(bench: &Mutex<Bench>) -> Result<Vec<String>, Box<dyn Error>> {
    let mut bench = bench.lock().map_err(|_| DIED)?;
    let first = bench.plans()?.len();
    let kinds = kinds::plans();
    let plans = (first..first + TIMES).map(|seed| {
        let mut plan = kinds[seed % kinds.len()].1.clone();
        plan.seed = u32::try_from(seed)?;
        let slug = bench.keep_plan(&plan, "Timed", "2030-01-01T00:00:00Z")?;
        Ok(format!("/plans/{slug}"))
    });
    plans.collect()
}

/// The weight of a page, bytes.
async fn get(app: &axum::Router, path: &str) -> Result<usize, Box<dyn Error>> {
    let request = Request::get(path)
        .header(header::HOST, format!("127.0.0.1:{PORT}"))
        .body(Body::empty())?;
    let response = app.clone().oneshot(request).await?;
    if response.status() != StatusCode::OK {
        return Err(format!("{path} answered {}", response.status()).into());
    }
    Ok(response.into_body().collect().await?.to_bytes().len())
}

/// What this program's threads have taken of the processor so far, ms.
fn processor_ms() -> f64 {
    let tasks = std::fs::read_dir("/proc/self/task").into_iter().flatten();
    let taken_ns = tasks.flatten().filter_map(|task| {
        let said = std::fs::read_to_string(task.path().join("schedstat")).ok()?;
        said.split(' ').next()?.parse::<f64>().ok()
    });
    taken_ns.sum::<f64>() / 1e6
}

fn ms(since: Instant) -> f64 {
    1e3 * since.elapsed().as_secs_f64()
}
