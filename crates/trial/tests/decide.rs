//! What a decision says of tables made so that the answer is known.

use colour::{Lab, difference::ciede2000, grade};
use trial::{
    Role,
    decide::{
        Comparison, Decision, Repeatability, Row, UNBOUNDED_DE00, Verdict, decide, decide_knowing,
    },
};

/// Small steps about 0, even in all directions, for pieces of one arm.
const SPREAD: [[f64; 3]; 4] = [
    [0.2, 0.1, -0.1],
    [-0.2, 0.1, 0.1],
    [0.1, -0.2, 0.1],
    [-0.1, 0.0, -0.1],
];

fn row(arm: &str, piece: &str, role: Role, load: &str, stage: u32, lab: [f64; 3]) -> Row {
    Row {
        arm: arm.into(),
        piece: piece.into(),
        role,
        load: Some(load.to_owned()).filter(|load| !load.is_empty()),
        photo: None,
        stated: None,
        stage,
        lab: Lab::from(lab),
    }
}

fn plus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

const START: [f64; 3] = [40.0, 20.0, 5.0];

/// An arm whose pieces start at `START` and change by `change` and their spread.
fn arm(name: &str, change: [f64; 3], loads: &[&str], spread: f64) -> Vec<Row> {
    let mut rows = Vec::new();
    for (i, load) in loads.iter().enumerate() {
        let piece = format!("{name}{i}");
        let own = SPREAD[i % 4].map(|v| v * spread);
        rows.push(row(name, &piece, Role::Test, load, 0, START));
        let washed = plus(START, plus(change, own));
        rows.push(row(name, &piece, Role::Test, load, 5, washed));
    }
    rows
}

fn two(a: Vec<Row>, b: Vec<Row>) -> Decision {
    decide(&[a, b].concat(), 1.0).expect("the rows are sound")
}

fn only(decision: &Decision) -> &Comparison {
    assert_eq!(decision.comparisons.len(), 1);
    let found = &decision.comparisons[0];
    assert!(found.low <= found.de00 && found.de00 <= found.high);
    found
}

#[test]
fn four_verdicts_come_out_where_they_should() {
    let cases = [
        ([8.0, -4.0, 0.0], 1.0, Verdict::Visible, "above the margin"),
        (
            [0.5, 0.3, 0.0],
            0.3,
            Verdict::Small,
            "a difference is there",
        ),
        (
            [0.05, 0.0, 0.0],
            1.0,
            Verdict::Alike,
            "no difference is shown",
        ),
        (
            [1.2, 0.0, 0.0],
            4.0,
            Verdict::Open,
            "would probably settle it",
        ),
    ];
    for (change, spread, verdict, words) in cases {
        let decision = two(
            arm("soak", [0.0; 3], &[""; 4], spread),
            arm("plain", change, &[""; 4], spread),
        );
        let found = only(&decision);
        assert_eq!(found.verdict, verdict, "{}", found.reason);
        assert!(found.reason.contains(words), "{}", found.reason);
        assert_eq!((found.a.as_str(), found.b.as_str()), ("soak", "plain"));
        assert_eq!(found.stage, 5);
    }
}

#[test]
fn the_difference_is_that_of_the_changes_at_the_pooled_start() {
    let mut a = arm("soak", [1.0, -1.0, 0.0], &[""; 4], 0.0);
    // The first arm's pieces start elsewhere: only their changes may count.
    a.iter_mut()
        .for_each(|r| r.lab = Lab::from(plus(r.lab.to_array(), [2.0, 0.0, 0.0])));
    let decision = two(a, arm("plain", [4.0, -3.0, 1.0], &[""; 4], 0.0));
    let start = [41.0, 20.0, 5.0];
    let expected = ciede2000(
        Lab::from(plus(start, [1.0, -1.0, 0.0])),
        Lab::from(plus(start, [4.0, -3.0, 1.0])),
    );
    assert!((only(&decision).de00 - expected).abs() < 1e-9);
    let plain = &decision.arms[1];
    let after = Lab::from(plus(START, [4.0, -3.0, 1.0]));
    assert!((plain.de00 - ciede2000(Lab::from(START), after)).abs() < 1e-9);
    assert_eq!(
        plain.fade_grade,
        grade::fade(Lab::from(START), after).grade.to_string()
    );
    assert_eq!(
        (plain.arm.as_str(), plain.pieces, plain.stage),
        ("plain", 4, 5)
    );
}

