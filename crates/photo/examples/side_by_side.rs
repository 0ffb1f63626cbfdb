//! Renders pairs of photos and reads them, for a comparison with a solution in
//! another language: `side_by_side FOLDER [PAIRS_PER_DIFFICULTY] [FIRST_SEED]`.
//!
//! Writes `NNN-a.jpg` and `NNN-b.jpg` by seed, and `photos.json`: for each photo
//! the chart's corners, the areas, the true colours and what was read. The photos
//! of a pair show the same pieces by the same camera, laid anew in other light.

mod wild;

use std::{
    fs,
    path::{Path, PathBuf},
    process::ExitCode,
};

use photo::{PhotoReading, Refusal};
use scene::{Rendered, render};
use serde_json::{Value, json};
use wild::{NAMES, pair, request, truth};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let Some(folder) = arguments.first().map(PathBuf::from) else {
        eprintln!("Name the folder that the photos shall be written to.");
        return ExitCode::FAILURE;
    };
    let number = |place: usize, usual: u64| arguments.get(place).map_or(Ok(usual), |a| a.parse());
    let (Ok(pairs), Ok(first)) = (number(1, 20), number(2, 0)) else {
        eprintln!("The count of pairs and the first seed have to be whole numbers.");
        return ExitCode::FAILURE;
    };
    match write(&folder, pairs, first) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("{} cannot be written: {why}", folder.display());
            ExitCode::FAILURE
        }
    }
}

fn write(folder: &Path, pairs: u64, first: u64) -> std::io::Result<()> {
    fs::create_dir_all(folder)?;
    let mut photos = Vec::new();
    for seed in first..first + 3 * pairs {
        for (shot, scene) in ["a", "b"].iter().zip(pair(seed, 2000, 1500)) {
            let rendered = render(&scene);
            let file = format!("{seed:03}-{shot}.jpg");
            fs::write(folder.join(&file), &rendered.jpeg)?;
            let reading = photo::read(&rendered.jpeg, &request(&rendered));
            photos.push(json!({
                "file": file,
                "pair": seed,
                "difficulty": NAMES[(seed % 3) as usize],
                "corners": rendered.truth.chart_corners,
                "refused": reading.as_ref().err().map(|why| why.code.as_str()),
                "model": reading.as_ref().ok().map(|reading| &reading.chart.model),
                "pieces": pieces(&rendered, &reading),
            }));
        }
    }
    fs::write(
        folder.join("photos.json"),
        json!({ "photos": photos }).to_string(),
    )
}

fn pieces(rendered: &Rendered, reading: &Result<PhotoReading, Refusal>) -> Vec<Value> {
    let piece = |piece: &scene::PieceTruth| {
        let read = reading.as_ref().ok();
        let lab = read.and_then(|r| r.reading(&piece.id)?.lab);
        let plain = |lab: colour::Lab| [lab.l, lab.a, lab.b];
        json!({
            "id": piece.id,
            "polygon": piece.polygon,
            "truth": plain(truth(rendered, &piece.id)),
            "woadstone": lab.map(plain),
        })
    };
    rendered.truth.pieces.iter().map(piece).collect()
}
