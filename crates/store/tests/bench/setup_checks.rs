//! Checks of the set-up are kept whole, with their photos, or not at all.

use crate::desk::{Desk, LATER, NOW};
use colour::{Lab, difference::ciede2000};
use photo::{Area, Request};
use scene::{Dye, Piece, Scene, cotton, render};
use store::{NewSetupCheck, Place, check_setup};
use trial::setup::{Cause, SetupCheck, Shown, check};

fn found(step: f64) -> SetupCheck {
    let photos: Vec<Vec<Shown>> = (0..3)
        .map(|photo| {
            (0..4)
                .map(|piece| Shown {
                    piece: format!("P{piece}"),
                    lab: Lab::new(
                        40.0 + f64::from(piece) + step * f64::from((photo * 3 + piece * 2) % 5),
                        1.0 / 3.0,
                        -0.7 * f64::from(photo),
                    ),
                    texture: None,
                })
                .collect()
        })
        .collect();
    check(&photos).unwrap()
}

fn files(of: &[&str]) -> Vec<(String, Vec<u8>)> {
    of.iter()
        .map(|content| (format!("{content}.jpg"), content.as_bytes().to_vec()))
        .collect()
}

fn new<'a>(
    name: &'a str,
    check: &'a SetupCheck,
    photos: &'a [(String, Vec<u8>)],
) -> NewSetupCheck<'a> {
    NewSetupCheck {
        name,
        view: "D65/10",
        check,
        photos,
    }
}

#[test]
fn the_newest_check_comes_back_as_it_was_found() {
    let mut desk = Desk::new();
    assert_eq!(desk.bench.latest_setup_check().unwrap(), None);
    let (first, second) = (found(0.1), found(0.2));
    let photos = files(&["one", "two", "three"]);
    let id = desk
        .bench
        .keep_setup_check(new("window", &first, &photos), NOW)
        .unwrap();
    desk.bench
        .keep_setup_check(new(" lamp ", &second, &photos), LATER)
        .unwrap();
    let desk = desk.restart();
    let latest = desk.bench.latest_setup_check().unwrap().unwrap();
    assert_eq!(
        (latest.name.as_str(), latest.made_at.as_str()),
        ("lamp", LATER)
    );
    assert_eq!(latest.check, second);
    let all = desk.bench.setup_checks().unwrap();
    assert_eq!((all.len(), all[1].id, &all[1].check), (2, id, &first));
    let names: Vec<_> = all[1].photos.iter().map(|photo| &photo.name).collect();
    assert_eq!(names, ["one.jpg", "two.jpg", "three.jpg"]);
    assert_eq!(
        desk.bench.photo_bytes(&all[1].photos[2].hash).unwrap(),
        b"three"
    );
    assert_eq!(desk.vault().len(), 3);
    assert_eq!(
        desk.bench.journal(None, Place::NEWEST, 1).unwrap()[0].what,
        "set-up checked"
    );
}

#[test]
fn a_check_that_is_refused_leaves_nothing() {
    let mut desk = Desk::new();
    let check = found(0.1);
    let twice = files(&["one", "two", "one"]);
    for (name, photos) in [
        ("window", &twice),
        ("  ", &files(&["one"])),
        ("w", &files(&[""])),
    ] {
        let error = desk
            .bench
            .keep_setup_check(new(name, &check, photos), NOW)
            .unwrap_err();
        assert_eq!(error.code(), "input_refused");
    }
    assert!(desk.bench.setup_checks().unwrap().is_empty());
    assert!(desk.vault().is_empty());
}

#[test]
fn a_photo_of_a_trial_survives_a_refused_check() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    desk.photo(&trial, 0, "one");
    let check = found(0.1);
    let photos = files(&["one", "two", "two"]);
    desk.bench
        .keep_setup_check(new("window", &check, &photos), NOW)
        .unwrap_err();
    assert_eq!(desk.vault().len(), 1);
}

#[test]
fn rendered_photos_of_relaid_pieces_scatter_as_pairs_of_them_differ() {
    let scene = Scene {
        width_px: 1400,
        height_px: 1050,
        pieces: Piece::rows(
            ["A1", "A2", "B1", "B2", "K"]
                .into_iter()
                .zip([0.9, 0.8, 0.7, 0.6, 0.5])
                .map(|(code, depth)| (code, Dye::madder().on(&cotton(), depth))),
        ),
        ..Scene::default()
    };
    let (mut photos, mut requests) = (Vec::new(), Vec::new());
    for seed in 0..3 {
        let picture = render(&scene.relaid(seed));
        requests.push(Request {
            areas: picture
                .truth
                .pieces
                .iter()
                .map(|piece| Area {
                    id: piece.id.clone(),
                    polygon: piece.polygon.clone(),
                })
                .collect(),
            ..Request::default()
        });
        photos.push((format!("shot-{seed}.jpg"), picture.jpeg));
    }
    let read: Vec<Vec<Lab>> = photos
        .iter()
        .zip(&requests)
        .map(|((_, bytes), request)| {
            let reading = photo::read(bytes, request).unwrap();
            reading.readings.iter().map(|r| r.lab.unwrap()).collect()
        })
        .collect();
    let found = check_setup(&photos, &requests, &photo::read).unwrap();
    // Half the mean square of what a piece differs by from photo to photo.
    let pairs = [(0, 1), (0, 2), (1, 2)];
    let squares: f64 = pairs
        .iter()
        .flat_map(|&(a, b)| read[a].iter().zip(&read[b]))
        .map(|(a, b)| ciede2000(*a, *b).powi(2))
        .sum();
    let by_pairs = (squares / 30.0).sqrt();
    let (within, between) = (found.within_sd_de00, found.between_sd_de00);
    let by_parts = within.hypot(between);
    assert!(
        (by_parts / by_pairs - 1.0).abs() < 0.15,
        "{by_parts} {by_pairs}"
    );
    assert!(within < 1.0 && between < 4.0, "{within} {between}");
    let causes: Vec<_> = found.shares.iter().map(|share| share.cause).collect();
    assert_eq!(causes, [Cause::PhotoToPhoto, Cause::Texture, Cause::Laying]);

    let error = check_setup(&photos, &requests[..2], &photo::read).unwrap_err();
    assert!(error.to_string().contains("one for each"), "{error}");
    photos[1].1 = b"a shopping list".to_vec();
    let error = check_setup(&photos, &requests, &photo::read).unwrap_err();
    assert!(error.to_string().starts_with("shot-1.jpg: "), "{error}");
}