#[test]
fn a_keeper_takes_off_what_befell_all_colours_of_a_photo() {
    let cast = [1.5, 0.8, -2.0];
    let mut rows = Vec::new();
    for (name, change) in [("soak", [0.1, 0.0, 0.0]), ("plain", [0.0, 0.1, 0.0])] {
        for r in arm(name, change, &[""; 4], 0.5) {
            let lab = if r.stage == 5 && name == "plain" {
                plus(r.lab.to_array(), cast)
            } else {
                r.lab.to_array()
            };
            rows.push(Row {
                lab: Lab::from(lab),
                ..r
            });
        }
        let keeper = format!("{name} keeper");
        rows.push(row(name, &keeper, Role::Keeper, "", 0, START));
        let now = if name == "plain" {
            plus(START, cast)
        } else {
            START
        };
        rows.push(row(name, &keeper, Role::Keeper, "", 5, now));
    }
    let with = decide(&rows, 1.0).unwrap();
    assert!(only(&with).de00 < 0.3);
    rows.retain(|r| r.role == Role::Test);
    let without = decide(&rows, 1.0).unwrap();
    assert!(only(&without).de00 > 1.5);
}

#[test]
fn a_keeper_widens_the_interval_by_its_own_error() {
    let spread_start = |rows: Vec<Row>| -> Vec<Row> {
        rows.into_iter()
            .enumerate()
            .map(|(i, r)| {
                let lab = plus(r.lab.to_array(), SPREAD[(i / 2) % 4]);
                Row {
                    lab: Lab::from(lab),
                    ..r
                }
            })
            .collect()
    };
    let tests = [
        spread_start(arm("soak", [0.0; 3], &[""; 4], 0.5)),
        spread_start(arm("plain", [3.0, 0.0, 0.0], &[""; 4], 0.5)),
    ]
    .concat();
    let width = |keepers: usize| {
        let mut rows = tests.clone();
        for name in ["soak", "plain"] {
            for k in 0..keepers {
                let code = format!("{name} keeper {k}");
                rows.push(row(name, &code, Role::Keeper, "", 5, START));
            }
        }
        let decision = decide(&rows, 1.0).unwrap();
        only(&decision).high - only(&decision).low
    };
    assert!(width(1) > 1.3 * width(20), "{} {}", width(1), width(20));
}

#[test]
fn one_piece_per_arm_is_not_enough() {
    let decision = two(
        arm("soak", [0.0; 3], &[""], 0.0),
        arm("plain", [9.0, -5.0, 0.0], &[""], 0.0),
    );
    let found = only(&decision);
    assert_eq!(found.verdict, Verdict::Open);
    assert!(
        found
            .reason
            .starts_with("Not enough evidence: one piece per arm")
    );
    assert!(found.de00 > 5.0);
    assert_eq!((found.low, found.high), (0.0, UNBOUNDED_DE00));

    let decision = two(
        arm("soak", [0.0; 3], &[""; 4], 0.5),
        arm("plain", [9.0, -5.0, 0.0], &[""], 0.5),
    );
    let found = only(&decision);
    assert_eq!(found.verdict, Verdict::Open);
    assert!(
        found.reason.contains("one piece in plain"),
        "{}",
        found.reason
    );
    assert!(found.low > 0.0 && found.high < 20.0);
}

#[test]
fn repeat_readings_are_one_piece_not_several() {
    let mut rows = Vec::new();
    for (name, change) in [("soak", 0.0), ("plain", 6.0)] {
        for i in 0..8 {
            let noise = 0.01 * f64::from(i);
            let piece = format!("{name} 1");
            rows.push(row(
                name,
                &piece,
                Role::Test,
                "",
                0,
                plus(START, [noise; 3]),
            ));
            let washed = plus(START, [change + noise, 0.0, 0.0]);
            rows.push(row(name, &piece, Role::Test, "", 5, washed));
        }
    }
    assert_eq!(only(&decide(&rows, 1.0).unwrap()).verdict, Verdict::Open);
}

#[test]
fn one_own_load_per_arm_is_named_as_another_explanation() {
    let decision = two(
        arm("soak", [0.0; 3], &["w1"; 4], 1.0),
        arm("plain", [8.0, -4.0, 0.0], &["w2"; 4], 1.0),
    );
    let found = only(&decision);
    assert_eq!(found.verdict, Verdict::Visible);
    assert!(
        found.reason.contains("the arm or with its load"),
        "{}",
        found.reason
    );
}

