//! Blind sessions: an order of one's own, every grade at once on disk, corrections added.

use crate::desk::{Desk, LATER, NOW};
use store::StoreError;
use trial::{
    NewArm, NewPiece, NewTrial, Role, Trial,
    eyes::{Given, Judge, PairKind, Vision, Way, What, Wish},
};

fn trial(desk: &mut Desk) -> Trial {
    let arm = |name: &str, letter: &str, keepers: usize| NewArm {
        name: name.into(),
        treatment: String::new(),
        pieces: [Role::Test; 3]
            .into_iter()
            .chain([Role::Keeper, Role::Keeper].into_iter().take(keepers))
            .chain([Role::Witness])
            .enumerate()
            .map(|(i, role)| NewPiece {
                code: format!("{letter}{i}"),
                role,
                load: None,
            })
            .collect(),
    };
    let new = NewTrial {
        title: "Soaked or not".into(),
        question: "Does it last?".into(),
        margin_de00: 1.0,
        rounds: 5,
        invented: false,
        method: String::new(),
        arms: vec![arm("soak", "S", 2), arm("plain", "P", 1)],
    };
    let id = desk.bench.create_trial(&new, NOW).unwrap();
    desk.bench.trial_by_id(id).unwrap().unwrap()
}

const WISH: Wish = Wish {
    stage: 5,
    way: Way::Cloth,
    staining: true,
    catch: true,
    repeats: 2,
};

fn judge(name: &str) -> Judge {
    Judge {
        name: name.into(),
        light: "north window".into(),
        vision: Vision::Normal,
        distance: "40 cm".into(),
    }
}

fn given(grade: &str) -> Given {
    Given {
        grade: (!grade.is_empty()).then(|| grade.parse().unwrap()),
        remark: "  streaky ".into(),
        made_at: LATER.into(),
    }
}

#[test]
fn a_break_loses_nothing_and_a_correction_is_added() {
    let mut desk = Desk::new();
    let trial = trial(&mut desk);
    let session = desk.bench.begin_eye_session(&trial, &WISH, 7, NOW).unwrap();
    let sitting = desk
        .bench
        .begin_sitting(session, judge(" A. N. "), 11, NOW)
        .unwrap();
    let (of, before) = desk.bench.session_of_sitting(sitting).unwrap().unwrap();
    assert_eq!(of, trial.id);
    // Six test pieces, two keepers' pairs, two witnesses and two repeats.
    let order = before.sittings[0].order.clone();
    assert_eq!(order.len(), 12);
    desk.bench.give_grade(sitting, 0, &given("4-5")).unwrap();
    desk.bench.give_grade(sitting, 1, &given("3")).unwrap();
    // Sent twice, too early, far too late.
    desk.bench.give_grade(sitting, 0, &given("1")).unwrap();
    desk.bench.give_grade(sitting, 5, &given("1")).unwrap();
    desk.bench.give_grade(sitting, 99, &given("1")).unwrap();
    let mut desk = desk.restart();
    desk.bench.give_grade(sitting, 1, &given("")).unwrap();
    desk.bench.give_grade(sitting, 2, &given("2")).unwrap();
    let desk = desk.restart();
    let (_, judging) = desk.bench.session_of_sitting(sitting).unwrap().unwrap();
    let own = &judging.sittings[0];
    assert_eq!((own.judge.name.as_str(), own.done()), ("A. N.", 3));
    assert_eq!((own.next(), &own.order), (Some(3), &order));
    let grades: Vec<_> = own.given[..3]
        .iter()
        .map(|one| one.as_ref().unwrap().grade.map(|grade| grade.to_string()))
        .collect();
    assert_eq!(grades, [Some("4-5".into()), None, Some("2".into())]);
    assert_eq!(own.given[0].as_ref().unwrap().remark, "streaky");
    let rows: i64 = desk
        .database()
        .query_row("SELECT count(*) FROM eye_turn", [], |row| row.get(0))
        .unwrap();
    assert_eq!(rows, 4, "the corrected grade is still there");
}

