//! Reading waiting photos, and stopping in between.

use crate::desk::{Desk, LATER, flag, refuses, sees};
use photo::FlagCode;
use std::cell::RefCell;
use trial::{Note, PhotoState};

fn refused_with(state: &PhotoState) -> &str {
    match state {
        PhotoState::Refused { code, .. } => code,
        other => panic!("not refused: {other:?}"),
    }
}

#[test]
fn photos_are_read_in_the_order_they_were_marked() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let [a, b, c] = ["a", "b", "c"].map(|content| desk.photo(&trial, 0, content));
    for photo in [b, c, a, b] {
        desk.mark(photo, [trial.pieces[0].id]);
    }
    let seen = RefCell::new(Vec::new());
    let reader = |bytes: &[u8], request: &photo::Request| {
        seen.borrow_mut()
            .push(String::from_utf8(bytes.to_vec()).unwrap());
        sees(40.0)(bytes, request)
    };
    let mut order = Vec::new();
    while let Some((photo, _)) = desk.bench.read_next_with(LATER, &reader).unwrap() {
        order.push(photo);
    }
    assert_eq!(order, [c, a, b], "marking b anew sent it to the end");
    assert_eq!(*seen.borrow(), ["c", "a", "b"]);
}

#[test]
fn a_reading_comes_back_as_it_was_read() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 3, "a");
    let (read, state) = desk
        .bench
        .read_next_with(LATER, &sees(40.1))
        .unwrap()
        .unwrap();
    assert_eq!(read, photo);
    let note = |code| Note {
        code: flag(code).code.as_str().into(),
        message: flag(code).message,
    };
    assert_eq!(
        state,
        PhotoState::Read {
            model: "stand-in".into(),
            loo_de00_median: 0.1 + 0.2,
            flags: vec![note(FlagCode::ProfileMissing)],
        }
    );
    assert_eq!(desk.bench.photo(photo).unwrap().unwrap().state, state);
    let readings = desk.bench.current_readings(trial.id).unwrap();
    assert_eq!(readings.len(), 5);
    for (reading, piece) in readings.iter().zip(&trial.pieces) {
        assert_eq!(
            (reading.piece, reading.photo, reading.stage),
            (piece.id, Some(photo), 3)
        );
        assert_eq!(reading.lab, [40.1, 1.0 / 3.0, -0.7]);
        assert_eq!(
            reading.cov,
            [[0.1, 0.2, 0.3], [0.2, 1e-17, 0.0], [0.3, 0.0, 1.0 / 7.0]]
        );
        assert_eq!((reading.pixels, reading.view.as_str()), (1234, "D65/10"));
        assert_eq!(
            (reading.source.as_str(), reading.made_at.as_str()),
            ("photo", LATER)
        );
        assert_eq!(reading.notes, [note(FlagCode::Clipped)]);
    }
    let doubt = desk.bench.doubt(photo).unwrap().unwrap();
    let pieces: Vec<_> = trial.pieces.iter().map(|piece| piece.id).collect();
    assert_eq!(doubt.pieces, pieces);
    assert_eq!((doubt.parts.len(), doubt.together.len()), (5, 5));
    assert_eq!(doubt.misses, [Some([0.5, -0.25, 1.0 / 3.0]), None]);
    assert!(doubt.of_difference(pieces[0], pieces[1]).is_some());
}

#[test]
fn a_refusal_is_recorded_without_readings_and_holds_nothing_up() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    let (_, state) = desk.bench.read_next_with(LATER, &refuses).unwrap().unwrap();
    let desk = desk.restart();
    let stored = desk.bench.photo(photo).unwrap().unwrap();
    assert_eq!(stored.state, state);
    assert_eq!(refused_with(&state), "chart_missing");
    assert_eq!(stored.areas.len(), 5, "the marks stay");
    assert!(desk.bench.current_readings(trial.id).unwrap().is_empty());
    assert!(desk.bench.next_waiting().unwrap().is_none());
}

#[test]
fn marking_anew_keeps_what_was_read_before() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    let other = desk.marked_photo(&trial, 0, "b");
    while desk
        .bench
        .read_next_with(LATER, &sees(40.0))
        .unwrap()
        .is_some()
    {}

    // Only the second piece is on the photo after all.
    let piece = trial.pieces[1].id;
    desk.mark(photo, [piece]);
    let waiting = desk.bench.current_readings(trial.id).unwrap();
    assert_eq!(
        waiting.len(),
        10,
        "the old readings count until the new ones are there"
    );
    desk.bench.read_next_with(LATER, &sees(41.0)).unwrap();

    let current = desk.bench.current_readings(trial.id).unwrap();
    let of_photo: Vec<_> = current.iter().filter(|r| r.photo == Some(photo)).collect();
    assert_eq!(of_photo.len(), 1);
    assert_eq!((of_photo[0].piece, of_photo[0].lab[0]), (piece, 41.0));
    assert_eq!(current.iter().filter(|r| r.photo == Some(other)).count(), 5);
    let history: Vec<f64> = desk
        .bench
        .readings_of(piece)
        .unwrap()
        .iter()
        .map(|r| r.lab[0])
        .collect();
    assert_eq!(history, [40.0, 40.0, 41.0]);

    desk.mark(photo, [piece]);
    desk.bench.read_next_with(LATER, &refuses).unwrap();
    assert_eq!(
        desk.bench.current_readings(trial.id).unwrap(),
        current,
        "a refusal takes nothing away"
    );
}