#[test]
fn loads_of_one_arm_are_the_units_when_they_scatter() {
    // Pieces agree within a load and loads do not agree with each other.
    let shifted = |name: &str, loads: [&str; 2], shift: f64| -> Vec<Row> {
        let all = [loads[0], loads[0], loads[0], loads[1], loads[1], loads[1]];
        arm(name, [0.0; 3], &all, 0.2)
            .into_iter()
            .map(|r| {
                let up = r.stage == 5 && r.load.as_deref() == Some(loads[1]);
                let by = if up { [shift, 0.0, 0.0] } else { [0.0; 3] };
                Row {
                    lab: Lab::from(plus(r.lab.to_array(), by)),
                    ..r
                }
            })
            .collect()
    };
    let mut rows = shifted("soak", ["w1", "w2"], 4.0);
    rows.extend(shifted("plain", ["w3", "w4"], 9.0));
    let by_load = decide(&rows, 1.0).unwrap();
    assert_eq!(only(&by_load).verdict, Verdict::Open);
    assert!(only(&by_load).reason.contains("Loads, not pieces"));
    rows.iter_mut().for_each(|r| r.load = None);
    let by_piece = decide(&rows, 1.0).unwrap();
    assert!(only(&by_piece).high < only(&by_load).high);
}

#[test]
fn shared_loads_are_taken_off_as_blocks() {
    let loads = ["w1", "w1", "w2", "w2", "w3", "w3"];
    let shift = |rows: Vec<Row>| -> Vec<Row> {
        rows.into_iter()
            .map(|r| {
                let by = match (r.stage, r.load.as_deref()) {
                    (5, Some("w2")) => 5.0,
                    (5, Some("w3")) => -5.0,
                    _ => 0.0,
                };
                Row {
                    lab: Lab::from(plus(r.lab.to_array(), [by, 0.0, 0.0])),
                    ..r
                }
            })
            .collect()
    };
    let mut rows = shift(arm("soak", [0.0; 3], &loads, 0.5));
    rows.extend(shift(arm("plain", [3.0, 0.0, 0.0], &loads, 0.5)));
    let blocked = decide(&rows, 1.0).unwrap();
    assert_eq!(
        only(&blocked).verdict,
        Verdict::Visible,
        "{}",
        only(&blocked).reason
    );
    rows.iter_mut().for_each(|r| r.load = None);
    assert_eq!(only(&decide(&rows, 1.0).unwrap()).verdict, Verdict::Open);
}

#[test]
fn several_arms_are_compared_pair_by_pair_and_weighed_together() {
    let rows = [
        arm("one", [0.0; 3], &[""; 4], 0.5),
        arm("two", [0.05, 0.0, 0.0], &[""; 4], 0.5),
        arm("three", [9.0, -4.0, 0.0], &[""; 4], 0.5),
    ]
    .concat();
    let decision = decide(&rows, 1.0).unwrap();
    let pairs: Vec<_> = decision
        .comparisons
        .iter()
        .map(|c| (c.a.as_str(), c.b.as_str(), c.verdict))
        .collect();
    assert_eq!(
        pairs,
        [
            ("one", "two", Verdict::Alike),
            ("one", "three", Verdict::Visible),
            ("two", "three", Verdict::Visible),
        ]
    );
    assert!(decision.comparisons[1].reason.contains("Holm"));
    assert_eq!(decision.arms.len(), 3);
}

#[test]
fn one_arm_alone_has_changes_and_nothing_to_compare() {
    let decision = decide(&arm("soak", [2.0, 0.0, 0.0], &[""; 3], 1.0), 1.0).unwrap();
    assert!(decision.comparisons.is_empty());
    assert_eq!(decision.arms.len(), 1);
    assert_eq!(decision.arms[0].pieces, 3);
}

#[test]
fn it_is_written_with_the_agreed_names() {
    let decision = two(
        arm("soak", [0.0; 3], &[""; 4], 1.0),
        arm("plain", [8.0, -4.0, 0.0], &[""; 4], 1.0),
    );
    let json = serde_json::to_value(&decision).unwrap();
    let names = |value: &serde_json::Value| -> Vec<String> {
        value.as_object().unwrap().keys().cloned().collect()
    };
    let mut found = names(&json["comparisons"][0]);
    found.sort();
    assert_eq!(
        found,
        [
            "a",
            "along",
            "b",
            "de00",
            "dealt_anew",
            "high",
            "low",
            "p",
            "reason",
            "stage",
            "verdict"
        ]
    );
    assert_eq!(json["comparisons"][0]["verdict"], "visible");
    let mut found = names(&json["arms"][0]);
    found.sort();
    assert_eq!(
        found,
        [
            "arm",
            "change",
            "de00",
            "fade_grade",
            "high",
            "low",
            "pieces",
            "stage"
        ]
    );
    assert_eq!(json["arms"][0]["change"].as_array().unwrap().len(), 3);
}

