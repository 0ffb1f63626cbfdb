//! Readings from elsewhere and grades by eye: added, kept whole, withdrawn, never changed.

use crate::desk::{Desk, LATER, NOW};
use colour::{Spectrum, View, table};
use store::{Added, Delivery, Place};
use trial::{GreyScale, Judged, Matched, PieceId, Source, Trial, USUAL_REPEATABILITY_DE, matched};

fn read(trial: &Trial, text: &str) -> Matched {
    matched(
        trial,
        &table::read(text, View::D65_10).unwrap(),
        USUAL_REPEATABILITY_DE,
    )
    .unwrap()
}

fn delivery<'a>(text: &'a str, readings: &'a Matched) -> Delivery<'a> {
    Delivery {
        stage: 2,
        file_name: "friday.csv",
        content: text.as_bytes(),
        by: "a friend",
        on: "Friday",
        instrument: "sphere, specular included",
        readings: &readings.readings,
    }
}

fn spectra(trial: &Trial) -> String {
    let names: Vec<String> = (0..31).map(|i| (400 + 10 * i).to_string()).collect();
    let code = &trial.pieces[0].code;
    let values: Vec<String> = (0..31)
        .map(|i| format!("{}", 0.1 + 0.02 * f64::from(i)))
        .collect();
    format!("piece,{}\n{code},{}\n", names.join(","), values.join(","))
}

fn judged(trial: &Trial) -> Judged {
    Judged {
        piece: trial.pieces[0].id,
        stage: 2,
        scale: GreyScale::Staining,
        grade: "3/4".into(),
        against: Some(trial.pieces[1].id),
        by: "A. N.".into(),
        light: "north window".into(),
        on: "Friday".into(),
        remark: "streaky".into(),
    }
}

#[test]
fn a_spectrum_comes_back_whole_and_gives_any_view() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let text = spectra(&trial);
    let found = read(&trial, &text);
    assert_eq!(
        desk.bench
            .add_readings(trial.id, &delivery(&text, &found), NOW)
            .unwrap(),
        1
    );
    let desk = desk.restart();
    let readings = desk.bench.current_readings(trial.id).unwrap();
    let reading = &readings[0];
    assert_eq!(
        (reading.source, reading.stage, reading.view.as_str()),
        (Source::Spectrum, 2, "D65/10")
    );
    assert_eq!(reading.lab, found.readings[0].lab);
    assert_eq!(reading.cov, found.readings[0].cov);
    let origin = reading.origin.as_ref().unwrap();
    assert_eq!(
        (origin.by.as_str(), origin.on.as_str(), origin.file.as_str()),
        ("a friend", "Friday", "friday.csv")
    );
    let kept = origin.spectrum.clone().unwrap();
    let again = Spectrum::new(kept.start_nm, kept.step_nm, kept.values).unwrap();
    assert_eq!(again.lab(View::D65_10).to_array(), reading.lab);
    let content: Vec<u8> = desk
        .database()
        .query_row("SELECT content FROM delivery", [], |row| row.get(0))
        .unwrap();
    assert_eq!(content, text.as_bytes());
    assert_eq!(
        desk.bench
            .results(&trial.slug)
            .unwrap()
            .unwrap()
            .readings
            .len(),
        1
    );
    assert!(
        desk.bench.journal(None, Place::NEWEST, 1).unwrap()[0]
            .sentence
            .contains("friday.csv")
    );
}

#[test]
fn what_is_withdrawn_stays_and_no_longer_counts() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let text = format!("piece;L;a;b\n{};41,2;20;5\n", trial.pieces[0].code);
    let found = read(&trial, &text);
    desk.bench
        .add_readings(trial.id, &delivery(&text, &found), NOW)
        .unwrap();
    // The same file twice is a slip, not a repeat measurement.
    let again = desk
        .bench
        .add_readings(trial.id, &delivery(&text, &found), LATER)
        .unwrap_err();
    assert!(
        again.to_string().contains("added at this stage before"),
        "{again}"
    );
    let id = desk.bench.current_readings(trial.id).unwrap()[0].id;
    assert_eq!(
        desk.bench
            .withdraw(trial.id, Added::Reading(id), " ", LATER)
            .unwrap_err()
            .code(),
        "input_refused"
    );
    desk.bench
        .withdraw(trial.id, Added::Reading(id), "the wrong piece", LATER)
        .unwrap();
    assert!(desk.bench.current_readings(trial.id).unwrap().is_empty());
    assert_eq!(desk.bench.readings_of(trial.pieces[0].id).unwrap().len(), 1);
    assert_eq!(
        desk.bench
            .withdraw(trial.id, Added::Reading(id), "again", LATER)
            .unwrap_err()
            .code(),
        "unknown"
    );
    desk.bench
        .add_readings(trial.id, &delivery(&text, &found), LATER)
        .unwrap();
    assert_eq!(desk.bench.current_readings(trial.id).unwrap().len(), 1);
}

