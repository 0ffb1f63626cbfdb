//! Staining of witness cloths judged by eye: verdicts by the grey scale for staining. The steps of the
//! scale are those of ISO 105-A03 (`docs/SOURCES.md`): dE*ab 2.2, 4.3, 6.0, 8.5, 12.0, 16.9, 24.0, 34.1
//! from grade 4-5 to 1.

use trial::{
    Role,
    decide::{DecideError, Verdict},
    eyes::{EyeComparison, EyeRow, FromEyes, decide, in_grades, in_grades_of_staining, read_csv},
};

/// Rows of one arm, each grade given by that many people.
fn rows(arm: &str, role: Role, grades: &[&str], judges: usize) -> Vec<EyeRow> {
    let cloths = grades.iter().enumerate();
    cloths
        .flat_map(|(at, grade)| {
            (0..judges).map(move |judge| EyeRow {
                arm: arm.into(),
                piece: format!("{arm}-{role}-{at}"),
                role,
                load: None,
                shares_load: false,
                stage: 5,
                judge: format!("J{judge}"),
                grade: grade.parse().expect("a grade"),
            })
        })
        .collect()
}

fn witnesses(a: &[&str], b: &[&str], judges: usize) -> Vec<EyeRow> {
    let mut all = rows("soak", Role::Witness, a, judges);
    all.extend(rows("plain", Role::Witness, b, judges));
    all
}

fn only(found: FromEyes) -> EyeComparison {
    let mut found = found.comparisons;
    assert_eq!(found.len(), 1);
    found.remove(0)
}

#[test]
fn the_four_verdicts_come_about_for_staining_too() {
    for (a, b, judges, margin, verdict, part) in [
        (
            &["4-5", "5", "4-5", "4-5"][..],
            &["2", "2-3", "2", "2"][..],
            3,
            2.0,
            Verdict::Visible,
            "plain has clearly stained its witness cloths more than soak",
        ),
        (
            &["4", "4-5", "4", "4", "4-5", "4"],
            &["4", "4-5", "4", "4", "4-5", "4"],
            4,
            4.0,
            Verdict::Alike,
            "have stained their witness cloths alike",
        ),
        (
            &["4", "4-5", "4", "4-5", "4", "4-5", "4", "4-5"],
            &["3-4", "4", "3-4", "4", "3-4", "4", "3-4", "4"],
            4,
            6.0,
            Verdict::Small,
            "a little more than soak, but by too little to matter",
        ),
        (
            &["4", "3-4"],
            &["3", "4"],
            2,
            1.0,
            Verdict::Open,
            "can't tell the stains of soak from those of plain",
        ),
        (
            &["5"],
            &["1"],
            4,
            1.0,
            Verdict::Open,
            "one witness cloth of an arm says nothing",
        ),
    ] {
        let found = only(decide(&witnesses(a, b, judges), margin).unwrap());
        assert!(found.staining && found.pieces == [a.len(), b.len()]);
        assert_eq!(found.verdict, verdict, "{}", found.reason);
        assert!(found.plain.contains(part), "{}", found.plain);
        let reason = &found.reason;
        assert!(reason.contains("Mean grades of staining are"), "{reason}");
        assert!(reason.contains("(ISO 105-A04)"), "{reason}");
        assert!(!reason.contains("faded") && !found.plain.contains("faded"));
        assert!(!reason.contains(" pieces per arm"), "{reason}");
    }
}

/// Two steps of the scale that lie `d_e` apart by the standard are a half-step apart: a margin of
/// that much more than decides, half of it doesn't.
#[test]
fn the_margin_goes_by_the_steps_of_the_scale() {
    let steps = [
        ("3-4", 6.0, "3", 8.5),
        ("2-3", 12.0, "2", 16.9),
        ("1-2", 24.0, "1", 34.1),
    ];
    for (paler, d_e, deeper, next) in steps {
        let found = only(decide(&witnesses(&[paler; 8], &[deeper; 8], 4), next - d_e).unwrap());
        assert!((found.difference - 0.5).abs() < 1e-9);
        let margin = found.margin_grades;
        assert!((margin - 0.5).abs() < 0.05, "{paler}: {margin}");
        assert_ne!(found.verdict, Verdict::Visible, "{}", found.reason);
    }
    // From 3-4 to 2 lie 10.9 units: a margin of a quarter of that is passed.
    let far = only(decide(&witnesses(&["3-4"; 8], &["2"; 8], 4), 10.9 / 4.0).unwrap());
    assert_eq!(far.verdict, Verdict::Visible, "{}", far.reason);
    // Near 5 a unit is less of a grade than on the scale for change.
    assert!(in_grades_of_staining(1.0, 4.8) < in_grades(1.0, 4.8));
}