#[test]
fn witness_cloths_do_not_count_as_fade() {
    let mut rows = [
        arm("soak", [0.0; 3], &[""; 4], 1.0),
        arm("plain", [8.0, -4.0, 0.0], &[""; 4], 1.0),
    ]
    .concat();
    let before = decide(&rows, 1.0).unwrap();
    rows.push(row("soak", "W1", Role::Witness, "", 0, [95.0, 0.0, 2.0]));
    rows.push(row("soak", "W1", Role::Witness, "", 5, [80.0, 9.0, 2.0]));
    assert_eq!(decide(&rows, 1.0).unwrap(), before);
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(24))]
    #[test]
    fn arms_may_change_places_and_pieces_their_order(
        change in proptest::array::uniform3(-6.0f64..6.0),
        spread in 0.1f64..3.0,
    ) {
        let a = arm("soak", [0.5, 0.0, 0.0], &[""; 3], spread);
        let b = arm("plain", change, &[""; 4], spread);
        let there = two(a.clone(), b.clone());
        let reverse = |rows: Vec<Row>| rows.into_iter().rev().collect::<Vec<_>>();
        let back = two(reverse(b), reverse(a));
        let (there, back) = (only(&there), only(&back));
        proptest::prop_assert_eq!(there.verdict, back.verdict);
        proptest::prop_assert!((there.de00 - back.de00).abs() < 1e-9);
        // Directions are summed over a fixed set of points, hence not to the last digit.
        proptest::prop_assert!((there.low - back.low).abs() < 0.01 * there.high);
        proptest::prop_assert!((there.high - back.high).abs() < 1e-6 * there.high);
    }
}

/// Two arms over three rounds, the second fading half as much again, pieces with a
/// rate of their own.
fn over_three_rounds(loads: [&str; 4]) -> Vec<Row> {
    let mut rows = Vec::new();
    for (name, times) in [("soak", 1.0), ("plain", 1.5)] {
        for (i, load) in loads.iter().enumerate() {
            let piece = format!("{name}{i}");
            rows.push(row(name, &piece, Role::Test, load, 0, START));
            for stage in 1..=3u32 {
                let rate = times + 0.05 * [1.0, -1.0, 0.5, -0.5][i];
                let wobble = SPREAD[(i + stage as usize) % 4].map(|v| 0.5 * v);
                let faded = [2.0, -1.0, 0.5].map(|v| v * rate * f64::from(stage));
                rows.push(row(
                    name,
                    &piece,
                    Role::Test,
                    load,
                    stage,
                    plus(START, plus(faded, wobble)),
                ));
            }
        }
    }
    rows
}

#[test]
fn all_rounds_together_tell_how_much_further_an_arm_has_faded() {
    let decision = decide(&over_three_rounds([""; 4]), 1.0).unwrap();
    let [pair] = &decision.over_rounds[..] else {
        panic!("{:?}", decision.over_rounds)
    };
    assert_eq!(
        (pair.a.as_str(), pair.b.as_str(), pair.stage),
        ("soak", "plain", 3)
    );
    let alone = decision.comparisons.last().unwrap().along.unwrap();
    assert!(
        (pair.de00 - alone.de00).abs() < 0.1 * alone.de00,
        "{pair:?} {alone:?}"
    );
    assert!(pair.low > 0.0 && pair.low < pair.de00 && pair.de00 < pair.high);
    assert!(pair.p < 0.001 && pair.p_together == pair.p && pair.df > 3.0);
    let loads = decide(&over_three_rounds(["w1", "w1", "w2", "w2"]), 1.0).unwrap();
    assert_eq!(loads.over_rounds.len(), 1);
}

#[test]
fn a_single_round_or_arms_without_scatter_have_no_model_of_rounds() {
    let one = two(
        arm("soak", [0.0; 3], &[""; 4], 1.0),
        arm("plain", [8.0, -4.0, 0.0], &[""; 4], 1.0),
    );
    assert!(one.over_rounds.is_empty());
    let mut still = over_three_rounds([""; 4]);
    still.iter_mut().for_each(|row| row.lab = Lab::from(START));
    assert!(decide(&still, 1.0).unwrap().over_rounds.is_empty());
}

