//! Judging by eye: nothing of arms while people judge, one tap a grade, results when closed.

use crate::desk::{Answer, Desk};
use axum::http::StatusCode;
use trial::{NewPiece, Role, Trial, eyes::Judging};

/// A trial with a session begun; the session's number.
pub async fn begun(desk: &Desk, repeats: &str) -> (Trial, i64) {
    let trial = desk.trial();
    let address = format!("/trials/{}/eyes", trial.slug);
    let form = [
        ("stage", "5"),
        ("way", "cloth"),
        ("catch", "on"),
        ("repeats", repeats),
    ];
    let answer = desk.post_form(&address, &form).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let session = sessions(desk, &trial).remove(0);
    (trial, session.id)
}

pub fn sessions(desk: &Desk, trial: &Trial) -> Vec<Judging> {
    desk.bench.lock().unwrap().eye_sessions(trial.id).unwrap()
}

/// Lets a person begin; the address of their pairs.
async fn sits(desk: &Desk, trial: &Trial, session: i64, name: &str) -> String {
    let form = [
        ("name", name),
        ("light", "north window"),
        ("vision", "normal"),
        ("distance", "50 cm"),
    ];
    let address = format!("/trials/{}/eyes/{session}/judges", trial.slug);
    let answer = desk.post_form(&address, &form).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    answer.location().to_owned()
}

async fn give(desk: &Desk, address: &str, turn: usize, grade: &str) -> Answer {
    let turn = turn.to_string();
    let form = [("turn", turn.as_str()), ("grade", grade), ("remark", "")];
    desk.post_form(address, &form).await
}

#[tokio::test]
async fn while_people_judge_neither_page_nor_address_tells_the_arm() {
    let desk = Desk::new().await;
    let (trial, session) = begun(&desk, "2").await;
    let address = sits(&desk, &trial, session, "A. N.").await;
    let count = sessions(&desk, &trial)[0].sittings[0].order.len();
    // Four test pieces, two keepers' pairs, two repeats.
    assert_eq!(count, 8);
    let mut codes = std::collections::BTreeSet::new();
    for turn in 1..=count {
        let page = desk.get(&address).await;
        assert_eq!(page.status, StatusCode::OK);
        assert!(page.text.contains(&format!("pair {turn} of {count}")));
        let main = page.text.split("<main").nth(1).unwrap();
        // Blind codes are drawn, and may have the letters of a piece's code.
        let parts = main.split("<code>");
        let beside_codes: String = parts
            .map(|part| part.split_once("</code>").map_or(part, |(_, rest)| rest))
            .collect();
        for told in [
            "plain",
            "alum",
            "keeper",
            "A1",
            "A2",
            "AK",
            "B1",
            "B2",
            "BK",
            &trial.slug,
        ] {
            assert!(!beside_codes.contains(told), "{told} in {main}");
        }
        let fetched = main.split("<code>").skip(1).map(|rest| &rest[..7]);
        codes.extend(fetched.map(str::to_owned));
        assert_eq!(main.matches("name=\"grade\"").count(), 10);
        let answer = give(&desk, &address, turn, ["4", "3-4", "none"][turn % 3]).await;
        assert_eq!(answer.location(), address);
        let trial_page = desk.get(&format!("/trials/{}/eyes", trial.slug)).await;
        assert!(
            trial_page
                .text
                .contains(&format!("{turn} of {count} pairs"))
        );
        assert!(!trial_page.text.contains("Mean grade"));
    }
    // Four pieces, two keepers and the other halves of both.
    assert_eq!(codes.len(), 8);
    let done = desk.get(&address).await;
    assert!(done.text.contains("Done, thank you"));
    for page in ["", ".json", "/report"] {
        let page = desk.get(&format!("/trials/{}{page}", trial.slug)).await;
        assert_eq!(page.status, StatusCode::OK);
        assert!(!page.text.contains("Mean grades are"), "{}", page.text);
    }
}

