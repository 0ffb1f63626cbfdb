//! `woadstone plan` with files that can't be read: our own sentence, the line, the parser's words last.

use std::process::Command;

/// What the command says of a file with that text, and its exit code.
fn said(text: &str, more: &[&str]) -> (Option<i32>, String) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("mine.toml");
    std::fs::write(&file, text).expect("a file");
    let done = Command::new(env!("CARGO_BIN_EXE_woadstone"))
        .arg("plan")
        .arg(&file)
        .args(more)
        .output()
        .expect("it runs");
    (
        done.status.code(),
        String::from_utf8_lossy(&done.stderr).into_owned(),
    )
}

#[test]
fn a_plan_that_cant_be_read_is_told_of_in_sentences() {
    let plan = include_str!("../../../docs/plans/two-arms.toml");
    let broken = plan.replacen("rounds = ", "rounds = five # ", 1);
    assert_ne!(broken, plan);
    let line = 1 + broken.lines().position(|l| l.contains("five")).unwrap();
    let (code, words) = said(&broken, &[]);
    assert_eq!(code, Some(3), "{words}");
    let lines: Vec<&str> = words.lines().collect();
    assert!(lines[0].contains(&format!(
        "mine.toml: line {line} of the plan can't be used, at character 10: text needs quotation marks"
    )));
    assert!(lines[1].starts_with("  rounds = five"), "{words}");
    assert_eq!(lines[2].find('^'), Some(11), "{words}");
    assert!(lines[3].starts_with("The parser says: "), "{words}");
    assert_eq!(lines.len(), 4, "{words}");
    let (code, words) = said("question = \"Why?\"\nbugdet = 3", &["--propose"]);
    assert_eq!(code, Some(3), "{words}");
    assert!(words.contains("line 2 of the enquiry"), "{words}");
    assert!(words.contains("there is no entry bugdet here."), "{words}");
}
