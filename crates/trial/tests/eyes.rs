//! Grades judged by eye: tables sound and spoilt, verdicts, agreement.

use colour::grade::Grade;
use proptest::prelude::*;
use trial::{
    Arm, ArmId, EyeGrade, EyeGradeId, GreyScale, Judged, Piece, PieceId, Reading, ReadingId, Role,
    Source, Trial, TrialId,
    decide::{DecideError, Verdict},
    eyes::{
        EyeRow, Eyes, Given, Judge, Judging, Session, Sitting, Turn, Vision, Way, Wish, decide,
        order, read_csv,
    },
};

const HEADER: &str = "arm,piece,role,load,stage,judge,grade\n";

fn rows(a: &[&str], b: &[&str], judges: usize) -> Vec<EyeRow> {
    let mut rows = Vec::new();
    for (arm, grades) in [("soak", a), ("plain", b)] {
        for (i, grade) in grades.iter().enumerate() {
            for judge in 0..judges {
                rows.push(EyeRow {
                    arm: arm.into(),
                    piece: format!("{arm}{i}"),
                    role: Role::Test,
                    load: None,
                    shares_load: false,
                    stage: 5,
                    judge: format!("J{judge}"),
                    grade: grade.parse().expect("a grade"),
                });
            }
        }
    }
    rows
}

fn verdict(a: &[&str], b: &[&str], judges: usize, margin: f64) -> (Verdict, String, String) {
    let found = decide(&rows(a, b, judges), margin)
        .expect("two sound arms")
        .comparisons
        .remove(0);
    (found.verdict, found.plain, found.reason)
}

#[test]
fn the_four_verdicts_come_about() {
    let (found, plain, reason) =
        verdict(&["4-5", "5", "4-5", "4-5"], &["2", "2-3", "2", "2"], 3, 1.0);
    assert_eq!(found, Verdict::Visible);
    assert!(
        plain.contains("plain has clearly faded further than soak"),
        "{plain}"
    );
    assert!(
        reason.contains("1.00 CIEDE2000") || reason.contains("margin of 1.0"),
        "{reason}"
    );
    assert!(reason.contains("Of all 70 ways"), "{reason}");
    let same = ["4", "4-5", "4", "4", "4-5", "4"];
    let (found, plain, reason) = verdict(&same, &same, 4, 2.0);
    assert_eq!(found, Verdict::Alike, "{reason}");
    assert!(plain.contains("equally far"), "{plain}");
    assert!(reason.contains("not in which direction"), "{reason}");
    let (found, _, reason) = verdict(
        &["4", "4-5", "4", "4-5", "4", "4-5", "4", "4-5"],
        &["3-4", "4", "3-4", "4", "3-4", "4", "3-4", "4"],
        4,
        2.5,
    );
    assert_eq!(found, Verdict::Small, "{reason}");
    let (found, plain, reason) = verdict(&["4", "3-4"], &["3", "4"], 2, 1.0);
    assert_eq!(found, Verdict::Open);
    assert!(plain.contains("question as open"), "{plain}");
    assert!(
        reason.contains("would probably settle it") || reason.contains("might not settle"),
        "{reason}"
    );
}

#[test]
fn pairs_of_one_stage_are_weighed_together() {
    let far = ["2", "2-3", "2", "2"];
    let mut all = rows(&["4-5", "5", "4-5", "4-5"], &far, 3);
    let mut third = rows(&["4-5", "4-5", "5", "4-5"], &far, 3);
    third.retain(|row| row.arm == "soak");
    for row in &mut third {
        row.arm = "rinse".into();
        row.piece = row.piece.replace("soak", "rinse");
    }
    all.extend(third);
    let found = decide(&all, 1.0).unwrap().comparisons;
    assert_eq!(found.len(), 3);
    for pair in found.iter().filter(|pair| pair.verdict == Verdict::Visible) {
        assert!(
            pair.reason.contains("weighed together (Holm)"),
            "{}",
            pair.reason
        );
    }
    assert_eq!(
        found
            .iter()
            .filter(|pair| pair.verdict == Verdict::Visible)
            .count(),
        2
    );
}

#[test]
fn one_piece_of_an_arm_is_open_however_far_apart() {
    let (found, plain, _) = verdict(&["5"], &["1", "1", "1", "1"], 4, 1.0);
    assert_eq!(found, Verdict::Open);
    assert!(plain.contains("one piece of an arm"), "{plain}");
    let found = decide(&rows(&["5"], &["1"], 4), 1.0)
        .unwrap()
        .comparisons
        .remove(0);
    assert_eq!(
        (found.verdict, found.low, found.high),
        (Verdict::Open, -4.0, 4.0)
    );
}

