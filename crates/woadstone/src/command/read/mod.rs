//! `woadstone read PHOTO...`.

mod across;
mod grey;
mod json;
mod photos;
mod text;
mod workers;

use std::path::{Path, PathBuf};

use photo::{Area, ChartReference, PhotoReading, Refusal, Request};
use serde_json::Value;

use crate::{
    cli::ReadArgs,
    command::file,
    outcome::{Outcome, Stop, print, print_json},
};

/// A photo's name and what came of reading it.
struct Read {
    name: String,
    outcome: Result<PhotoReading, Refused>,
}

/// Why a photo was not read.
enum Refused {
    /// The photo can't be used.
    Photo(Refusal),
    /// It or its list of areas can't be opened.
    File(String),
}

/// Reads the given areas of photographs, those of whole folders too.
pub fn run(args: &ReadArgs) -> Outcome {
    let photos = photos::listed(&args.photos)?;
    if let Some(card) = args.grey_card {
        return grey::run(args, &photos, card);
    }
    let request = request(args)?;
    let mut refused = Vec::new();
    let mut many = Vec::new();
    let is_alone = photos.len() == 1;
    let read = |path: &PathBuf| Read {
        name: path.display().to_string(),
        outcome: one(path, args, &request),
    };
    workers::in_order(&photos, args.jobs.into(), read, |read| -> Outcome {
        if let Err(why) = &read.outcome {
            let sentence = match why {
                Refused::Photo(refusal) => format!("{}: {refusal}", read.name),
                Refused::File(sentence) => sentence.clone(),
            };
            refused.push(sentence);
        }
        if !args.json {
            print(&text::of(&read))?;
        }
        many.push(read);
        Ok(())
    })?;
    finish(args, &many, is_alone)?;
    refusals(&refused, photos.len())
}

/// Prints what is told at the end: everything as JSON, differences across photos as text.
fn finish(args: &ReadArgs, many: &[Read], is_alone: bool) -> Outcome {
    let across = across::differences(many);
    match many {
        [only] if args.json && is_alone => match &only.outcome {
            // A file that can't be opened has no photo to tell of.
            Err(Refused::File(_)) => Ok(()),
            _ => print_json(&json::of(only, args)),
        },
        _ if args.json => {
            let photos: Vec<Value> = many
                .iter()
                .enumerate()
                .map(|(i, read)| json::with_across(json::of(read, args), i, many, &across))
                .collect();
            print_json(&photos)
        }
        _ => print(&text::across(many, &across)),
    }
}

/// The exit says that some photos were refused, and which.
fn refusals(refused: &[String], count: usize) -> Outcome {
    match refused {
        [] => Ok(()),
        [only] if count == 1 => Err(Stop::refused(only)),
        some => Err(Stop::refused(format!(
            "{}\n{}",
            crate::text::command::photos_were_not_read(some.len(), count),
            some.join("\n")
        ))),
    }
}

fn one(path: &Path, args: &ReadArgs, request: &Request) -> Result<PhotoReading, Refused> {
    let opened = |stop: Stop| match stop {
        Stop::Refused(sentence) => Refused::File(sentence),
        Stop::Fault(error) => Refused::File(format!("{}: {error:#}", path.display())),
    };
    let mut request = request.clone();
    if args.areas.is_none()
        && let Some(beside) = photos::areas_beside(path)
    {
        request.areas = areas(&beside).map_err(opened)?;
    }
    let bytes = file(path).map_err(opened)?;
    photo::read(&bytes, &request).map_err(Refused::Photo)
}

fn request(args: &ReadArgs) -> Result<Request, Stop> {
    let areas = match &args.areas {
        None => Vec::new(),
        Some(path) => areas(path)?,
    };
    let chart = match &args.chart {
        None => ChartReference::published(),
        Some(path) => {
            let named =
                |e: &dyn std::fmt::Display| Stop::refused(format!("{}: {e}", path.display()));
            let bytes = file(path)?;
            let text = colour::table::text(&bytes).map_err(|e| named(&e))?;
            ChartReference::from_text(&text).map_err(|e| named(&e))?
        }
    };
    Ok(Request {
        areas,
        corners: args.chart_corners,
        chart,
        ground: args
            .ground
            .iter()
            .map(|outline| outline.0.clone())
            .collect(),
        view: args.view,
        ..Request::default()
    })
}

/// The areas that a file lists.
pub fn areas(path: &Path) -> Result<Vec<Area>, Stop> {
    serde_json::from_slice(&file(path)?).map_err(|e| {
        Stop::refused(crate::text::command::is_not_a_list_of_areas_like(
            path.display(),
            &e,
        ))
    })
}
