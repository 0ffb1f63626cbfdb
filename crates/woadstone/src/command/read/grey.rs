//! `woadstone read PHOTO --grey-card`: differences without a chart.

use crate::text;
use std::{fmt::Write, path::PathBuf};

use photo::{GreyComparison, GreyRequest, Point, compare_by_grey};
use serde_json::{Value, json};

use super::{areas, json::flags_json};
use crate::{
    cli::ReadArgs,
    command::file,
    outcome::{Outcome, Stop, print, print_json},
};

/// Compares the areas of one photo by the grey card at `card`.
pub(super) fn run(args: &ReadArgs, photos: &[PathBuf], card: [Point; 4]) -> Outcome {
    let [path] = photos else {
        return Err(Stop::refused(text::command::a_grey_card_is_marked()));
    };
    let name = path.display().to_string();
    let request = GreyRequest {
        card,
        reflectance: args.card_reflectance,
        areas: args.areas.as_deref().map_or(Ok(Vec::new()), areas)?,
        view: args.view,
    };
    let told = compare_by_grey(&file(path)?, &request)
        .map_err(|refusal| Stop::refused(format!("{name}: {refusal}")))?;
    if args.json {
        print_json(&as_json(&name, args, &told))
    } else {
        print(&as_text(&name, &told))
    }
}

fn as_json(name: &str, args: &ReadArgs, told: &GreyComparison) -> Value {
    let differences: Vec<Value> = told
        .differences
        .iter()
        .map(|d| json!({"a": d.a, "b": d.b, "de00": d.de00, "low": d.low, "high": d.high}))
        .collect();
    let areas: Vec<Value> = told
        .area_flags
        .iter()
        .map(|(id, flags)| json!({"id": id, "flags": flags_json(flags)}))
        .collect();
    json!({
        "photo": name,
        "width": told.width,
        "height": told.height,
        "refused": null,
        "flags": flags_json(&told.flags),
        "chart": null,
        "note": text::command::a_grey_card_tells_how_pieces(),
        "view": args.view.to_string(),
        "areas": areas,
        "readings": [],
        "differences": differences,
    })
}

fn as_text(name: &str, told: &GreyComparison) -> String {
    let mut text = format!(
        "{name}: {} x {} px\n{}\n",
        told.width,
        told.height,
        text::command::a_grey_card_tells_how_pieces()
    );
    for flag in &told.flags {
        let _ = writeln!(text, "{}", text::command::note_3(&flag.message));
    }
    for (id, flags) in &told.area_flags {
        for flag in flags {
            let _ = writeln!(text, "  {id}: {}", flag.message);
        }
    }
    for d in &told.differences {
        let _ = writeln!(
            text,
            "  {}",
            text::command::to_to(
                &d.a,
                &d.b,
                format_args!("{:.1}", d.de00),
                format_args!("{:.1}", d.low),
                format_args!("{:.1}", d.high)
            )
        );
    }
    text
}
