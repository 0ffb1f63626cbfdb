//! `woadstone decide` over a table of grades judged by eye.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use std::process::{Command, Output};

const HEADER: &str = "arm,piece,role,load,stage,judge,grade\n";

fn decide(table: &str, more: &[&str]) -> Output {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("grades.csv");
    std::fs::write(&path, table).unwrap();
    Command::new(env!("CARGO_BIN_EXE_woadstone"))
        .args(["decide", "--margin", "1.0"])
        .arg(&path)
        .args(more)
        .output()
        .unwrap()
}

fn table() -> String {
    let mut text = HEADER.to_owned();
    for (arm, grades) in [("soak", ["4-5", "5", "4-5"]), ("plain", ["2", "2-3", "2"])] {
        for (i, grade) in grades.into_iter().enumerate() {
            for judge in ["A", "B", "C"] {
                text.push_str(&format!("{arm},{arm}{i},test,,5,{judge},{grade}\n"));
            }
        }
    }
    text
}

#[test]
fn a_verdict_comes_in_words_and_as_json() {
    let output = decide(&table(), &[]);
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(output.status.success(), "{text}");
    assert!(
        text.contains("judged by eye") && text.contains("visible"),
        "{text}"
    );
    let output = decide(&table(), &["--json"]);
    let found: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    let pair = &found["comparisons"][0];
    assert_eq!(
        (pair["verdict"].as_str(), pair["judges"].as_u64()),
        (Some("visible"), Some(3))
    );
    assert!(pair["low"].as_f64().unwrap() > pair["margin_grades"].as_f64().unwrap());
}

#[test]
fn one_piece_is_open_and_a_bad_table_is_refused_in_words() {
    let few: String = table()
        .lines()
        .filter(|l| !l.contains("plain1") && !l.contains("plain2"))
        .fold(String::new(), |t, l| t + l + "\n");
    let output = decide(&few, &[]);
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(
        text.contains("open") && text.contains("one piece of an arm"),
        "{text}"
    );
    assert!(text.contains(", 1 piece, 3 judges"), "{text}");
    assert!(text.contains(", 3 pieces, 3 judges"), "{text}");
    for (row, expected) in [
        ("soak,S9,test,,5,A,6", "\"6\" is no grade"),
        ("soak,soak0,test,,5,A,4", "already"),
    ] {
        let output = decide(&format!("{}{row}\n", table()), &[]);
        let said = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(3), "{said}");
        assert!(said.contains(expected) && said.contains("Row 19"), "{said}");
    }
}