#[test]
fn grades_by_eye_are_kept_with_all_that_was_said() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let id = desk
        .bench
        .add_eye_grade(&trial, judged(&trial), NOW)
        .unwrap();
    let mut desk = desk.restart();
    let grades = desk.bench.eye_grades(trial.id).unwrap();
    let wanted = Judged {
        grade: "3-4".into(),
        ..judged(&trial)
    };
    assert_eq!((&grades[0].judged, grades[0].id), (&wanted, id));
    let wrong = Judged {
        grade: "7".into(),
        ..judged(&trial)
    };
    assert_eq!(
        desk.bench
            .add_eye_grade(&trial, wrong, NOW)
            .unwrap_err()
            .code(),
        "trial_refused"
    );
    desk.bench
        .withdraw(trial.id, Added::Grade(id), "wrong lamp", LATER)
        .unwrap();
    assert!(desk.bench.eye_grades(trial.id).unwrap().is_empty());
}

#[test]
fn only_what_belongs_to_the_trial_is_taken() {
    let mut desk = Desk::new();
    let (trial, other) = (desk.trial(), desk.trial());
    let text = format!(
        "piece;L;a;b\n{};41,2;20;5\nstranger;1;2;3\n",
        trial.pieces[0].code
    );
    let mut found = read(&trial, &text);
    assert_eq!(found.unknown, ["stranger"]);
    let error = desk
        .bench
        .add_readings(other.id, &delivery(&text, &found), NOW)
        .unwrap_err();
    assert!(
        error.to_string().contains("not one of this trial"),
        "{error}"
    );
    found.readings[0].piece = PieceId(9999);
    assert!(
        desk.bench
            .add_readings(trial.id, &delivery(&text, &found), NOW)
            .is_err()
    );
    found.readings.clear();
    let error = desk
        .bench
        .add_readings(trial.id, &delivery(&text, &found), NOW)
        .unwrap_err();
    assert!(error.to_string().contains("nothing to add"), "{error}");
    assert!(desk.bench.results("no-such-trial").unwrap().is_none());
    assert_eq!(
        desk.database()
            .query_row("SELECT count(*) FROM delivery", [], |row| row
                .get::<_, i64>(0))
            .unwrap(),
        0
    );
}

#[test]
fn a_bench_of_the_first_version_takes_readings_from_elsewhere() {
    let home = tempfile::tempdir().unwrap();
    let old = rusqlite::Connection::open(home.path().join("woadstone.sqlite")).unwrap();
    old.execute_batch(include_str!("../../migrations/0001_bench.sql"))
        .unwrap();
    old.execute_batch(
        "INSERT INTO trial VALUES (1, 's', 't', 'q', 1, 1, 0, '', 'now');
         INSERT INTO arm VALUES (1, 1, 'a', '');
         INSERT INTO piece VALUES (1, 1, 1, 'P1', 'test', NULL);",
    )
    .unwrap();
    old.pragma_update(None, "user_version", 1).unwrap();
    drop(old);
    let mut bench = store::Bench::open(home.path()).unwrap();
    let trial = bench.trial("s").unwrap().unwrap();
    let text = "piece;L;a;b\nP1;41,2;20;5\n";
    let found = read(&trial, text);
    bench
        .add_readings(trial.id, &delivery(text, &found), NOW)
        .unwrap();
    assert_eq!(
        bench.current_readings(trial.id).unwrap()[0].source,
        Source::Lab
    );
}