#[test]
fn one_judge_is_said_to_be_one() {
    let (found, _, reason) = verdict(&["4-5", "5", "4-5", "4-5"], &["2", "2", "2", "2-3"], 1, 1.0);
    assert_eq!(found, Verdict::Visible);
    assert!(reason.contains("One person judged"), "{reason}");
    let same = ["4", "4", "4", "4"];
    assert_eq!(
        verdict(&same, &same, 1, 1.0).0,
        Verdict::Open,
        "grades that are all the same hide half-steps"
    );
}

/// A person who looked twice is one person, in the mean of an arm as in the verdict on it.
#[test]
fn means_of_arms_are_those_of_the_verdict() {
    let grades = ["4", "4", "4", "4"];
    let mut rows = rows(&grades, &grades, 2);
    let again = EyeRow {
        grade: "3".parse().unwrap(),
        ..rows[0].clone()
    };
    rows.push(again);
    let found = decide(&rows, 1.0).unwrap();
    // One piece of four: 3.5 of who looked twice, 4 of the other.
    assert_eq!(found.arms[0].grade, (3.0 * 4.0 + 3.75) / 4.0);
    assert!((found.comparisons[0].grades[0] - found.arms[0].grade).abs() < 1e-9);
}

#[test]
fn different_judges_for_each_arm_compare_nothing() {
    let mut all = rows(&["4", "4"], &["2", "2"], 1);
    for row in all.iter_mut().filter(|row| row.arm == "plain") {
        row.judge = "Z".into();
    }
    let found = decide(&all, 1.0).unwrap().comparisons.remove(0);
    assert_eq!(found.verdict, Verdict::Open);
    assert!(found.reason.contains("strict"), "{}", found.reason);
}

#[test]
fn loads_of_their_own_are_the_units() {
    let mut all = rows(&["5", "4-5", "5", "4-5"], &["2", "2", "2-3", "2"], 2);
    for row in &mut all {
        row.load = Some(format!("{} wash", row.arm));
    }
    let found = decide(&all, 1.0).unwrap().comparisons.remove(0);
    assert!(
        found.reason.contains("can't tell which"),
        "{}",
        found.reason
    );
    for row in &mut all {
        let half = row.piece.ends_with(['0', '1']);
        row.load = Some(format!("{} wash {half}", row.arm));
    }
    let found = decide(&all, 1.0).unwrap().comparisons.remove(0);
    assert!(
        found.reason.contains("Loads, not pieces"),
        "{}",
        found.reason
    );
}

#[test]
fn tables_as_people_save_them_are_taken() {
    for table in [
        format!("\u{feff}{HEADER}soak,S1,Test,,5,A,4-5\r\n\r\nsoak,S2,test,,5,A,\r\n"),
        "Judge;Grade;Arm;Piece;Role;Load;Stage\nA;4,5;soak;S1;test;;5\n".into(),
        "arm\tpiece\trole\tload\tstage\tjudge\tgrade\tnote\nsoak\tS1\ttest\t\t5\tA\t4/5\tdry\n"
            .into(),
    ] {
        let found = read_csv(table.as_bytes()).unwrap();
        assert_eq!(found.len(), 1, "{table}");
        assert_eq!(found[0].grade, Grade::from_half_steps(9));
    }
}

