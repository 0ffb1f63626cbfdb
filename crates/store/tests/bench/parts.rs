//! Pale and deep parts of pieces, beside their readings.

use crate::desk::{Desk, LATER, NOW, area, new_photo, sees};
use colour::Lab;
use photo::{Parts, PhotoReading, Refusal, Request, Split, SplitPart};
use store::Bench;
use trial::Part;

fn part(l: f64, share: f64) -> SplitPart {
    let parts = Parts {
        pixels: [[0.01, 0.0, 0.0], [0.0, 0.02, 0.0], [0.0, 0.0, 1.0 / 3.0]],
        ..Parts::default()
    };
    SplitPart {
        lab: Lab::new(l, 0.1, 1.0 / 3.0),
        cov: parts.total(),
        parts,
        share,
        pixels: 77,
    }
}

/// Sees the first area in two parts.
fn sees_parts(pale: f64, deep: f64) -> impl Fn(&[u8], &Request) -> Result<PhotoReading, Refusal> {
    move |bytes, request| {
        let mut reading = sees(50.0)(bytes, request)?;
        reading.readings[0].split = Some(Split {
            pale: part(pale, 0.25),
            deep: part(deep, 0.75),
        });
        Ok(reading)
    }
}

#[test]
fn parts_come_back_as_they_were_read_and_change_against_their_own_start() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    for (stage, pale, deep) in [(0, 80.0, 30.0), (3, 74.0, 33.0)] {
        let photo = desk.marked_photo(&trial, stage, &format!("photo {stage}"));
        let read = desk.bench.read_next_with(LATER, &sees_parts(pale, deep));
        assert_eq!(read.unwrap().unwrap().0, photo);
    }
    let desk = desk.restart();
    let results = desk.bench.results(&trial.slug).unwrap().unwrap();
    assert_eq!(
        results.readings.len(),
        10,
        "parts are no readings of their own"
    );
    let split: Vec<_> = results
        .readings
        .iter()
        .filter_map(|r| Some((r.piece, r.stage, r.split.as_ref()?)))
        .collect();
    assert_eq!(split.len(), 2);
    let (piece, _, first) = split[0];
    assert_eq!(first.pale.lab, [80.0, 0.1, 1.0 / 3.0]);
    assert_eq!(first.pale.causes, part(80.0, 0.25).parts);
    assert_eq!((first.deep.share, first.deep.pixels), (0.75, 77));
    assert_eq!(first.misses, [Some([0.5, -0.25, 1.0 / 3.0]), None]);
    assert_eq!(
        desk.bench.readings_of(piece).unwrap()[0].split.as_ref(),
        Some(first)
    );

    let at = |part, stage| {
        let mut all = results.parts.iter();
        all.find(|at| at.part == part && at.stage == stage).unwrap()
    };
    assert_eq!(results.parts.len(), 4);
    assert!(at(Part::Pale, 0).change.is_none());
    let pale = at(Part::Pale, 3).change.as_ref().unwrap();
    let deep = at(Part::Deep, 3).change.as_ref().unwrap();
    assert_eq!((pale.change[0], deep.change[0]), (-6.0, 3.0));
    for change in [pale, deep] {
        assert!(0.0 < change.low && change.low < change.de00 && change.de00 < change.high);
    }
}

#[test]
fn a_verdict_rests_on_whole_pieces_with_or_without_parts() {
    let decided = |split: bool| {
        let mut desk = Desk::new();
        let trial = desk.trial();
        for stage in [0, 3] {
            desk.marked_photo(&trial, stage, &format!("photo {stage}"));
            let read = if split {
                desk.bench.read_next_with(LATER, &sees_parts(90.0, 10.0))
            } else {
                desk.bench.read_next_with(LATER, &sees(50.0))
            };
            read.unwrap().unwrap();
        }
        desk.bench.results(&trial.slug).unwrap().unwrap().decision
    };
    assert!(decided(true).is_some());
    assert_eq!(decided(true), decided(false));
}

/// The tables as they were before parts were kept.
const BEFORE: [&str; 5] = [
    include_str!("../../migrations/0001_bench.sql"),
    include_str!("../../migrations/0002_setup_check.sql"),
    include_str!("../../migrations/0003_elsewhere.sql"),
    include_str!("../../migrations/0004_tags.sql"),
    include_str!("../../migrations/0005_doubt.sql"),
];

#[test]
fn a_bench_from_before_parts_keeps_everything_and_takes_parts() {
    let home = tempfile::tempdir().unwrap();
    let old = rusqlite::Connection::open(home.path().join("woadstone.sqlite")).unwrap();
    for step in BEFORE {
        old.execute_batch(step).unwrap();
    }
    old.execute_batch(
        "INSERT INTO trial VALUES (1, 's', 't', 'q', 1, 1, 0, '', 'now');
         INSERT INTO arm VALUES (1, 1, 'a', '');
         INSERT INTO piece VALUES (1, 1, 1, 'P1', 'test', NULL, 'K7H-4PX');
         INSERT INTO photo VALUES (1, 1, 0, 'n', hex(zeroblob(32)), 1, 9, 9, NULL, 'now');
         INSERT INTO marking VALUES (1, 1, 'now');
         INSERT INTO area VALUES (1, 0, 1, '[[1,1],[9,1],[9,9]]');
         INSERT INTO outcome VALUES (1, 'm', 1, NULL, NULL, '[]', 'now');
         INSERT INTO doubt VALUES (1, '{\"pieces\":[1],\"parts\":[],\"together\":[],\"misses\":[]}');
         INSERT INTO reading VALUES
            (1, 1, 1, 0, 41.5, 2, 3, '[[1,0,0],[0,1,0],[0,0,1]]', 9, 'D65/10', 'photo', '[]', 'now');",
    )
    .unwrap();
    let tag = photo::board::Code::from_number(7).to_string();
    // Tags stand as the program writes them.
    old.execute("UPDATE piece SET tag = ?1", [tag]).unwrap();
    old.pragma_update(None, "user_version", BEFORE.len() as i64)
        .unwrap();
    drop(old);

    let mut bench = Bench::open(home.path()).unwrap();
    let trial = bench.trial("s").unwrap().unwrap();
    let readings = bench.current_readings(trial.id).unwrap();
    assert_eq!(readings.len(), 1);
    assert_eq!(
        (readings[0].lab, readings[0].split.is_some()),
        ([41.5, 2.0, 3.0], false)
    );
    let results = bench.results("s").unwrap().unwrap();
    assert_eq!((results.photos.len(), results.parts.len()), (1, 0));

    let photo = bench.add_photo(new_photo(&trial, 1, "new"), NOW).unwrap();
    bench
        .mark_areas(photo, vec![area(trial.pieces[0].id)], NOW)
        .unwrap();
    bench
        .read_next_with(LATER, &sees_parts(80.0, 20.0))
        .unwrap()
        .unwrap();
    let results = bench.results("s").unwrap().unwrap();
    assert_eq!(results.readings.len(), 2);
    assert_eq!(results.parts.len(), 2);
    assert!(
        results.parts.iter().all(|at| at.change.is_none()),
        "no start to go by"
    );
}
