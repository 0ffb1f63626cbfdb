//! Checks of the set-up are kept whole, with their photos, or not at all.

use crate::desk::{Desk, LATER, NOW};
use colour::Lab;
use store::NewSetupCheck;
use trial::setup::{SetupCheck, Shown, check};

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
    assert_eq!(desk.bench.journal(1).unwrap()[0].what, "set-up checked");
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