#[test]
fn what_is_wrong_with_a_table_is_said_with_its_row() {
    let good = "soak,S1,test,,5,A,4\n";
    for (row, expected) in [
        ("soak,S2,test,,5,A,6", "\"6\" is no grade"),
        ("soak,S2,test,,5,A,3.25", "\"3.25\" is no grade"),
        ("soak,S2,test,,5,A,NaN", "\"NaN\" is no grade"),
        ("soak,S2,test,,5,A,inf", "\"inf\" is no grade"),
        ("soak,S2,test,,5,A,-4", "\"-4\" is no grade"),
        ("soak,S2,test,,5,A,04-May", "write it as 4.5"),
        ("soak,S2,swatch,,5,A,4", "the role \"swatch\" is not known"),
        ("soak,S2,test,,after,A,4", "the stage is \"after\""),
        ("soak,S2,test,,-1,A,4", "the stage is \"-1\""),
        ("soak,S2,test,,5,,4", "the judge is empty"),
        (",S2,test,,5,A,4", "the arm is empty"),
        ("soak,S1,test,,5,a,3", "in row 1 already"),
        ("plain,S1,test,,5,B,3", "in arm soak before"),
        ("soak,S1,keeper,,5,B,3", "one role"),
    ] {
        let error = read_csv(format!("{HEADER}{good}{row}\n").as_bytes())
            .unwrap_err()
            .to_string();
        assert!(error.contains(expected), "{row}: {error}");
        assert!(error.contains("Row 2"), "{row}: {error}");
    }
    for (table, expected) in [
        ("", "no grade"),
        (HEADER, "no grade"),
        ("arm,piece,role,load,stage,grade\n", "no column \"judge\""),
        (
            "arm,piece,role,load,stage,judge,grade,grade\n",
            "\"grade\" twice",
        ),
        (
            "arm,piece,role,load,stage,judge,grade\nsoak,S1,keeper,,5,A,5\n",
            "role test",
        ),
        (
            "arm,piece,role,load,stage,judge,grade\nsoak,S1,test,,5,A,\n",
            "no grade",
        ),
    ] {
        let error = read_csv(table.as_bytes()).unwrap_err().to_string();
        assert!(error.contains(expected), "{table:?}: {error}");
    }
    assert!(matches!(
        read_csv(&b"arm\xff"[..]),
        Err(DecideError::Unreadable(_))
    ));
    let two = rows(&["4", "4"], &["3", "3"], 1);
    for margin in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(matches!(decide(&two, margin), Err(DecideError::Margin(_))));
    }
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused(text in ".{0,200}") {
        let _ = read_csv(text.as_bytes());
    }

    #[test]
    fn the_order_of_rows_and_arms_changes_nothing(
        grades in prop::collection::vec(2_u8..11, 12),
        turn in 0_usize..24,
    ) {
        let text: Vec<String> = grades.iter().map(|g| Grade::from_half_steps(*g).to_string()).collect();
        let text: Vec<&str> = text.iter().map(String::as_str).collect();
        let all = rows(&text[..6], &text[6..], 2);
        let mut turned = all.clone();
        turned.rotate_left(turn);
        let (one, other) = (decide(&all, 1.5).unwrap(), decide(&turned, 1.5).unwrap());
        let (one, other) = (&one.comparisons[0], &other.comparisons[0]);
        prop_assert_eq!(one.verdict, other.verdict);
        let sign = if one.a == other.a { 1.0 } else { -1.0 };
        prop_assert!((one.difference - sign * other.difference).abs() < 1e-9);
        prop_assert!((one.high - one.low - other.high + other.low).abs() < 1e-9);
        prop_assert!(one.low <= one.difference && one.difference <= one.high);
    }
}

fn trial() -> Trial {
    let mut pieces = Vec::new();
    for arm in 0..2_i64 {
        for (i, role) in [
            Role::Test,
            Role::Test,
            Role::Test,
            Role::Keeper,
            Role::Witness,
        ]
        .into_iter()
        .enumerate()
        {
            let id = 10 * arm + i as i64;
            pieces.push(Piece {
                id: PieceId(id),
                arm: ArmId(arm),
                code: format!("{}{i}", ["S", "P"][arm as usize]),
                tag: photo::board::Code::from_number(id as u32),
                role,
                load: None,
            });
        }
    }
    Trial {
        id: TrialId(1),
        slug: "t".into(),
        title: "t".into(),
        question: "?".into(),
        margin_de00: 1.0,
        rounds: 5,
        invented: true,
        made_at: "2020-01-01T00:00:00Z".into(),
        method: String::new(),
        arms: ["soak", "plain"]
            .into_iter()
            .enumerate()
            .map(|(i, name)| Arm {
                id: ArmId(i as i64),
                name: name.into(),
                treatment: String::new(),
            })
            .collect(),
        pieces,
    }
}

fn session(way: Way, readings: &[Reading]) -> Session {
    let wish = Wish {
        stage: 5,
        way,
        staining: true,
        catch: true,
        repeats: 3,
    };
    Session::of(&trial(), readings, &wish, &Default::default(), 4).expect("a sound trial")
}

