//! The words that the journal keeps are written by the texts of other modules: each has to be understood.

use super::{Names, Told, told};
use crate::journal::Seen;
use crate::{event_words, text};
use rusqlite::Connection;

fn database() -> Connection {
    let database = Connection::open_in_memory().expect("a database");
    database
        .execute_batch(
            "CREATE TABLE photo (id INTEGER PRIMARY KEY, name TEXT);
             CREATE TABLE piece (id INTEGER PRIMARY KEY, code TEXT);
             CREATE TABLE device (id INTEGER PRIMARY KEY, name TEXT);
             CREATE TABLE trial (slug TEXT, title TEXT);
             CREATE TABLE material (id INTEGER PRIMARY KEY, name TEXT);
             CREATE TABLE lot (id INTEGER PRIMARY KEY, material_id INTEGER);
             INSERT INTO photo VALUES (3, 'round five.jpg');
             INSERT INTO piece VALUES (7, 'A2');
             INSERT INTO device VALUES (1, 'kitchen phone');
             INSERT INTO trial VALUES ('red', 'Agent F on red');
             INSERT INTO material VALUES (5, 'soda ash');
             INSERT INTO lot VALUES (9, 5);
             CREATE TABLE plan (id INTEGER PRIMARY KEY, slug TEXT);
             CREATE TABLE plan_revision (plan_id INTEGER, number INTEGER, content TEXT);
             INSERT INTO plan VALUES (1, 'old-plan');
             INSERT INTO plan_revision VALUES (1, 1, 'no plan any more');",
        )
        .expect("tables");
    database
}

fn said(what: &str, detail: &str) -> Told {
    assert!(event_words::named(what).is_some(), "{what}");
    let database = database();
    told(what, detail, &Names::new(&database))
}

const HASH: &str = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";

#[test]
fn each_event_is_a_sentence_with_the_names_of_things() {
    let photo =
        text::photos::photo_of_trial_after_round_bytes_sha(3, "a \"b\", of.jpg", 1, 5, 900, HASH);
    for (what, detail, sentence) in [
        (
            "photo added",
            photo,
            "The photo “a \"b\", of.jpg” was added, taken after 5 rounds.",
        ),
        (
            "areas marked",
            text::marking::pieces_on_photo(1, 3),
            "1 piece was marked on the photo “round five.jpg”.",
        ),
        (
            "photo read",
            text::queue::pieces_read(4, 6, 3),
            "The photo “round five.jpg” was read: colours of 4 of 6 pieces.",
        ),
        (
            "photo refused",
            text::queue::photo(3, "blurred", "It is blurred: hold still."),
            "The photo “round five.jpg” was refused: It is blurred: hold still.",
        ),
        (
            "photo taken out of the queue",
            text::requeue::photo_it_and_its_marks_stay(3),
            "The photo “round five.jpg” was taken out of the queue; it and its marks stay.",
        ),
        (
            "photo's stage corrected",
            text::stages::photo_from_round_to_round(3, "x.jpg", 3, 5),
            "The photo “x.jpg” was moved from round 3 to round 5.",
        ),
        (
            "trial entered",
            text::trials::arms_pieces("Red (two)", "red-two", 2, 8),
            "The trial “Red (two)” was entered, with 2 arms and 8 pieces.",
        ),
        (
            "readings added",
            text::deliveries::readings_from(1, text::deliveries::from_file("lab from A.csv")),
            "1 reading of an instrument was added, from lab from A.csv.",
        ),
        (
            "readings added",
            text::deliveries::readings_from(3, text::deliveries::as_typed()),
            "3 readings of an instrument were added, as typed.",
        ),
        (
            "grade by eye added",
            text::eye_grades::of_piece_number("change", "4-5", 7, "Mara"),
            "Mara judged piece A2 by eye: change 4-5.",
        ),
        (
            "withdrawn",
            format!("{} 12: a slip: wrong piece", text::thing::grade_by_eye()),
            "A grade by eye was withdrawn: a slip: wrong piece.",
        ),
        (
            "judging by eye begun",
            text::eye_sessions::session_of_stage_pairs(1, "red", 0, 1),
            "Judging by eye was begun, with 1 pair before the first round.",
        ),
        (
            "judging by eye closed",
            text::eye_sessions::session(1),
            "Judging by eye was closed; its grades and codes were laid open.",
        ),
        (
            "person judges",
            text::eye_sessions::in_session("Mara", 1),
            "Mara began to judge by eye.",
        ),
        (
            "plan kept",
            "\"Red (two)\" (red-two)".into(),
            "The plan “Red (two)” was kept.",
        ),
        (
            "recipe kept",
            "\"green\" (green)".into(),
            "The recipe “green” was kept.",
        ),
        (
            "recipe is for",
            "green: red".into(),
            "The recipe “green” is now for “Agent F on red”.",
        ),
        (
            "recipe is for",
            format!("green: {}", text::recipe_aims::nothing_in_particular()),
            "The recipe “green” is now for nothing in particular.",
        ),
        (
            "recipe is for",
            "green: old-plan".into(),
            "The recipe “green” is now for “old-plan”.",
        ),
        (
            "run begun",
            text::runs::by_revision("first by hand", "green", 2),
            "The run “first by hand” was begun by the recipe “green”, revision 2.",
        ),
        (
            "put in the bin",
            text::bin::thing_titled("trial", "A \"red\" one"),
            "The trial “A \"red\" one” was put in the bin.",
        ),
        (
            "taken out of the bin",
            text::bin::thing_titled("plan", "x"),
            "The plan “x” was taken out of the bin.",
        ),
        (
            "lot added",
            text::materials::of_lot("500 g", "soda ash", 9),
            "A lot of “soda ash” was added: 500 g.",
        ),
        (
            "material added",
            "soda ash".into(),
            "The material “soda ash” was added.",
        ),
        (
            "chart added",
            text::charts::chart_rows(1, "big chart", 4, 6, "big.txt"),
            "The chart “big chart” was added.",
        ),
        (
            "set-up checked",
            text::setup_checks::check_of_photos_pieces(1, "north window", 3, 6),
            "The set-up “north window” was checked by 3 photos of 6 pieces.",
        ),
        (
            "device paired",
            text::devices::device(1, "kitchen phone"),
            "The device “kitchen phone” was paired.",
        ),
        (
            "device revoked",
            text::devices::device_2(1),
            "The device “kitchen phone” was shut out.",
        ),
    ] {
        assert_eq!(said(what, &detail).sentence, sentence, "{what}: {detail}");
    }
}

