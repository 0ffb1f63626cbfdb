//! A photo's stage said anew: readings follow it, and what was said before stays.

use crate::desk::{Desk, LATER, NOW, new_photo, sees};
use store::{Place, SaidStage, StoreError, Thing};
use trial::{LATEST_STAGE, PhotoId, Trial};

const LAST: &str = "2030-04-03T09:00:00Z";

/// The stages of readings that count, each once.
fn read_at(desk: &Desk, trial: &Trial) -> Vec<u32> {
    let readings = desk.bench.current_readings(trial.id).unwrap();
    let mut stages: Vec<u32> = readings.iter().map(|reading| reading.stage).collect();
    assert!(stages.is_sorted());
    stages.dedup();
    stages
}

#[test]
fn readings_follow_a_photo_to_its_stage_and_back() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    desk.marked_photo(&trial, 0, "start");
    let photo = desk.marked_photo(&trial, 5, "after");
    for _ in 0..2 {
        desk.bench.read_next_with(NOW, &sees(40.0)).unwrap();
    }
    assert_eq!(read_at(&desk, &trial), [0, 5]);

    assert!(desk.bench.correct_stage(photo, 3, LATER).unwrap());
    let mut desk = desk.restart();
    assert_eq!(desk.bench.photo(photo).unwrap().unwrap().stage, 3);
    assert_eq!(desk.bench.photos(trial.id).unwrap()[1].stage, 3);
    assert_eq!(read_at(&desk, &trial), [0, 3]);
    let looked = desk.bench.way_of_trial(&trial).unwrap().progress.looked;
    assert_eq!(
        looked.iter().map(|(stage, _)| *stage).collect::<Vec<_>>(),
        [0, 3]
    );
    let of_photo = desk.bench.readings_of(trial.pieces[0].id).unwrap();
    assert_eq!(of_photo[1].stage, 3);
    let near = desk
        .bench
        .readings_near([40.0, 1.0 / 3.0, -0.7], "D65/10", 99)
        .unwrap();
    assert!(near.iter().any(|found| found.stage == 3));
    assert!(near.iter().all(|found| found.stage != 5));

    // Read once more, by the newest stage; then moved back.
    desk.bench.read_again(photo, LATER).unwrap();
    desk.bench.read_next_with(LATER, &sees(41.0)).unwrap();
    assert_eq!(read_at(&desk, &trial), [0, 3]);
    assert!(desk.bench.correct_stage(photo, 5, LAST).unwrap());
    assert_eq!(read_at(&desk, &trial), [0, 5]);

    // Onto the stage of another photo: one stage less.
    assert!(desk.bench.correct_stage(photo, 0, LAST).unwrap());
    assert_eq!(read_at(&desk, &trial), [0]);
    assert_eq!(desk.bench.trials().unwrap()[0].stages, 1);
    let said = |stage, at: &str| SaidStage {
        stage,
        at: at.into(),
    };
    assert_eq!(
        desk.bench.said_stages(photo).unwrap(),
        [said(5, NOW), said(3, LATER), said(5, LAST), said(0, LAST)]
    );
    let told = desk
        .bench
        .journal(Some(trial.id), Place::NEWEST, 99)
        .unwrap();
    let told: Vec<&str> = told
        .iter()
        .filter(|entry| entry.what == "photo's stage corrected")
        .map(|entry| entry.sentence.as_str())
        .collect();
    assert_eq!(
        told,
        [
            "from round 5 to round 0",
            "from round 3 to round 5",
            "from round 5 to round 3"
        ]
        .map(|words| format!("The photo “pieces.jpg” was moved {words}."))
    );
}

#[test]
fn a_photo_moved_while_it_is_read_is_of_the_new_stage() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 5, "after");
    let waiting = desk.bench.next_waiting().unwrap().unwrap();
    let outcome = waiting.read(&sees(40.0));
    desk.bench.correct_stage(photo, 2, LATER).unwrap();
    desk.bench
        .record(&waiting, outcome, LATER)
        .unwrap()
        .unwrap();
    assert_eq!(read_at(&desk, &trial), [2]);
}

#[test]
fn what_changes_nothing_or_makes_no_sense_is_not_noted() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.photo(&trial, 5, "one");
    let twin = desk.photo(&trial, 3, "one");
    assert!(
        !desk.bench.correct_stage(photo, 5, LATER).unwrap(),
        "is its stage"
    );
    let beyond = desk.bench.correct_stage(photo, LATEST_STAGE + 1, LATER);
    assert!(matches!(
        beyond,
        Err(StoreError::Input { field: "stage", .. })
    ));
    let unknown = desk.bench.correct_stage(PhotoId(99), 1, LATER);
    assert!(matches!(
        unknown,
        Err(StoreError::Unknown {
            what: "photo",
            id: 99
        })
    ));
    // The very same file can't come twice to a stage, unless one lies in the bin.
    let twice = desk.bench.correct_stage(photo, 3, LATER);
    assert!(matches!(
        twice,
        Err(StoreError::Input { field: "stage", .. })
    ));
    assert_eq!(desk.bench.said_stages(photo).unwrap().len(), 1);
    desk.bench.put_in_bin(Thing::Photo(twin), LATER).unwrap();
    assert!(desk.bench.correct_stage(photo, 3, LATER).unwrap());
    // Where it came from, its file may be sent again; where it is now, it is known.
    let same = |stage| {
        desk.bench
            .same_photo(&new_photo(&trial, stage, "one"))
            .unwrap()
    };
    assert_eq!((same(5), same(3)), (None, Some(photo)));
}

#[test]
fn a_correction_is_never_changed_or_deleted() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.photo(&trial, 5, "one");
    desk.bench.correct_stage(photo, 3, LATER).unwrap();
    for act in [
        "UPDATE stage_correction SET stage = 4",
        "DELETE FROM stage_correction",
    ] {
        assert!(desk.database().execute(act, []).is_err(), "{act}");
    }
    assert_eq!(desk.bench.photo(photo).unwrap().unwrap().stage, 3);
}
