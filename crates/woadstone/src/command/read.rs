//! `woadstone read PHOTO`.

use std::{fmt::Write, path::Path};

use photo::{Area, ChartReference, Flag, PhotoReading, Refusal, Request, board::BoardSeen};
use serde_json::{Value, json};

use crate::{
    cli::ReadArgs,
    command::file,
    outcome::{Outcome, Stop, print, print_json},
};

/// Reads the given areas of a photograph.
pub fn run(args: &ReadArgs) -> Outcome {
    let request = request(args)?;
    let name = args.photo.display().to_string();
    let bytes = file(&args.photo)?;
    match photo::read(&bytes, &request) {
        Ok(reading) if args.json => print_json(&as_json(&name, &reading)),
        Ok(reading) => print(&as_text(&name, &reading)),
        Err(refusal) => {
            if args.json {
                print_json(&refused_json(&name, args, &refusal))?;
            }
            Err(Stop::refused(format!("{name}: {refusal}")))
        }
    }
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
        view: args.view,
        ..Request::default()
    })
}

/// The areas that a file lists.
pub fn areas(path: &Path) -> Result<Vec<Area>, Stop> {
    serde_json::from_slice(&file(path)?).map_err(|e| {
        Stop::refused(format!(
            "{} is not a list of areas like [{{\"id\":\"P1\",\"polygon\":[[x,y],[x,y],[x,y]]}}]: {e}",
            path.display()
        ))
    })
}

fn flags_json(flags: &[Flag]) -> Value {
    flags
        .iter()
        .map(|f| json!({"code": f.code.as_str(), "message": f.message}))
        .collect()
}

fn as_json(name: &str, r: &PhotoReading) -> Value {
    let readings: Vec<Value> = r
        .readings
        .iter()
        .map(|a| {
            json!({
                "id": a.id,
                "lab": a.lab.map(|l| l.to_array()),
                "cov": a.cov,
                "pixels": a.pixels,
                "flags": flags_json(&a.flags),
            })
        })
        .collect();
    let differences: Vec<Value> = r
        .differences
        .iter()
        .map(|d| json!({"a": d.a, "b": d.b, "de00": d.de00, "low": d.low, "high": d.high}))
        .collect();
    json!({
        "photo": name,
        "width": r.width,
        "height": r.height,
        "refused": null,
        "flags": flags_json(&r.flags),
        "chart": {
            "corners": r.chart.corners,
            "model": r.chart.model,
            "loo_de00_median": r.chart.loo_de00_median,
            "loo_de00_p95": r.chart.loo_de00_p95,
        },
        "view": r.view.to_string(),
        "board": r.board.as_ref().map(board_json),
        "readings": readings,
        "differences": differences,
    })
}

fn board_json(board: &BoardSeen) -> Value {
    let windows: Vec<Value> = board
        .windows
        .iter()
        .map(|w| json!({"number": w.number, "tag": w.tag, "polygon": w.polygon}))
        .collect();
    json!({
        "windows": windows,
        "paper": board.paper.name(),
        "version": board.version,
        "codes": board.codes,
        "corners": board.corners,
        "trial": board.trial,
        "stage": board.stage,
    })
}

fn refused_json(name: &str, args: &ReadArgs, refusal: &Refusal) -> Value {
    json!({
        "photo": name,
        "width": null,
        "height": null,
        "refused": {"code": refusal.code.as_str(), "message": refusal.message},
        "flags": [],
        "chart": null,
        "view": args.view.to_string(),
        "board": null,
        "readings": [],
        "differences": [],
    })
}

fn as_text(name: &str, r: &PhotoReading) -> String {
    let mut text = format!(
        "{name}: {} x {} px, {}\nchart read with {}; left out in turn, its patches are missed by {:.2} (median) and {:.2} (95 of 100), CIEDE2000\n",
        r.width, r.height, r.view, r.chart.model, r.chart.loo_de00_median, r.chart.loo_de00_p95
    );
    if let Some(board) = &r.board {
        let _ = writeln!(
            text,
            "board of {} windows on {}, {} of its 4 corner codes read",
            board.kind.windows(),
            board.paper.name(),
            board.codes
        );
        for window in board.windows.iter().filter(|w| w.polygon.is_none()) {
            let _ = match window.tag {
                None => writeln!(text, "  window {} is empty", window.number),
                Some(tag) => writeln!(
                    text,
                    "  window {} has the tag {tag} and nothing that differs from the paper",
                    window.number
                ),
            };
        }
    }
    for flag in &r.flags {
        let _ = writeln!(text, "note: {}", flag.message);
    }
    for a in &r.readings {
        match a.lab {
            Some(lab) => {
                let sd = |k: usize| a.cov[k][k].max(0.0).sqrt();
                let _ = writeln!(
                    text,
                    "  {:<12} L* {:6.2} ±{:.2}   a* {:6.2} ±{:.2}   b* {:6.2} ±{:.2}   ({} px)",
                    a.id,
                    lab.l,
                    1.96 * sd(0),
                    lab.a,
                    1.96 * sd(1),
                    lab.b,
                    1.96 * sd(2),
                    a.pixels
                );
            }
            None => {
                let _ = writeln!(text, "  {:<12} not read", a.id);
            }
        }
        for flag in &a.flags {
            let _ = writeln!(text, "               {}", flag.message);
        }
    }
    for d in &r.differences {
        let _ = writeln!(
            text,
            "  {} to {}: {:.2} ({:.2} to {:.2})",
            d.a, d.b, d.de00, d.low, d.high
        );
    }
    text
}
