//! The random order is fair, complete, and follows from its seed.

use std::collections::{BTreeMap, BTreeSet};
use trial::{Role, plan::Plan};

fn plan(text: &str) -> Plan {
    Plan::from_toml(text).expect("the example is sound")
}

fn examples() -> [Plan; 3] {
    [
        plan(include_str!("../../../docs/plans/two-arms.toml")),
        plan(include_str!(
            "../../../docs/plans/after-treatments-by-temperature.toml"
        )),
        plan(include_str!("../../../docs/plans/shade-ladder.toml")),
    ]
}

#[test]
fn one_seed_gives_one_order_and_another_another() {
    for plan in examples() {
        assert_eq!(plan.order(), plan.order());
        let mut other = plan.clone();
        other.seed += 1;
        assert_ne!(plan.order().pieces, other.order().pieces);
    }
}

#[test]
fn every_load_gets_as_many_pieces_of_each_arm_as_planned() {
    for plan in examples() {
        for seed in 0..20 {
            let order = Plan {
                seed,
                ..plan.clone()
            }
            .order();
            let mut counts: BTreeMap<(String, String, String), usize> = BTreeMap::new();
            for piece in order.pieces.iter().filter(|p| p.piece.role == Role::Test) {
                for (kind, load) in &piece.shares {
                    let key = (piece.arm_name.clone(), kind.to_string(), load.clone());
                    *counts.entry(key).or_default() += 1;
                }
            }
            // Every example deals its pieces evenly.
            for ((arm, kind, load), count) in &counts {
                let arm = plan
                    .arms
                    .iter()
                    .find(|a| a.name == *arm)
                    .expect("an arm of the plan");
                let loads = counts
                    .keys()
                    .filter(|(a, k, _)| *a == arm.name && k == kind)
                    .count();
                assert_eq!(*count, arm.pieces / loads, "{kind} {load}");
            }
        }
    }
}

#[test]
fn boards_hold_every_piece_once_and_every_arm_with_a_keeper() {
    for plan in examples() {
        let order = plan.order();
        let places: BTreeSet<(usize, usize)> =
            order.pieces.iter().map(|p| (p.board, p.window)).collect();
        assert_eq!(places.len(), order.pieces.len());
        for (board, window) in places {
            assert!((1..=order.boards[board - 1]).contains(&window));
        }
        let blind: BTreeSet<_> = order.pieces.iter().map(|p| p.blind).collect();
        assert_eq!(blind.len(), order.pieces.len());
    }
}

#[test]
fn every_window_comes_up_for_every_arm() {
    let plan = plan(include_str!("../../../docs/plans/two-arms.toml"));
    let mut seen: BTreeMap<(usize, usize, usize), u32> = BTreeMap::new();
    for seed in 0..600 {
        for piece in (Plan {
            seed,
            ..plan.clone()
        })
        .order()
        .pieces
        {
            *seen
                .entry((piece.piece.arm, piece.board, piece.window))
                .or_default() += 1;
        }
    }
    // Two boards of 12 windows with 8 of 16 pieces each: an arm lies in a window in
    // 600 / 3 orders on average, with a standard deviation below 12.
    assert_eq!(seen.len(), 2 * 2 * 12);
    assert!(seen.values().all(|n| (140..=260).contains(n)), "{seen:?}");
}

#[test]
fn loads_of_a_vessel_keep_its_order() {
    let mut plan = plan(include_str!("../../../docs/plans/two-arms.toml"));
    plan.vessels.push(trial::plan::Vessel {
        name: "the machine".into(),
        order: vec!["wash 2".into(), "wash 1".into()],
        cleaned: true,
    });
    for seed in 0..20 {
        let order = Plan {
            seed,
            ..plan.clone()
        }
        .order();
        let wash = order
            .loads
            .iter()
            .find(|t| t.kind.to_string() == "wash")
            .expect("a wash");
        assert_eq!(wash.loads, ["wash 2", "wash 1"]);
    }
}