#[test]
fn a_set_up_check_makes_one_keeper_worth_having() {
    let mut rows = Vec::new();
    for (name, change) in [("soak", [2.0, 0.0, 0.0]), ("plain", [2.1, 0.0, 0.0])] {
        for (i, mut r) in arm(name, change, &[""; 6], 0.5).into_iter().enumerate() {
            // Pieces were dyed far less alike than they are read.
            let dyed = SPREAD[(i / 2) % 4].map(|v| 4.0 * v);
            r.lab = Lab::from(plus(r.lab.to_array(), dyed));
            rows.push(r);
        }
        let keeper = format!("{name} keeper");
        for stage in [0, 5] {
            rows.push(row(
                name,
                &keeper,
                Role::Keeper,
                "",
                stage,
                plus(START, [0.6, 0.0, 0.0]),
            ));
        }
    }
    let known = Repeatability {
        within: [[0.01, 0.0, 0.0], [0.0, 0.01, 0.0], [0.0, 0.0, 0.01]],
        within_df: 20.0,
        between: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
        between_df: 10.0,
    };
    let alone = decide(&rows, 1.0).unwrap();
    assert_eq!(only(&alone).verdict, Verdict::Open);
    let checked = decide_knowing(&rows, 1.0, Some(&known)).unwrap();
    let found = only(&checked);
    assert_eq!(found.verdict, Verdict::Alike, "{}", found.reason);
    assert!(found.reason.contains("set-up check"), "{}", found.reason);
}

#[test]
fn without_keepers_photos_of_their_own_widen_and_shared_ones_do_not() {
    let stated = [[0.5, 0.0, 0.0], [0.0, 0.5, 0.0], [0.0, 0.0, 0.5]];
    let photographed = |photo_of: fn(&Row) -> String| {
        let mut rows = [
            arm("soak", [2.0, 0.0, 0.0], &[""; 4], 0.5),
            arm("plain", [2.1, 0.0, 0.0], &[""; 4], 0.5),
        ]
        .concat();
        for row in &mut rows {
            row.photo = Some(photo_of(row));
            row.stated = Some(stated);
        }
        decide(&rows, 1.0).unwrap()
    };
    let own = photographed(|row| format!("{} {}", row.arm, row.stage));
    let shared = photographed(|row| row.stage.to_string());
    assert_eq!(only(&own).verdict, Verdict::Open);
    assert_eq!(only(&shared).verdict, Verdict::Alike);
    // The change of one arm still goes from one photo to another.
    assert!(shared.arms[0].high - shared.arms[0].low > 2.0);
}

#[test]
fn a_difference_along_the_fade_is_told_with_its_side() {
    let decision = two(
        arm("soak", [4.0, -2.0, 0.5], &[""; 4], 1.0),
        arm("plain", [5.2, -2.6, 0.6], &[""; 4], 1.0),
    );
    let found = only(&decision);
    let along = found.along.expect("both fade clearly");
    assert!(along.de00 > 0.0 && along.low > 0.0, "{along:?}");
    assert!(found.low > 0.0 && found.p < 0.05);
    assert!(found.reason.contains("plain has gone"), "{}", found.reason);
    // Across the fade: a difference, but not along it.
    let decision = two(
        arm("soak", [4.0, -2.0, 2.0], &[""; 4], 1.0),
        arm("plain", [4.0, -2.0, -2.0], &[""; 4], 1.0),
    );
    let along = only(&decision).along.expect("both fade clearly");
    assert!(along.low < 0.0 && along.high > 0.0, "{along:?}");
    assert!(only(&decision).low > 0.0);
}

#[test]
fn pieces_dealt_out_anew_bear_a_great_difference_out() {
    let decision = two(
        arm("soak", [0.0; 3], &[""; 4], 1.0),
        arm("plain", [8.0, -4.0, 0.0], &[""; 4], 1.0),
    );
    let found = only(&decision);
    let dealt = found
        .dealt_anew
        .expect("eight pieces without shared errors");
    // The two splits that keep the arms apart, of 8 over 4.
    assert_eq!((dealt.as_great, dealt.ways), (2, 70));
    assert!(found.reason.contains("70 ways"), "{}", found.reason);
    let loads = two(
        arm("soak", [0.0; 3], &["w1", "w1", "w2", "w2"], 1.0),
        arm("plain", [8.0, -4.0, 0.0], &["w1", "w1", "w2", "w2"], 1.0),
    );
    assert!(only(&loads).dealt_anew.is_none());
}