/// A sitting in which every turn gets the grade that `grade` gives its piece.
fn sitting(session: &Session, id: i64, grade: impl Fn(usize, &Turn) -> &'static str) -> Sitting {
    let turns = order(session, id as u64);
    Sitting {
        id,
        judge: Judge {
            name: format!("J{id}"),
            light: "window".into(),
            vision: Vision::Normal,
            distance: String::new(),
        },
        given: turns
            .iter()
            .enumerate()
            .map(|(at, turn)| {
                let grade = grade(at, turn);
                Some(Given {
                    grade: (!grade.is_empty()).then(|| grade.parse().expect("a grade")),
                    remark: String::new(),
                    made_at: String::new(),
                })
            })
            .collect(),
        order: turns,
        begun_at: String::new(),
    }
}

fn judging(session: Session, sittings: Vec<Sitting>) -> Judging {
    Judging {
        id: 1,
        session,
        sittings,
        begun_at: String::new(),
        closed_at: Some("2020-01-02T00:00:00Z".into()),
    }
}

fn reading(piece: i64, stage: u32, lab: [f64; 3]) -> Reading {
    Reading {
        id: ReadingId(100 * i64::from(stage) + piece),
        piece: PieceId(piece),
        photo: None,
        stage,
        lab,
        cov: [[0.01, 0.0, 0.0], [0.0, 0.01, 0.0], [0.0, 0.0, 0.01]],
        pixels: 0,
        split: None,
        view: "D65/10".into(),
        source: Source::Lab,
        origin: None,
        notes: Vec::new(),
        made_at: String::new(),
    }
}

/// The pair's piece tells the grade: soaked ones change less, keepers and witnesses not.
fn usual(session: &Session, turn: &Turn) -> &'static str {
    match session.pairs[turn.pair].piece.0 {
        0..=2 => "4-5",
        10..=12 => ["3", "2-3", "3"][(session.pairs[turn.pair].piece.0 - 10) as usize],
        3 | 13 => "5",
        _ => "4",
    }
}

#[test]
fn a_closed_session_gives_a_verdict_and_tells_how_eyes_agree() {
    let session = session(Way::Cloth, &[]);
    let sittings = vec![
        sitting(&session, 1, |_, turn| usual(&session, turn)),
        sitting(&session, 2, |_, turn| usual(&session, turn)),
        sitting(&session, 3, |at, turn| match usual(&session, turn) {
            "5" => "3-4",
            _ if at == 0 => "",
            other => other,
        }),
    ];
    let kept = judging(session.clone(), sittings);
    let eyes = Eyes::of(&trial(), std::slice::from_ref(&kept), &[], &[]).unwrap();
    let verdict = eyes.verdict.unwrap();
    // By change of the pieces, and by staining of the witnesses, of which each arm has one.
    let staining: Vec<_> = verdict.comparisons.iter().map(|c| c.staining).collect();
    assert_eq!(staining, [false, true]);
    let stained = &verdict.comparisons[1];
    assert!(stained.verdict == Verdict::Open && stained.pieces == [1, 1]);
    assert_eq!(
        verdict.comparisons[0].verdict,
        Verdict::Visible,
        "{}",
        verdict.comparisons[0].reason
    );
    assert_eq!(verdict.comparisons[0].judges, 3);
    // Arms come in the trial's order, whatever came first in a sitting.
    let arms = [&verdict.comparisons[0].a, &verdict.comparisons[0].b];
    assert_eq!(arms, ["soak", "plain"]);
    assert!(
        verdict
            .arms
            .iter()
            .any(|arm| arm.staining && arm.grade == 4.0)
    );
    assert!(eyes.not_blind.is_empty());
    let agreement = &eyes.agreement[0];
    assert_eq!(agreement.people.judges, 3);
    assert_eq!(agreement.people.pairs, 8, "test pieces and witnesses");
    assert!(agreement.people.value.unwrap() > 0.9);
    assert!(
        agreement
            .repeats
            .iter()
            .all(|own| own.same == own.pairs && own.sd == 0.0)
    );
    let fails: Vec<bool> = agreement.catch_pairs.iter().map(|own| own.fails).collect();
    assert_eq!(fails, [false, false, true]);
    assert_eq!(
        (
            agreement.catch_pairs[2].seen,
            agreement.catch_pairs[2].pairs
        ),
        (2, 2)
    );
    assert!(agreement.with_instrument.is_empty());

    let open = Judging {
        closed_at: None,
        ..kept
    };
    let eyes = Eyes::of(&trial(), &[open], &[], &[]).unwrap();
    assert!(eyes.verdict.is_none() && eyes.agreement.is_empty());
    assert_eq!(eyes.open, 1);
    assert!(Eyes::of(&trial(), &[], &[], &[]).is_none());
}