#[test]
fn a_sentence_leads_to_what_it_is_about() {
    let photo = text::photos::photo_of_trial_after_round_bytes_sha(3, "a.jpg", 1, 0, 900, HASH);
    let added = said("photo added", &photo);
    assert_eq!(added.see, Some(Seen::Photo(3)));
    assert!(added.keeps_more && !added.sentence.contains("SHA"));
    let lot = said(
        "lot added",
        &text::materials::of_lot("500 g", "soda ash", 9),
    );
    assert_eq!(lot.see, Some(Seen::Material(5)));
    assert_eq!(
        said("plan kept", "\"Red\" (red)").see,
        Some(Seen::Plan("red".into()))
    );
}

/// Numbers that tell one reading or session from another aren't lost.
#[test]
fn what_a_sentence_leaves_out_can_still_be_seen() {
    for (what, detail) in [
        (
            "withdrawn",
            format!("{} 12: a slip", text::thing::grade_by_eye()),
        ),
        (
            "judging by eye begun",
            text::eye_sessions::session_of_stage_pairs(1, "red", 0, 1),
        ),
        ("judging by eye closed", text::eye_sessions::session(1)),
        ("person judges", text::eye_sessions::in_session("Mara", 1)),
        ("run begun", text::runs::by_revision("first", "green", 2)),
        ("recipe is for", "green: red".into()),
        ("lot added", text::materials::of_lot("500 g", "soda ash", 9)),
        ("device paired", text::devices::device(1, "kitchen phone")),
    ] {
        assert!(said(what, &detail).keeps_more, "{what}");
    }
    assert!(!said("material added", "soda ash").keeps_more);
}

#[test]
fn what_is_not_understood_is_told_as_it_stands() {
    for (what, detail, sentence) in [
        (
            "photo read",
            "3 Teile auf Foto 3",
            "Photo read: 3 Teile auf Foto 3.",
        ),
        (
            "areas marked",
            "2 pieces on photo 77",
            "Areas marked: 2 pieces on photo 77.",
        ),
        ("judging by eye begun", "", "Judging by eye begun."),
        ("photo added", "photo x", "Photo added: photo x."),
    ] {
        assert_eq!(said(what, detail).sentence, sentence);
    }
    let database = Connection::open_in_memory().unwrap();
    let told = told("new kind", "of thing", &Names::new(&database));
    assert_eq!(told.sentence, "New kind: of thing.");
}
