//! The whole way of a rendered photograph: vault, queue, `photo::read`, readings.

use crate::desk::{Desk, LATER, NOW};
use colour::{Lab, difference::ciede2000};
use scene::{Dye, Piece, Scene, cotton, render};
use store::NewPhoto;
use trial::{PhotoArea, PhotoState};

#[test]
fn a_photograph_becomes_readings() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let picture = render(&Scene {
        width_px: 1400,
        height_px: 1050,
        pieces: Piece::rows(
            trial
                .pieces
                .iter()
                .zip([0.9, 0.8, 0.7, 0.6, 0.5])
                .map(|(piece, depth)| (piece.code.as_str(), Dye::madder().on(&cotton(), depth))),
        ),
        ..Scene::default()
    });
    let survey = photo::survey(&picture.jpeg, None).unwrap();
    let new = NewPhoto {
        trial: trial.id,
        stage: 0,
        name: "round-0.jpg",
        bytes: &picture.jpeg,
        width: survey.width,
        height: survey.height,
        corners: Some(survey.corners),
        chart: None,
        notices: &[],
    };
    let id = desk.bench.add_photo(new, NOW).unwrap();
    let areas = picture
        .truth
        .pieces
        .iter()
        .map(|piece| PhotoArea {
            piece: trial.pieces.iter().find(|p| p.code == piece.id).unwrap().id,
            polygon: piece.polygon.clone(),
        })
        .collect();
    desk.bench.mark_areas(id, areas, NOW).unwrap();
    let (read, state) = desk.bench.read_next(LATER).unwrap().unwrap();
    assert_eq!(read, id);
    assert!(matches!(state, PhotoState::Read { .. }), "{state:?}");
    let readings = desk.bench.current_readings(trial.id).unwrap();
    assert_eq!(readings.len(), trial.pieces.len());
    // The truth is the scene's, which shares no code with the reader.
    for truth in &picture.truth.pieces {
        let piece = trial.pieces.iter().find(|p| p.code == truth.id).unwrap();
        let reading = readings.iter().find(|r| r.piece == piece.id).unwrap();
        let miss = ciede2000(Lab::from(reading.lab), Lab::from(truth.lab_d65_10));
        assert!(miss < 4.0, "{}: {miss:.2} from the truth", truth.id);
    }
}