#[test]
fn everybody_has_an_order_of_their_own_and_a_closed_session_takes_nobody() {
    let mut desk = Desk::new();
    let trial = trial(&mut desk);
    let session = desk.bench.begin_eye_session(&trial, &WISH, 7, NOW).unwrap();
    for (name, seed) in [("A. N.", 1), ("B. O.", 2)] {
        desk.bench
            .begin_sitting(session, judge(name), seed, NOW)
            .unwrap();
    }
    let kept = desk.bench.eye_sessions(trial.id).unwrap().remove(0);
    assert_ne!(kept.sittings[0].order, kept.sittings[1].order);
    let again = desk.bench.begin_sitting(session, judge("a. n."), 3, NOW);
    assert!(matches!(again, Err(StoreError::Trial(_))), "{again:?}");
    for (odd, field) in [
        (judge(""), "name"),
        (
            Judge {
                light: " ".into(),
                ..judge("C")
            },
            "light",
        ),
        (judge(&"x".repeat(401)), "name"),
    ] {
        match desk.bench.begin_sitting(session, odd, 3, NOW) {
            Err(StoreError::Trial(error)) => assert_eq!(error.field, field),
            other => panic!("{other:?}"),
        }
    }
    assert!(desk.bench.begin_sitting(99, judge("C"), 3, NOW).is_err());
    let results = |desk: &Desk| desk.bench.results(&trial.slug).unwrap().unwrap();
    let sitting = kept.sittings[0].id;
    desk.bench.give_grade(sitting, 0, &given("4")).unwrap();
    let eyes = results(&desk).eyes.unwrap();
    assert_eq!((eyes.open, eyes.agreement.len()), (1, 0));
    assert!(eyes.verdict.is_none(), "nothing is told while it is open");
    desk.bench
        .close_eye_session(trial.id, session, LATER)
        .unwrap();
    desk.bench
        .close_eye_session(trial.id, session, NOW)
        .unwrap();
    let kept = desk.bench.eye_sessions(trial.id).unwrap().remove(0);
    assert_eq!(kept.closed_at.as_deref(), Some(LATER));
    assert!(desk.bench.give_grade(sitting, 1, &given("4")).is_err());
    assert!(
        desk.bench
            .begin_sitting(session, judge("D"), 3, NOW)
            .is_err()
    );
    let eyes = results(&desk).eyes.unwrap();
    assert_eq!((eyes.open, eyes.agreement.len()), (0, 1));
}

#[test]
fn codes_tell_cloths_apart_and_halves_of_one_keeper_too() {
    let mut desk = Desk::new();
    let trial = trial(&mut desk);
    desk.bench.begin_eye_session(&trial, &WISH, 7, NOW).unwrap();
    let session = desk.bench.eye_sessions(trial.id).unwrap().remove(0).session;
    let cloths = session.cloths();
    // Six tests, three keepers and one half, two witnesses and the undyed cloth.
    assert_eq!(cloths.len(), 13);
    let halves = cloths
        .iter()
        .filter(|cloth| matches!(cloth.what, What::OtherHalf(_)));
    assert_eq!(halves.count(), 1, "soak has a second keeper");
    for pair in &session.pairs {
        assert_ne!(pair.cloths[0].code, pair.cloths[1].code, "{pair:?}");
        assert!(pair.labs.is_none());
    }
    let catch = session.pairs.iter().filter(|p| p.kind == PairKind::Catch);
    assert_eq!(catch.count(), 2);
    // On a screen there is nothing to show yet.
    let screen = Wish {
        way: Way::Screen,
        ..WISH
    };
    match desk.bench.begin_eye_session(&trial, &screen, 7, NOW) {
        Err(StoreError::Trial(error)) => assert_eq!(error.field, "way"),
        other => panic!("{other:?}"),
    }
}