#[test]
fn change_and_staining_leave_each_other_alone() {
    let mut both = rows("soak", Role::Test, &["4-5", "4-5", "5", "4-5"], 3);
    both.extend(rows("plain", Role::Test, &["2", "2-3", "2", "2"], 3));
    let change = only(decide(&both, 1.0).unwrap());
    let staining = witnesses(&["4", "4-5", "4"], &["4", "4-5", "4"], 3);
    both.extend(staining.clone());
    let found = decide(&both, 1.0).unwrap();
    assert_eq!(
        found.comparisons,
        [change, only(decide(&staining, 1.0).unwrap())]
    );
    let order: Vec<bool> = found.comparisons.iter().map(|c| c.staining).collect();
    assert_eq!(order, [false, true]);
    // An arm without witnesses is compared by change alone.
    both.retain(|row| row.arm == "soak" || row.role == Role::Test);
    assert!(!only(decide(&both, 1.0).unwrap()).staining);
}

#[test]
fn a_witness_that_washed_with_another_arm_decides_nothing() {
    let mut all = witnesses(&["4-5", "5", "4-5"], &["2", "2-3", "2"], 3);
    for row in &mut all {
        row.load = Some(format!("wash of {}", row.arm));
    }
    let apart = only(decide(&all, 2.0).unwrap());
    assert_eq!(apart.verdict, Verdict::Visible);
    assert!(
        !apart.reason.contains("whose dye may be"),
        "{}",
        apart.reason
    );
    // Pieces of another arm were in it that nobody judged.
    all[0].shares_load = true;
    let unjudged = only(decide(&all, 2.0).unwrap());
    assert_eq!(unjudged.verdict, Verdict::Open);
    all[0].shares_load = false;
    for row in &mut all {
        row.load = Some("one wash".into());
    }
    let found = only(decide(&all, 2.0).unwrap());
    assert_eq!(found.verdict, Verdict::Open);
    assert!(found.plain.contains("a load of its own"), "{}", found.plain);
    let reason = &found.reason;
    assert!(
        reason.contains("whose dye may be what stained it"),
        "{reason}"
    );
}

#[test]
fn people_who_judged_different_arms_decide_nothing() {
    let mut all = witnesses(&["4-5", "5", "4-5"], &["2", "2-3", "2"], 1);
    for row in &mut all {
        row.judge.clone_from(&row.arm);
    }
    let found = only(decide(&all, 2.0).unwrap());
    assert_eq!(found.verdict, Verdict::Open);
    assert!(
        found.reason.contains("witness cloths of both"),
        "{}",
        found.reason
    );
}

#[test]
fn a_table_tells_staining_by_its_role() {
    let table = "arm,piece,role,load,stage,judge,grade\n\
        soak,W1,witness,,5,A,4-5\nsoak,W2,witness,,5,A,5\n\
        plain,W3,witness,,5,A,2\nplain,W4,witness,,5,A,1-2\n";
    let found = only(decide(&read_csv(table.as_bytes()).unwrap(), 2.0).unwrap());
    assert!(found.staining && found.grades == [4.75, 1.75]);
    let json = serde_json::to_string(&found).unwrap();
    assert_eq!(serde_json::from_str::<EyeComparison>(&json).unwrap(), found);
    // What was kept before stains were compared was change.
    let earlier = json.replace("\"staining\":true,", "");
    assert!(
        !serde_json::from_str::<EyeComparison>(&earlier)
            .unwrap()
            .staining
    );
    // Keepers alone are nothing to decide by.
    let keepers = table.replace("witness", "keeper");
    let refused = read_csv(keepers.as_bytes()).unwrap_err();
    assert!(matches!(refused, DecideError::NothingJudged));
}
