//! Adding photos: the vault and the rows.

use crate::desk::{CORNERS, Desk, NOW, new_photo};
use proptest::prelude::*;
use store::NewPhoto;
use trial::{PhotoId, PhotoState, TrialId};

#[test]
fn a_photo_comes_back_as_it_was_added() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let id = desk.photo(&trial, 3, "abc");
    let desk = desk.restart();
    let photo = desk.bench.photo(id).unwrap().unwrap();
    // Published: FIPS 180-4 example, the message "abc".
    assert_eq!(
        photo.hash,
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    );
    assert_eq!(
        (photo.trial, photo.stage, photo.name.as_str()),
        (trial.id, 3, "pieces.jpg")
    );
    assert_eq!((photo.bytes, photo.width, photo.height), (3, 640, 480));
    assert_eq!(
        (photo.corners, photo.added_at.as_str()),
        (Some(CORNERS), NOW)
    );
    assert_eq!(
        (photo.state.clone(), photo.areas.len()),
        (PhotoState::Unmarked, 0)
    );
    assert_eq!(desk.bench.photo_bytes(&photo.hash).unwrap(), b"abc");
    assert_eq!(desk.bench.photos(trial.id).unwrap(), [photo]);
    assert_eq!(desk.bench.photo(PhotoId(99)).unwrap(), None);
}

#[test]
fn the_same_file_twice_is_two_photos_and_one_file() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    desk.photo(&trial, 0, "same");
    desk.photo(&trial, 1, "same");
    assert_eq!(desk.bench.photos(trial.id).unwrap().len(), 2);
    assert_eq!(desk.vault().len(), 1);
}

#[test]
fn a_photo_that_is_not_added_leaves_no_file() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    desk.photo(&trial, 0, "kept");
    desk.database()
        .execute_batch(
            "CREATE TRIGGER full_disk BEFORE INSERT ON photo
             BEGIN SELECT RAISE(ABORT, 'the disk is full'); END",
        )
        .unwrap();
    for content in ["lost", "kept"] {
        let error = desk
            .bench
            .add_photo(new_photo(&trial, 1, content), NOW)
            .unwrap_err();
        assert_eq!(error.code(), "database");
        assert!(error.to_string().contains("the disk is full"), "{error}");
        assert_eq!(
            desk.vault().len(),
            1,
            "only the file of the photo that was added"
        );
    }
    desk.database()
        .execute_batch("DROP TRIGGER full_disk")
        .unwrap();
    desk.photo(&trial, 1, "lost");
    assert_eq!(desk.vault().len(), 2);
}

#[test]
fn photos_that_make_no_sense_are_refused_and_leave_nothing() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let good = new_photo(&trial, 0, "content");
    let bad = [
        (
            "unknown",
            NewPhoto {
                trial: TrialId(99),
                ..good
            },
        ),
        ("input_refused", NewPhoto { bytes: b"", ..good }),
        ("input_refused", NewPhoto { height: 0, ..good }),
        (
            "input_refused",
            NewPhoto {
                corners: Some([[f64::NAN; 2]; 4]),
                ..good
            },
        ),
    ];
    for (code, new) in bad {
        assert_eq!(desk.bench.add_photo(new, NOW).unwrap_err().code(), code);
    }
    assert!(desk.bench.photos(trial.id).unwrap().is_empty());
    assert!(desk.vault().is_empty());
}

#[test]
fn a_file_that_went_bad_is_named_and_mended_by_adding_the_photo_again() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let id = desk.photo(&trial, 0, "content");
    let hash = desk.bench.photo(id).unwrap().unwrap().hash;
    std::fs::write(&desk.vault()[0], "c0ntent").unwrap();
    let error = desk.bench.photo_bytes(&hash).unwrap_err();
    assert_eq!(error.code(), "vault_file_damaged");
    assert!(error.to_string().contains(&hash[2..]), "{error}");
    desk.photo(&trial, 0, "content");
    assert_eq!(desk.bench.photo_bytes(&hash).unwrap(), b"content");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]
    #[test]
    fn bytes_and_corners_come_back(
        bytes in proptest::collection::vec(any::<u8>(), 1..2000),
        corners in proptest::option::of(any::<[[f64; 2]; 4]>()),
        name in "\\PC{0,40}",
    ) {
        prop_assume!(corners.iter().flatten().flatten().all(|x| x.is_finite()));
        let mut desk = Desk::new();
        let trial = desk.trial();
        let new = NewPhoto { bytes: &bytes, corners, name: &name, ..new_photo(&trial, 0, "x") };
        let id = desk.bench.add_photo(new, NOW).unwrap();
        let photo = desk.bench.photo(id).unwrap().unwrap();
        prop_assert_eq!(photo.corners, corners);
        prop_assert_eq!(&photo.name, &name);
        prop_assert_eq!(desk.bench.photo_bytes(&photo.hash).unwrap(), bytes);
    }
}
