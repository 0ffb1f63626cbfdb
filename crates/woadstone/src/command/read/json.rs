//! Readings as JSON.

use photo::{Flag, PhotoReading, Split, SplitPart, board::BoardSeen};
use serde_json::{Value, json};

use super::{Read, Refused, across::Across};
use crate::cli::ReadArgs;

/// What came of one photo.
pub fn of(photo: &Read, args: &ReadArgs) -> Value {
    match &photo.outcome {
        Ok(reading) => read(&photo.name, reading),
        Err(Refused::Photo(refusal)) => {
            refused(&photo.name, args, refusal.code.as_str(), &refusal.message)
        }
        Err(Refused::File(sentence)) => refused(&photo.name, args, "not_opened", sentence),
    }
}

/// Photo `i` of many with its differences to later photos.
pub fn with_across(mut photo: Value, i: usize, many: &[Read], across: &[Across]) -> Value {
    let later: Vec<Value> = across
        .iter()
        .filter(|d| d.from == i)
        .map(|d| {
            json!({
                "id": d.difference.a,
                "to": many[d.to].name,
                "de00": d.difference.de00,
                "low": d.difference.low,
                "high": d.difference.high,
            })
        })
        .collect();
    photo["across"] = later.into();
    photo
}

pub(super) fn flags_json(flags: &[Flag]) -> Value {
    flags
        .iter()
        .map(|f| json!({"code": f.code.as_str(), "message": f.message}))
        .collect()
}

fn read(name: &str, r: &PhotoReading) -> Value {
    let readings: Vec<Value> = r
        .readings
        .iter()
        .map(|a| {
            json!({
                "id": a.id,
                "lab": a.lab.map(|l| l.to_array()),
                "cov": a.cov,
                "parts": {
                    "pixels": a.parts.pixels,
                    "correction": a.parts.correction,
                    "light": a.parts.light,
                    "photo_to_photo": a.parts.photo_to_photo,
                },
                "pixels": a.pixels,
                "split": a.split.as_ref().map(|split| split_json(&a.id, split)),
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
        "joint": r.joint,
    })
}

fn split_json(id: &str, split: &Split) -> Value {
    let part = |name: &str, part: &SplitPart| {
        json!({
            "id": format!("{id}/{name}"),
            "lab": part.lab.to_array(),
            "cov": part.cov,
            "share": part.share,
            "pixels": part.pixels,
        })
    };
    json!({"pale": part("pale", &split.pale), "deep": part("deep", &split.deep)})
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

fn refused(name: &str, args: &ReadArgs, code: &str, message: &str) -> Value {
    json!({
        "photo": name,
        "width": null,
        "height": null,
        "refused": {"code": code, "message": message},
        "flags": [],
        "chart": null,
        "view": args.view.to_string(),
        "board": null,
        "readings": [],
        "differences": [],
        "joint": [],
    })
}