#[test]
fn stopping_between_any_two_steps_loses_nothing_and_repeats_nothing() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.photo(&trial, 0, "a");
    desk = desk.restart();
    desk.mark(photo, trial.pieces.iter().map(|piece| piece.id));
    desk = desk.restart();
    let waiting = desk.bench.next_waiting().unwrap().unwrap();
    desk = desk.restart();
    waiting.read(&sees(39.0));
    desk = desk.restart();
    assert!(desk.bench.current_readings(trial.id).unwrap().is_empty());
    assert_eq!(
        desk.bench
            .read_next_with(LATER, &sees(40.0))
            .unwrap()
            .unwrap()
            .0,
        photo
    );
    desk = desk.restart();
    assert_eq!(desk.bench.read_next_with(LATER, &sees(41.0)).unwrap(), None);
    let lightness: Vec<f64> = desk
        .bench
        .current_readings(trial.id)
        .unwrap()
        .iter()
        .map(|reading| reading.lab[0])
        .collect();
    assert_eq!(lightness, [40.0; 5]);
}

#[test]
fn stopping_in_the_middle_of_recording_records_nothing() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    let third = trial.pieces[2].id;
    desk.database()
        .execute_batch(&format!(
            "CREATE TRIGGER power_cut BEFORE INSERT ON reading WHEN NEW.piece_id = {third}
             BEGIN SELECT RAISE(ABORT, 'lights out'); END"
        ))
        .unwrap();
    let error = desk.bench.read_next_with(LATER, &sees(40.0)).unwrap_err();
    assert_eq!(error.code(), "database");
    let mut desk = desk.restart();
    assert_eq!(
        desk.bench.photo(photo).unwrap().unwrap().state,
        PhotoState::Waiting
    );
    assert!(
        desk.bench
            .readings_of(trial.pieces[0].id)
            .unwrap()
            .is_empty()
    );
    desk.database()
        .execute_batch("DROP TRIGGER power_cut")
        .unwrap();
    desk.bench.read_next_with(LATER, &sees(40.0)).unwrap();
    assert_eq!(desk.bench.current_readings(trial.id).unwrap().len(), 5);
}

#[test]
fn a_bad_file_or_a_broken_reader_does_not_hold_up_the_others() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let damaged = desk.marked_photo(&trial, 0, "damaged");
    std::fs::write(&desk.vault()[0], "changed").unwrap();
    let missing = desk.marked_photo(&trial, 0, "missing");
    let hash = desk.bench.photo(missing).unwrap().unwrap().hash;
    let path = desk
        .home
        .path()
        .join("vault")
        .join(&hash[..2])
        .join(&hash[2..]);
    std::fs::remove_file(path).unwrap();
    let sound = desk.marked_photo(&trial, 0, "sound");

    let (first, state) = desk
        .bench
        .read_next_with(LATER, &sees(40.0))
        .unwrap()
        .unwrap();
    assert_eq!(
        (first, refused_with(&state)),
        (damaged, "vault_file_damaged")
    );
    let (second, state) = desk
        .bench
        .read_next_with(LATER, &sees(40.0))
        .unwrap()
        .unwrap();
    assert_eq!(
        (second, refused_with(&state)),
        (missing, "vault_file_missing")
    );
    let breaks = |_: &[u8], _: &photo::Request| panic!("a fault of the reader");
    let (third, state) = desk.bench.read_next_with(LATER, &breaks).unwrap().unwrap();
    assert_eq!((third, refused_with(&state)), (sound, "reader_failed"));
}

#[test]
fn a_piece_that_could_not_be_read_is_told_of_on_its_photo() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    desk.marked_photo(&trial, 0, "a");
    let reader = |bytes: &[u8], request: &photo::Request| {
        let mut reading = sees(40.0)(bytes, request)?;
        reading.readings[0].lab = None;
        reading.readings[0].flags = vec![flag(FlagCode::AreaOutside)];
        reading.readings[1].cov[2][2] = f64::NAN;
        reading.readings[1].flags.clear();
        Ok(reading)
    };
    let (_, state) = desk.bench.read_next_with(LATER, &reader).unwrap().unwrap();
    let PhotoState::Read { flags, .. } = state else {
        panic!("not read: {state:?}");
    };
    let told: Vec<_> = flags.iter().map(|note| note.code.as_str()).collect();
    assert_eq!(told, ["profile_missing", "area_outside", "area_unread"]);
    assert_eq!(desk.bench.current_readings(trial.id).unwrap().len(), 3);
}