#[test]
fn what_was_seen_on_a_screen_is_never_mixed_in() {
    let trial_pieces = trial().pieces;
    let all = trial_pieces.iter().flat_map(|piece| {
        let l = 40.0 + if piece.id.0 >= 10 { 6.8 } else { 0.8 };
        let test = piece.role == Role::Test;
        let now = [if test { l } else { 40.0 }, 20.0, 5.0];
        [
            reading(piece.id.0, 0, [40.0, 20.0, 5.0]),
            reading(piece.id.0, 5, now),
        ]
    });
    let readings: Vec<Reading> = all.collect();
    let session = session(Way::Screen, &readings);
    assert!(session.pairs.iter().all(|pair| pair.labs.is_some()));
    let sittings = vec![
        sitting(&session, 1, |_, turn| usual(&session, turn)),
        sitting(&session, 2, |_, turn| usual(&session, turn)),
    ];
    let kept = judging(session, sittings);
    let eyes = Eyes::of(&trial(), &[kept], &[], &readings).unwrap();
    assert!(eyes.verdict.is_none());
    let beside: Vec<_> = eyes.agreement[0]
        .with_instrument
        .iter()
        .filter(|own| !own.staining)
        .collect();
    // The scale's own steps in lightness: 0.8 is grade 4-5 and 6.8 is grade 2 (ISO 105-A02).
    assert_eq!(beside[0].pairs, 6);
    let expected = (3.0 - 2.0 + 2.5 - 2.0 + 3.0 - 2.0) / 6.0;
    assert!(
        (beside[0].mean - expected).abs() < 1e-9,
        "{}",
        beside[0].mean
    );
    assert!(beside[0].mean_interval.is_some() && beside[0].kappa.value.is_some());
}

#[test]
fn grades_given_one_by_one_count_where_no_session_was_and_are_said_not_to_be_blind() {
    let grade = |piece: i64, scale: GreyScale, grade: &str| EyeGrade {
        id: EyeGradeId(piece),
        judged: Judged {
            piece: PieceId(piece),
            stage: 5,
            scale,
            grade: grade.into(),
            against: None,
            by: "A. N.".into(),
            light: "window".into(),
            on: String::new(),
            remark: String::new(),
        },
        made_at: String::new(),
    };
    let single: Vec<EyeGrade> = [
        (0, "4-5"),
        (1, "4-5"),
        (2, "5"),
        (10, "2"),
        (11, "2"),
        (12, "2-3"),
    ]
    .into_iter()
    .map(|(piece, text)| grade(piece, GreyScale::Change, text))
    // A keeper's change and a test piece's staining are none.
    .chain([
        grade(3, GreyScale::Change, "1"),
        grade(0, GreyScale::Staining, "1"),
    ])
    .collect();
    let eyes = Eyes::of(&trial(), &[], &single, &[]).unwrap();
    assert_eq!(eyes.not_blind, [5]);
    let found = &eyes.verdict.unwrap().comparisons[0];
    assert_eq!((found.verdict, found.pieces), (Verdict::Visible, [3, 3]));
    let session = session(Way::Cloth, &[]);
    let sittings = vec![sitting(&session, 1, |_, _| "4")];
    let eyes = Eyes::of(&trial(), &[judging(session, sittings)], &single, &[]).unwrap();
    assert!(eyes.not_blind.is_empty());
    assert_ne!(
        eyes.verdict.unwrap().comparisons[0].verdict,
        Verdict::Visible
    );
}

#[test]
fn a_trial_without_keepers_has_no_pairs() {
    let mut bare = trial();
    bare.pieces.retain(|piece| piece.role != Role::Keeper);
    let wish = Wish {
        stage: 5,
        way: Way::Cloth,
        staining: true,
        catch: true,
        repeats: 0,
    };
    let error = Session::of(&bare, &[], &wish, &Default::default(), 1).unwrap_err();
    assert!(error.message.contains("keeper"), "{error}");
    bare.pieces = trial()
        .pieces
        .into_iter()
        .filter(|p| p.id != PieceId(3))
        .collect();
    let session = Session::of(&bare, &[], &wish, &Default::default(), 1).unwrap();
    assert!(
        session.notes[0].contains("soak has no keeper"),
        "{:?}",
        session.notes
    );
}
