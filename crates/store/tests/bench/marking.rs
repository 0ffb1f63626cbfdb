//! Marking where pieces lie.

use crate::desk::{Desk, NOW, area};
use trial::{PhotoArea, PhotoId, PhotoState, PieceId};

#[test]
fn marks_come_back_in_their_order_and_the_photo_waits() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.photo(&trial, 0, "a");
    let other = desk.photo(&trial, 0, "b");
    let areas: Vec<_> = [3, 0, 2]
        .iter()
        .map(|&i| area(trial.pieces[i].id))
        .collect();
    desk.bench.mark_areas(photo, areas.clone(), NOW).unwrap();
    let desk = desk.restart();
    let photos = desk.bench.photos(trial.id).unwrap();
    assert_eq!(photos[0].areas, areas);
    assert_eq!(photos[0].state, PhotoState::Waiting);
    assert_eq!(photos[1].state, PhotoState::Unmarked);
    assert_eq!(desk.bench.photo(photo).unwrap().unwrap(), photos[0]);
    assert_eq!(desk.bench.photo(other).unwrap().unwrap(), photos[1]);
}

#[test]
fn marks_that_make_no_sense_are_refused_and_change_nothing() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let elsewhere = desk.trial();
    let photo = desk.photo(&trial, 0, "a");
    let piece = trial.pieces[0].id;
    let thin = PhotoArea {
        piece,
        polygon: vec![[0.0, 0.0], [1.0, 1.0]],
    };
    let endless = PhotoArea {
        piece,
        polygon: vec![[0.0, 0.0], [1.0, 1.0], [f64::INFINITY, 0.0]],
    };
    for (areas, told) in [
        (vec![], "one piece at least"),
        (vec![thin], "three corners"),
        (vec![endless], "pair of numbers"),
        (vec![area(piece), area(piece)], "marked twice"),
        (
            vec![area(elsewhere.pieces[0].id)],
            "not one of this photo's trial",
        ),
        (vec![area(PieceId(999))], "not one of this photo's trial"),
    ] {
        let error = desk.bench.mark_areas(photo, areas, NOW).unwrap_err();
        assert_eq!(error.code(), "input_refused");
        assert!(error.to_string().contains(told), "{error}");
    }
    let error = desk
        .bench
        .mark_areas(PhotoId(99), vec![area(piece)], NOW)
        .unwrap_err();
    assert_eq!(
        error.to_string(),
        "There is no photo with the number 99 on this bench."
    );
    let photo = desk.bench.photo(photo).unwrap().unwrap();
    assert_eq!((photo.state, photo.areas.len()), (PhotoState::Unmarked, 0));
}
