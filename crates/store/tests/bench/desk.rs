//! A bench in a folder of its own, and stand-ins for readers of photos.

use colour::{Lab, View};
use photo::{
    AreaReading, ChartFit, Flag, FlagCode, LightGrid, Parts, PatchPlace, PhotoMap, PhotoReading,
    Refusal, RefusalCode, Request, Spot, Trouble,
};
use rusqlite::Connection;
use std::path::{Path, PathBuf};
use store::{Bench, NewPhoto};
use tempfile::TempDir;
use trial::{NewArm, NewPiece, NewTrial, PhotoArea, PhotoId, PieceId, Role, Trial};

pub const NOW: &str = "2030-04-01T09:00:00Z";
pub const LATER: &str = "2030-04-02T09:00:00Z";
pub const CORNERS: [[f64; 2]; 4] = [[0.1, 0.2], [600.3, 0.2], [600.3, 400.7], [0.1, 400.7]];

pub struct Desk {
    pub bench: Bench,
    pub home: TempDir,
}

impl Desk {
    pub fn new() -> Self {
        let home = tempfile::tempdir().unwrap();
        let bench = Bench::open(home.path()).unwrap();
        Self { bench, home }
    }

    /// The program stops here and starts again.
    pub fn restart(self) -> Self {
        let Self { bench, home } = self;
        drop(bench);
        let bench = Bench::open(home.path()).unwrap();
        Self { bench, home }
    }

    pub fn trial(&mut self) -> Trial {
        let id = self.bench.create_trial(&rinses(), NOW).unwrap();
        self.bench.trial_by_id(id).unwrap().unwrap()
    }

    /// Keeps a recipe and begins a run of it; the recipe's slug and the run.
    pub fn run_of(&mut self, recipe: &str, trial: Option<&str>, title: &str) -> (String, i64) {
        let slug = self.bench.keep_recipe(recipe, "written", NOW).unwrap();
        let run = self.bench.begin_run(&slug, 1, trial, title, NOW);
        (slug, run.unwrap())
    }

    /// A photo that no reader could read; stand-ins don't look at it.
    pub fn photo(&mut self, trial: &Trial, stage: u32, content: &str) -> PhotoId {
        self.bench
            .add_photo(new_photo(trial, stage, content), NOW)
            .unwrap()
    }

    pub fn marked_photo(&mut self, trial: &Trial, stage: u32, content: &str) -> PhotoId {
        let photo = self.photo(trial, stage, content);
        self.mark(photo, trial.pieces.iter().map(|piece| piece.id));
        photo
    }

    pub fn mark(&mut self, photo: PhotoId, pieces: impl IntoIterator<Item = PieceId>) {
        let areas = pieces.into_iter().map(area).collect();
        self.bench.mark_areas(photo, areas, NOW).unwrap();
    }

    /// A look past the bench into its database.
    pub fn database(&self) -> Connection {
        Connection::open(self.home.path().join("woadstone.sqlite")).unwrap()
    }

    /// Every file of the vault.
    pub fn vault(&self) -> Vec<PathBuf> {
        files(&self.home.path().join("vault"))
    }
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files(&path));
        } else {
            found.push(path);
        }
    }
    found
}

pub fn new_photo<'a>(trial: &Trial, stage: u32, content: &'a str) -> NewPhoto<'a> {
    NewPhoto {
        trial: trial.id,
        stage,
        name: "pieces.jpg",
        bytes: content.as_bytes(),
        width: 640,
        height: 480,
        corners: Some(CORNERS),
        chart: None,
        notices: &[],
    }
}

pub fn area(piece: PieceId) -> PhotoArea {
    PhotoArea {
        piece,
        polygon: vec![[0.1, 0.2], [30.3, 0.7], [15.0, 1.0 / 3.0]],
    }
}

/// Two arms of two test pieces, one with a keeper.
pub fn rinses() -> NewTrial {
    let piece = |code: &str, role, load: Option<&str>| NewPiece {
        code: code.into(),
        role,
        load: load.map(Into::into),
    };
    NewTrial {
        title: "One rinse or two".into(),
        question: "Does a second rinse keep the red?".into(),
        margin_de00: 1.1,
        rounds: 5,
        invented: true,
        method: "Wool, 5 g each.".into(),
        arms: vec![
            NewArm {
                name: "one rinse".into(),
                treatment: "Rinsed once.".into(),
                pieces: vec![
                    piece("A1", Role::Test, Some("bath 1")),
                    piece("A2", Role::Test, None),
                    piece("AK", Role::Keeper, None),
                ],
            },
            NewArm {
                name: "two rinses".into(),
                treatment: String::new(),
                pieces: vec![
                    piece("B1", Role::Test, Some("bath 1")),
                    piece("B2", Role::Test, Some("bath 2")),
                ],
            },
        ],
    }
}

/// A map with one thing of each kind.
pub fn map() -> PhotoMap {
    PhotoMap {
        patches: vec![PatchPlace {
            corners: CORNERS,
            is_used: true,
        }],
        light: LightGrid {
            columns: 2,
            rows: 1,
            values: vec![0.9, 1.1],
        },
        spots: vec![Spot {
            area: "1".into(),
            trouble: Trouble::Shining,
            corners: [[1.0, 2.0], [3.0, 4.0]],
            share: 0.25,
        }],
        board: None,
    }
}

/// Reads every area of every photo as the same colour of that lightness.
pub fn sees(l: f64) -> impl Fn(&[u8], &Request) -> Result<PhotoReading, Refusal> {
    move |_, request| {
        Ok(PhotoReading {
            width: 640,
            height: 480,
            board: None,
            map: map(),
            flags: vec![flag(FlagCode::ProfileMissing)],
            chart: ChartFit {
                corners: request.corners.unwrap_or(CORNERS),
                model: "stand-in".into(),
                loo_de00_median: 0.1 + 0.2,
                loo_de00_p95: 2.0,
                misses: vec![Some([0.5, -0.25, 1.0 / 3.0]), None],
            },
            view: View::D65_10,
            readings: request
                .areas
                .iter()
                .map(|area| AreaReading {
                    id: area.id.clone(),
                    lab: Some(Lab::new(l, 1.0 / 3.0, -0.7)),
                    cov: [[0.1, 0.2, 0.3], [0.2, 1e-17, 0.0], [0.3, 0.0, 1.0 / 7.0]],
                    parts: Parts::default(),
                    split: None,
                    pixels: 1234,
                    flags: vec![flag(FlagCode::Clipped)],
                })
                .collect(),
            differences: Vec::new(),
            joint: vec![vec![[[0.0; 3]; 3]; request.areas.len()]; request.areas.len()],
        })
    }
}

pub fn refuses(_: &[u8], _: &Request) -> Result<PhotoReading, Refusal> {
    Err(Refusal {
        code: RefusalCode::ChartMissing,
        message: "No chart was found.".into(),
    })
}

pub fn flag(code: FlagCode) -> Flag {
    Flag {
        code,
        message: format!("A sentence on {}.", code.as_str()),
    }
}