#[tokio::test]
async fn the_last_grade_is_corrected_and_a_second_tap_changes_nothing() {
    let desk = Desk::new().await;
    let (trial, session) = begun(&desk, "").await;
    let address = sits(&desk, &trial, session, "A. N.").await;
    give(&desk, &address, 1, "4").await;
    give(&desk, &address, 2, "3").await;
    give(&desk, &address, 1, "1").await;
    let page = desk.get(&format!("{address}?last")).await;
    assert!(page.text.contains("You gave this pair 3."), "{}", page.text);
    give(&desk, &address, 2, "2-3").await;
    let own = sessions(&desk, &trial).remove(0).sittings.remove(0);
    let grades: Vec<String> = own.grades().map(|(_, grade)| grade.to_string()).collect();
    assert_eq!(grades, ["4", "2-3"]);
    for (turn, grade) in [(3, "6"), (3, "3.25"), (3, "NaN"), (3, ""), (0, "4")] {
        let answer = give(&desk, &address, turn, grade).await;
        assert_eq!(answer.status, StatusCode::BAD_REQUEST, "{grade}");
    }
    assert_eq!(desk.get("/judging/99").await.status, StatusCode::NOT_FOUND);
    assert_eq!(
        give(&desk, "/judging/99", 1, "4").await.status,
        StatusCode::NOT_FOUND
    );
}

