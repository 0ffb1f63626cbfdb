//! `woadstone publish TRIAL -o report.html`.

use crate::text;
use std::path::{Path, PathBuf};

use report::{Published, PublishedPhoto};
use store::Bench;
use trial::Results;

use crate::{
    cli::PublishArgs,
    command::{now, open},
    home,
    outcome::{Outcome, Stop, print},
};

/// The longest side of a photo in a report, pixels.
const PHOTO_PX: u32 = 1400;

/// Writes the report of a trial of the person's bench.
pub fn run(home: Option<PathBuf>, args: &PublishArgs) -> Outcome {
    let home = home::own(home)?;
    let bench = open(&home)?;
    write(&bench, &args.trial, &args.output)?;
    print(&format!(
        "{}\n",
        text::command::wrote_2(args.output.display())
    ))
}

/// Writes the report of `slug` to `output`.
pub fn write(bench: &Bench, slug: &str, output: &Path) -> Outcome {
    let results = results(bench, slug)?;
    let mut photos = Vec::new();
    for photo in &results.photos {
        let bytes = bench.photo_bytes(&photo.hash).map_err(Stop::refused)?;
        photos.push(PublishedPhoto {
            stage: photo.stage,
            name: photo.name.clone(),
            jpeg: photo::preview(&bytes, PHOTO_PX).map_err(Stop::refused)?,
        });
    }
    let html = report::publish(&Published {
        results: &results,
        photos,
        made_at: &now(),
    })?;
    std::fs::write(output, html)
        .map_err(|e| Stop::refused(text::command::cant_be_written(output.display(), &e)))
}

/// All that was found out about a trial of the bench.
pub fn results(bench: &Bench, slug: &str) -> Result<Results, Stop> {
    let results = bench.results(slug).map_err(Stop::refused)?;
    results.ok_or_else(|| unknown(bench, slug))
}

/// Says that there is no such trial, and which there are.
pub fn unknown(bench: &Bench, slug: &str) -> Stop {
    let known: Vec<String> = bench
        .trials()
        .map(|trials| trials.into_iter().map(|t| t.slug).take(12).collect())
        .unwrap_or_default();
    let known = if known.is_empty() {
        text::command::there_is_no_trial_on_it_yet().to_owned()
    } else {
        text::command::its_trials(known.join(", "))
    };
    Stop::refused(text::command::there_is_no_trial_on_this_bench(slug, &known))
}
