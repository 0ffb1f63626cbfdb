//! Pale and deep parts beside whole pieces. No source: the rule is this project's own.

#![allow(clippy::unwrap_used, reason = "a test may panic")]

use photo::Parts;
use trial::decide::{decide, read_csv, write_csv};
use trial::{
    Arm, ArmId, Part, PartReading, PhotoId, Piece, PieceId, Reading, ReadingId, Role, Source,
    SplitReading, Trial, TrialId, parts_by_stage, rows,
};

fn trial() -> Trial {
    let arm = |id, name: &str| Arm {
        id: ArmId(id),
        name: name.into(),
        treatment: String::new(),
    };
    let pieces = (0..4).map(|i| Piece {
        tag: photo::board::Code::from_number(i as u32),
        id: PieceId(i),
        arm: ArmId(i / 2),
        code: format!("P{i}"),
        role: Role::Test,
        load: Some("tub, blue".into()),
    });
    Trial {
        id: TrialId(1),
        slug: "t".into(),
        title: "t".into(),
        question: "?".into(),
        margin_de00: 1.0,
        rounds: 5,
        invented: true,
        made_at: "2030-01-01T00:00:00Z".into(),
        method: String::new(),
        arms: vec![arm(0, "folded"), arm(1, "stitched")],
        pieces: pieces.collect(),
    }
}

fn part(l: f64, sd: f64) -> PartReading {
    let variance = sd * sd;
    PartReading {
        lab: [l, 1.0, 2.0],
        causes: Parts {
            pixels: [
                [variance, 0.0, 0.0],
                [0.0, variance, 0.0],
                [0.0, 0.0, variance],
            ],
            ..Parts::default()
        },
        share: 0.4,
        pixels: 50,
    }
}

fn reading(piece: i64, stage: u32, photo: i64, pale: f64) -> Reading {
    Reading {
        id: ReadingId(100 * i64::from(stage) + 10 * photo + piece),
        piece: PieceId(piece),
        photo: Some(PhotoId(photo)),
        stage,
        lab: [45.0 + piece as f64 / 10.0, 1.0, 2.0],
        cov: [[0.25, 0.0, 0.0], [0.0, 0.25, 0.0], [0.0, 0.0, 0.25]],
        pixels: 120,
        split: Some(SplitReading {
            pale: part(pale, 0.2),
            deep: part(20.0, 0.2),
            misses: Vec::new(),
        }),
        view: "D65/10".into(),
        source: Source::Photo,
        origin: None,
        notes: Vec::new(),
        made_at: "2030-01-01T00:00:00Z".into(),
    }
}

#[test]
fn a_part_is_tracked_over_its_photos_against_its_own_start() {
    let readings = [
        reading(1, 0, 1, 80.0),
        reading(1, 0, 2, 82.0),
        reading(1, 2, 3, 75.0),
        reading(2, 2, 3, 75.0),
    ];
    let parts = parts_by_stage(&readings);
    let at = |piece, part, stage| {
        let mut all = parts.iter();
        all.find(|at| at.piece == PieceId(piece) && at.part == part && at.stage == stage)
    };
    let start = at(1, Part::Pale, 0).unwrap();
    assert_eq!((start.lab[0], start.photos), (81.0, 2));
    assert!(start.change.is_none());
    let pale = at(1, Part::Pale, 2).unwrap().change.clone().unwrap();
    assert_eq!(pale.change, [-6.0, 0.0, 0.0]);
    // Two readings with an SD of 0.2 each, photos of one stage taken as erring alike:
    // the usual interval of a difference is 1.96 * 0.2 * sqrt 2 either way in L*.
    let scale = pale.de00 / 6.0;
    let half = 1.96 * 0.2 * 2f64.sqrt() * scale;
    assert!(
        (pale.high - pale.de00 - half).abs() < 0.1 * half,
        "{pale:?}"
    );
    let deep = at(1, Part::Deep, 2).unwrap().change.clone().unwrap();
    assert_eq!((deep.de00, deep.low), (0.0, 0.0));
    assert!(
        at(2, Part::Pale, 2).unwrap().change.is_none(),
        "its start was not seen"
    );
}

#[test]
fn a_table_of_readings_comes_back_and_parts_are_not_counted() {
    let trial = trial();
    let readings: Vec<Reading> = (0..4)
        .flat_map(|piece| [reading(piece, 0, 1, 80.0), reading(piece, 3, 2, 70.0)])
        .collect();
    let table = write_csv(&trial, &readings).unwrap();
    assert_eq!(table.lines().count(), 1 + 3 * readings.len());
    assert!(table.contains(",pale,70.0000,1.0000,2.0000,"), "{table}");
    let back = read_csv(table.as_bytes()).unwrap();
    assert_eq!(back, rows(&trial, &readings));
    let (a, b) = (
        decide(&back, 1.0).unwrap(),
        decide(&rows(&trial, &readings), 1.0).unwrap(),
    );
    assert_eq!(a, b);
}

#[test]
fn an_unknown_part_is_named_with_its_row() {
    let table =
        "arm,piece,role,load,stage,part,L,a,b\nx,P1,test,,0,whole,1,2,3\nx,P1,test,,0,rim,1,2,3\n";
    let error = read_csv(table.as_bytes()).unwrap_err().to_string();
    assert!(error.contains("Row 2") && error.contains("rim"), "{error}");
}

#[test]
fn a_table_of_several_sources_is_not_mixed() {
    let trial = trial();
    let mut readings = vec![reading(0, 0, 1, 80.0), reading(1, 0, 1, 80.0)];
    readings[1].source = Source::Lab;
    let table = write_csv(&trial, &readings).unwrap();
    let error = read_csv(table.as_bytes()).unwrap_err().to_string();
    assert!(error.contains("lab D65/10, photo D65/10"), "{error}");
}