#[tokio::test]
async fn a_closed_session_shows_verdict_and_agreement_and_takes_no_more() {
    let desk = Desk::new().await;
    let (trial, session) = begun(&desk, "2").await;
    let pieces: std::collections::HashMap<_, _> = trial
        .pieces
        .iter()
        .map(|p| (p.id, p.code.clone()))
        .collect();
    let mut last = String::new();
    for name in ["A. N.", "B. <O>"] {
        let address = sits(&desk, &trial, session, name).await;
        let judging = sessions(&desk, &trial).remove(0);
        let own = judging.sittings.last().unwrap();
        for (at, turn) in own.order.iter().enumerate() {
            let grade = match pieces[&judging.session.pairs[turn.pair].piece].as_str() {
                "A1" | "A2" => "2",
                "B1" | "B2" => "4-5",
                _ => "5",
            };
            give(&desk, &address, at + 1, grade).await;
        }
        last = address;
    }
    let close = format!("/trials/{}/eyes/{session}/close", trial.slug);
    let answer = desk.post_form(&close, &[]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    let page = desk.get(&format!("/trials/{}/eyes", trial.slug)).await;
    for expected in [
        "By eye:",
        "Mean grades are 2.00 for plain",
        "people with each other",
        "B. &#60;O&#62;",
        "Saw none where there was none.",
    ] {
        assert!(page.text.contains(expected), "{expected}: {}", page.text);
    }
    let shown = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(shown.text.contains("Judged by eye") && shown.text.contains("By eye:"));
    let report = desk.get(&format!("/trials/{}/report", trial.slug)).await;
    assert!(report.text.contains("By eye:") && report.text.contains("How far eyes agree"));
    let data = desk.get(&format!("/trials/{}.json", trial.slug)).await;
    let data: serde_json::Value = serde_json::from_str(&data.text).unwrap();
    assert_eq!(data["eyes"]["verdict"]["comparisons"][0]["judges"], 2);
    let late = give(&desk, &last, 1, "4").await;
    assert_eq!(late.status, StatusCode::BAD_REQUEST);
    assert!(late.text.contains("closed"), "{}", late.text);
}

#[tokio::test]
async fn what_cannot_be_is_said_where_it_was_typed() {
    let desk = Desk::new().await;
    let (trial, session) = begun(&desk, "2").await;
    let address = format!("/trials/{}/eyes", trial.slug);
    for (form, expected) in [
        (
            [("stage", "x"), ("way", "cloth"), ("repeats", "2")],
            "whole number",
        ),
        (
            [("stage", "5"), ("way", "smell"), ("repeats", "2")],
            "Choose whether",
        ),
        (
            [("stage", "5"), ("way", "cloth"), ("repeats", "-1")],
            "whole number up to 50",
        ),
        (
            [("stage", "5"), ("way", "screen"), ("repeats", "2")],
            "Nothing was read",
        ),
    ] {
        let answer = desk.post_form(&address, &form).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert!(
            answer.text.contains(expected),
            "{expected}: {}",
            answer.text
        );
    }
    sits(&desk, &trial, session, "A. N.").await;
    let judges = format!("{address}/{session}/judges");
    for (name, light, vision, expected) in [
        ("", "lamp", "normal", "Say who judges"),
        ("B", "", "normal", "Say under which light"),
        ("a. n.", "lamp", "normal", "judges in this session already"),
        ("B", "lamp", "sharp", "colour vision"),
    ] {
        let form = [("name", name), ("light", light), ("vision", vision)];
        let answer = desk.post_form(&judges, &form).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert!(
            answer.text.contains(expected),
            "{expected}: {}",
            answer.text
        );
        assert!(answer.text.contains(&format!(
            "value=\"{}\"",
            if name.is_empty() { light } else { name }
        )));
    }
    for path in ["/trials/nowhere/eyes", &format!("{address}/99/labels")] {
        assert_eq!(desk.get(path).await.status, StatusCode::NOT_FOUND);
    }
    let labels = desk
        .get(&format!("{address}/{session}/labels?paper=letter"))
        .await;
    assert!(labels.text.contains("215.9mm") && labels.text.contains("AK, half"));
}

#[tokio::test]
async fn staining_of_witness_cloths_gets_a_verdict_of_its_own() {
    let desk = Desk::new().await;
    let trial = {
        let mut new = crate::desk::question("Stains", false);
        for (arm, letter) in new.arms.iter_mut().zip(["A", "B"]) {
            arm.pieces.extend((1..=3).map(|n| NewPiece {
                code: format!("{letter}W{n}"),
                role: Role::Witness,
                load: None,
            }));
        }
        let mut bench = desk.bench.lock().unwrap();
        let id = bench.create_trial(&new, "2030-01-01T00:00:00Z").unwrap();
        bench.trial_by_id(id).unwrap().unwrap()
    };
    let address = format!("/trials/{}/eyes", trial.slug);
    let form = [
        ("stage", "5"),
        ("way", "cloth"),
        ("staining", "on"),
        ("repeats", "0"),
    ];
    desk.post_form(&address, &form).await;
    let session = sessions(&desk, &trial).remove(0).id;
    for name in ["A. N.", "B. O.", "C. P."] {
        let pairs = sits(&desk, &trial, session, name).await;
        let judging = sessions(&desk, &trial).remove(0);
        let own = judging.sittings.last().unwrap();
        for (at, turn) in own.order.iter().enumerate() {
            let graded = judging.session.pairs[turn.pair].piece;
            let code = &trial.piece(graded).unwrap().code;
            let grade = match (code.starts_with('A'), code.contains('W')) {
                (true, true) => "1-2",
                (false, true) => "4-5",
                (_, false) => "4",
            };
            give(&desk, &pairs, at + 1, grade).await;
        }
    }
    let close = format!("{address}/{session}/close");
    desk.post_form(&close, &[]).await;
    let stained = "plain has clearly stained its witness cloths more than alum";
    let report = format!("/trials/{}/report", trial.slug);
    for page in [address, format!("/trials/{}", trial.slug), report] {
        let text = desk.get(&page).await.text;
        for expected in [
            "<h3>Staining, by eye: visible difference",
            "<h3>By eye: ",
            stained,
            "Mean grades of staining are 1.50 for plain (3 witness cloths)",
            "ISO 105-A04",
        ] {
            assert!(
                text.contains(expected),
                "{expected} is not in {page}: {text}"
            );
        }
    }
    let data = desk.get(&format!("/trials/{}.json", trial.slug)).await.text;
    let data: serde_json::Value = serde_json::from_str(&data).unwrap();
    let found = &data["eyes"]["verdict"]["comparisons"];
    assert_eq!(found[0]["staining"], false);
    assert_eq!(
        (&found[1]["staining"], &found[1]["verdict"]),
        (&true.into(), &"visible".into())
    );
}
