//! Entering trials and getting them back.

use crate::desk::{Desk, LATER, NOW, rinses};
use proptest::prelude::*;
use store::Place;
use trial::{NewArm, NewPiece, NewTrial, Role, Trial};

/// What was entered, from what came back.
fn entered(trial: &Trial) -> NewTrial {
    NewTrial {
        title: trial.title.clone(),
        question: trial.question.clone(),
        margin_de00: trial.margin_de00,
        rounds: trial.rounds,
        invented: trial.invented,
        method: trial.method.clone(),
        arms: trial
            .arms
            .iter()
            .map(|arm| NewArm {
                name: arm.name.clone(),
                treatment: arm.treatment.clone(),
                pieces: trial
                    .pieces_of(arm.id)
                    .map(|piece| NewPiece {
                        code: piece.code.clone(),
                        role: piece.role,
                        load: piece.load.clone(),
                    })
                    .collect(),
            })
            .collect(),
    }
}

#[test]
fn a_trial_is_listed_and_found() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    assert_eq!(trial.slug, "one-rinse-or-two");
    assert_eq!(trial.made_at, NOW);
    assert_eq!(
        desk.bench.trial(&trial.slug).unwrap().as_ref(),
        Some(&trial)
    );
    assert_eq!(desk.bench.trial("another").unwrap(), None);
    desk.photo(&trial, 0, "a");
    desk.photo(&trial, 0, "b");
    desk.photo(&trial, 3, "c");
    let list = desk.bench.trials().unwrap();
    assert_eq!(list.len(), 1);
    assert_eq!((list[0].arms, list[0].pieces, list[0].stages), (2, 5, 2));
    assert_eq!(list[0].slug, trial.slug);
    assert!(list[0].invented);
}

#[test]
fn the_newest_trial_comes_first_and_slugs_never_clash() {
    let mut desk = Desk::new();
    for title in ["Weld", "weld!", "Weld 2", "WELD", "new", "Welding"] {
        let new = NewTrial {
            title: title.into(),
            ..rinses()
        };
        desk.bench.create_trial(&new, NOW).unwrap();
    }
    let slugs: Vec<_> = desk
        .bench
        .trials()
        .unwrap()
        .into_iter()
        .map(|t| t.slug)
        .collect();
    assert_eq!(
        slugs,
        ["welding", "new-2", "weld-3", "weld-2-2", "weld-2", "weld"]
    );
}

#[test]
fn a_trial_that_makes_no_sense_is_refused_and_leaves_nothing() {
    let faults: [fn(&mut NewTrial); 3] = [
        |t| t.arms.clear(),
        |t| t.arms[1].pieces[0].code = "A1".into(),
        |t| t.margin_de00 = 0.0,
    ];
    let mut desk = Desk::new();
    for spoil in faults {
        let mut new = rinses();
        spoil(&mut new);
        let error = desk.bench.create_trial(&new, NOW).unwrap_err();
        assert_eq!(error.code(), "trial_refused");
        assert_eq!(error.to_string(), new.validate().unwrap_err().to_string());
    }
    assert!(desk.bench.trials().unwrap().is_empty());
    assert!(
        desk.bench
            .journal(None, Place::NEWEST, 10)
            .unwrap()
            .is_empty()
    );
}

#[test]
fn each_change_stands_in_the_journal() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let photo = desk.marked_photo(&trial, 0, "a");
    desk.bench
        .read_next_with(LATER, &crate::desk::sees(40.0))
        .unwrap();
    desk.mark(photo, [trial.pieces[0].id]);
    desk.bench
        .read_next_with(LATER, &crate::desk::refuses)
        .unwrap();
    let journal = desk.bench.journal(None, Place::NEWEST, 10).unwrap();
    let whats: Vec<_> = journal
        .iter()
        .rev()
        .map(|entry| entry.what.as_str())
        .collect();
    assert_eq!(
        whats,
        [
            "trial entered",
            "photo added",
            "areas marked",
            "photo read",
            "areas marked",
            "photo refused"
        ]
    );
    assert_eq!(journal[0].at, LATER);
    assert!(
        journal[0]
            .kept
            .as_ref()
            .is_some_and(|kept| kept.contains("chart_missing")),
        "{:?}",
        journal[0]
    );
    assert_eq!(journal[1].see, Some(store::Seen::Photo(photo.0)));
    assert_eq!(
        desk.bench.journal(None, Place::NEWEST, 2).unwrap(),
        journal[..2]
    );
}

fn any_trial() -> impl Strategy<Value = NewTrial> {
    let role = prop_oneof![Just(Role::Test), Just(Role::Keeper), Just(Role::Witness)];
    let piece = (role, proptest::option::of("\\PC{0,12}"));
    let arm = ("\\PC{0,30}", proptest::collection::vec(piece, 0..6));
    (
        ("\\PC{1,40}", "\\PC{1,80}", "\\PC{0,80}"),
        (1e-300..50.0_f64, 1..=1000_u32, any::<bool>()),
        proptest::collection::vec(arm, 2..5),
    )
        .prop_map(
            |((title, question, method), (margin_de00, rounds, invented), arms)| NewTrial {
                title: format!("t{title}"),
                question: format!("q{question}"),
                margin_de00,
                rounds,
                invented,
                method,
                arms: arms
                    .into_iter()
                    .enumerate()
                    .map(|(i, (treatment, others))| NewArm {
                        name: format!("{treatment} {i}"),
                        pieces: std::iter::once((Role::Test, None))
                            .chain(others)
                            .enumerate()
                            .map(|(j, (role, load))| NewPiece {
                                code: format!("{i}'{j}"),
                                role,
                                load,
                            })
                            .collect(),
                        treatment,
                    })
                    .collect(),
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]
    #[test]
    fn what_is_entered_comes_back(new in any_trial()) {
        let mut desk = Desk::new();
        let id = desk.bench.create_trial(&new, NOW).unwrap();
        let desk = desk.restart();
        let trial = desk.bench.trial_by_id(id).unwrap().unwrap();
        prop_assert_eq!(entered(&trial), new);
    }
}

#[test]
fn trials_come_page_by_page_the_newest_first() {
    let mut desk = Desk::new();
    let ids: Vec<_> = (0..5).map(|_| desk.trial().id).collect();
    let page = |before, most| -> Vec<_> {
        let trials = desk.bench.trials_before(before, most).unwrap();
        trials.iter().map(|trial| trial.id).collect()
    };
    assert_eq!(page(None, 2), [ids[4], ids[3]]);
    assert_eq!(page(Some(ids[3]), 2), [ids[2], ids[1]]);
    assert_eq!(page(Some(ids[1]), 2), [ids[0]]);
    assert!(page(Some(ids[0]), 2).is_empty());
    assert_eq!(desk.bench.trials().unwrap().len(), 5);
}
