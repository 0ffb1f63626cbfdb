//! Taking photos out of the queue, reading them again, and what stays of earlier readings.

use crate::desk::{Desk, LATER, NOW, map, new_photo, refuses, sees};
use store::{Place, Thing};
use trial::{PhotoId, PhotoState};

const LAST: &str = "2030-04-03T09:00:00Z";

#[test]
fn a_photo_taken_out_is_not_read_and_loses_nothing() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let [out, other] = ["a", "b"].map(|content| desk.marked_photo(&trial, 0, content));
    assert!(desk.bench.take_out(out, LATER).unwrap());
    assert!(!desk.bench.take_out(out, LATER).unwrap(), "only once");
    let (read, _) = desk
        .bench
        .read_next_with(LATER, &sees(40.0))
        .unwrap()
        .unwrap();
    assert_eq!(read, other);
    let mut desk = desk.restart();
    assert!(desk.bench.next_waiting().unwrap().is_none());
    let kept = desk.bench.photo(out).unwrap().unwrap();
    assert_eq!(kept.state, PhotoState::TakenOut);
    assert_eq!(kept.areas.len(), trial.pieces.len());
    assert_eq!(desk.bench.photo_bytes(&kept.hash).unwrap(), b"a");
    assert!(!desk.bench.take_out(PhotoId(99), LATER).unwrap());
    let told = &desk.bench.journal(None, Place::NEWEST, 9).unwrap();
    assert!(
        told.iter()
            .any(|e| e.what == "photo taken out of the queue")
    );

    desk.bench.read_again(out, LAST).unwrap();
    let (read, state) = desk
        .bench
        .read_next_with(LAST, &sees(41.0))
        .unwrap()
        .unwrap();
    assert_eq!(read, out);
    assert!(matches!(state, PhotoState::Read { .. }));
}

#[test]
fn what_is_read_of_a_photo_while_it_is_taken_out_is_let_go() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    let waiting = desk.bench.next_waiting().unwrap().unwrap();
    let outcome = waiting.read(&sees(40.0));
    desk.bench.take_out(photo, LATER).unwrap();
    assert_eq!(desk.bench.record(&waiting, outcome, LATER).unwrap(), None);
    assert!(desk.bench.current_readings(trial.id).unwrap().is_empty());
    assert!(desk.bench.outcomes(photo).unwrap().is_empty());
}

#[test]
fn reading_again_keeps_what_was_read_before() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    desk.bench.read_next_with(NOW, &sees(40.0)).unwrap();
    assert_eq!(desk.bench.photo_map(photo).unwrap(), Some(map()));

    desk.bench.read_again(photo, LATER).unwrap();
    let lightness = |desk: &Desk| desk.bench.current_readings(trial.id).unwrap()[0].lab[0];
    assert_eq!(lightness(&desk), 40.0, "counts until the new one is there");
    desk.bench.read_next_with(LATER, &sees(42.0)).unwrap();
    assert_eq!(lightness(&desk), 42.0);

    desk.bench.read_again(photo, LAST).unwrap();
    desk.bench.read_next_with(LAST, &refuses).unwrap();
    assert_eq!(lightness(&desk), 42.0, "a refusal takes no reading away");
    assert_eq!(desk.bench.photo_map(photo).unwrap(), Some(map()));

    let desk = desk.restart();
    let told = desk.bench.outcomes(photo).unwrap();
    let summary: Vec<(&str, bool, Option<f64>)> = told
        .iter()
        .map(|o| {
            let first = o.readings.first().map(|r| r.lab[0]);
            (o.at.as_str(), o.counts, first)
        })
        .collect();
    assert_eq!(
        summary,
        [
            (LAST, false, None),
            (LATER, true, Some(42.0)),
            (NOW, false, Some(40.0))
        ]
    );
    assert!(matches!(told[0].state, PhotoState::Refused { .. }));
}

#[test]
fn a_photo_without_marks_is_not_read_again() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.photo(&trial, 0, "a");
    let error = desk.bench.read_again(photo, LATER).unwrap_err();
    assert!(error.to_string().contains("one piece at least"), "{error}");
    let error = desk.bench.read_again(PhotoId(99), LATER).unwrap_err();
    assert!(error.to_string().contains("99"), "{error}");
    assert_eq!(desk.bench.photo_map(photo).unwrap(), None);
}

#[test]
fn the_same_file_is_found_where_trial_stage_and_chart_are_the_same() {
    let mut desk = Desk::new();
    let (trial, other) = (desk.trial(), desk.trial());
    let photo = desk.photo(&trial, 2, "a");
    let found = |trial, stage, content| {
        let new = new_photo(trial, stage, content);
        desk.bench.same_photo(&new).unwrap()
    };
    assert_eq!(found(&trial, 2, "a"), Some(photo));
    assert_eq!(found(&trial, 1, "a"), None);
    assert_eq!(found(&trial, 2, "b"), None);
    assert_eq!(found(&other, 2, "a"), None);
    desk.bench.put_in_bin(Thing::Photo(photo), LATER).unwrap();
    let new = new_photo(&trial, 2, "a");
    assert_eq!(desk.bench.same_photo(&new).unwrap(), None, "not in the bin");
}
