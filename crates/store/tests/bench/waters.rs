//! Readings of a run's waters: added, corrected, refused, and where the dye went.

use crate::desk::Desk;
use dyeing::balance::{Absorbances, WaterNote, WrittenCalibration, WrittenReading};
use store::{Bench, CLEAR};

const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");
const NOW_S: i64 = 1_900_000_000;

fn jar(volume: &str, step: &str) -> WrittenReading {
    WrittenReading {
        volume: volume.to_owned(),
        looks_like: Some(step.to_owned()),
        ..WrittenReading::default()
    }
}

fn run_of(desk: &mut Desk, trial: Option<&str>) -> i64 {
    desk.run_of(NAPKINS, trial, "green lot").1
}

#[test]
fn readings_make_a_balance_and_corrections_are_added() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let run = run_of(&mut desk, Some(&trial.slug));
    assert_eq!(desk.bench.balance_of_run(run, CLEAR).unwrap(), None);
    let bench = &mut desk.bench;
    let mut note = |what: WaterNote, of: Option<u32>| bench.note_water(run, &what, of, NOW_S);
    note(WaterNote::Bath(jar("4.5 L", "1:5")), None).unwrap();
    note(WaterNote::Rinse(jar("5 L", "1:2")), None).unwrap();
    note(WaterNote::Rinse(jar("5 L", "1:20")), Some(2)).unwrap();
    note(WaterNote::Rinse(jar("5 L", "1:20")), Some(2)).unwrap();
    note(WaterNote::Rinse(jar("5 L", "1:80")), None).unwrap();
    drop(desk.bench);

    // Another program opens the same folder: everything is there.
    let mut bench = Bench::open(desk.home.path()).unwrap();
    let events = bench.water_events(run).unwrap();
    assert_eq!(
        events.len(),
        4,
        "a correction that says nothing new adds nothing"
    );
    assert_eq!(events[2].of, Some(2));
    let balance = bench.balance_of_run(run, CLEAR).unwrap().unwrap();
    assert_eq!(balance.waters.len(), 3);
    assert_eq!(balance.fixed.unwrap().percent(), "76 % (68 to 81 %)");
    // 0.8 and 0.5 % owf of 250 g.
    assert_eq!(balance.start.dye.unwrap().metric(), "3.25 g");
    let baths = bench.results(&trial.slug).unwrap().unwrap().baths;
    assert_eq!(baths[0].balances, [("green lot".to_owned(), balance)]);

    bench
        .note_water(run, &WaterNote::Withdrawn("spilt".into()), Some(1), NOW_S)
        .unwrap();
    let without = bench.balance_of_run(run, CLEAR).unwrap().unwrap();
    assert!(without.fixed.is_none() && without.waters.len() == 2);
    for (what, of) in [
        (WaterNote::Bath(jar("4 L", "1:5")), Some(1)),
        (WaterNote::Withdrawn(String::new()), Some(99)),
        (WaterNote::Withdrawn(String::new()), None),
    ] {
        let late = bench.note_water(run, &what, of, NOW_S).unwrap_err();
        assert!(late.to_string().contains("taken back already"), "{late}");
    }
}

#[test]
fn what_no_balance_can_use_is_not_kept() {
    let mut desk = Desk::new();
    let run = run_of(&mut desk, None);
    let absorbs = |a: f64| {
        WaterNote::Rinse(WrittenReading {
            volume: "5 L".into(),
            absorbance: Some(Absorbances::One(a)),
            ..WrittenReading::default()
        })
    };
    let standards = |standards: &[&str]| {
        WaterNote::Calibration(WrittenCalibration {
            standards: standards.iter().map(|s| (*s).to_owned()).collect(),
        })
    };
    let good = ["0 mg/L = 0.001", "50 mg/L = 0.21", "100 mg/L = 0.42"];
    for (what, part) in [
        (
            WaterNote::Rinse(jar("-5 L", "1:50")),
            "rinse 1, volume: \"-5 L\"",
        ),
        (WaterNote::Bath(jar("5", "1:50")), "spent bath, volume"),
        (absorbs(0.2), "without standards"),
        (standards(&good[..2]), "3 or more"),
    ] {
        let refused = desk.bench.note_water(run, &what, None, NOW_S).unwrap_err();
        assert_eq!(refused.code(), "water_refused");
        assert!(refused.to_string().contains(part), "{refused}");
    }
    assert!(desk.bench.water_events(run).unwrap().is_empty());
    desk.bench
        .note_water(run, &standards(&good), None, NOW_S)
        .unwrap();
    desk.bench
        .note_water(run, &absorbs(0.2), None, NOW_S)
        .unwrap();
    let dark = desk.bench.note_water(run, &absorbs(0.9), None, NOW_S);
    assert!(
        dark.unwrap_err()
            .to_string()
            .contains("rinse 2, absorbance: the absorbance 0.9 is above")
    );
    // The standards hold the reading up.
    let gone = WaterNote::Withdrawn(String::new());
    let refused = desk
        .bench
        .note_water(run, &gone, Some(1), NOW_S)
        .unwrap_err();
    assert!(refused.to_string().contains("without standards"));
    let unknown = desk
        .bench
        .note_water(99, &absorbs(0.2), None, NOW_S)
        .unwrap_err();
    assert_eq!(unknown.code(), "unknown");
}
