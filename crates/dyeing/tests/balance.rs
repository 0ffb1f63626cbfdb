//! Where the dye went: against worked examples, against laws that hold for any dyeing, and what bad
//! readings are told.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use dyeing::{
    Kitchen, Mass, Plan, Recipe, Volume,
    balance::{DyeBalance, Estimate, Start, Stop, WrittenReading, WrittenWaters},
    check::Level,
};
use proptest::prelude::*;

fn start(dye_g: f64, liquor_l: f64) -> Start {
    Start {
        liquor: Volume::from_millilitres(1000.0 * liquor_l).unwrap(),
        dye: Some(Mass::from_grams(dye_g).unwrap()),
        usual_exhaustion_percent: [65.0, 92.0],
        usual_fixation_percent: [50.0, 90.0],
        class: "warm reactive dye".into(),
        kitchen: Kitchen::Us,
    }
}

fn balance(start: &Start, toml: &str) -> Result<DyeBalance, dyeing::DyeingError> {
    DyeBalance::of(start, &WrittenWaters::from_toml(toml)?, 0.001)
}

fn near(found: f64, wanted: f64, within: f64) {
    assert!((found - wanted).abs() <= within, "{found} is not {wanted}");
}

/// Standards of `reference/dyeing/check_dye_arithmetic.csv`, section beer_calibration: 0 to 10 mg/L.
const STANDARDS: &str = r#"calibration = { standards = ["0 mg/L = 0.004", "2 mg/L = 0.083", "4 mg/L = 0.161", "6 mg/L = 0.242", "8 mg/L = 0.318", "10 mg/L = 0.401"] }"#;

#[test]
fn absorbances_agree_with_the_reference_calibration() {
    // Same file, row "rinse dye": A 0.275 as the mean of three, diluted 5 times, 3 L of rinse hold
    // 102.851 mg; row ci95: 6.776684 to 6.936777 mg/L.
    let toml = format!(
        "{STANDARDS}\n[[rinse]]\nvolume = \"3 L\"\nvolume_spread = \"0 %\"\nabsorbance = [0.275, 0.274, 0.276]\ndilution = \"1:5\""
    );
    let found = balance(&start(1.0, 10.0), &toml).unwrap();
    let grams = found.waters[0].grams.unwrap();
    near(1000.0 * grams.middle, 102.851, 0.0005);
    near(1000.0 * grams.low, 6.776684 * 15.0, 0.0005);
    near(1000.0 * grams.high, 6.936777 * 15.0, 0.0005);
}

#[test]
fn beer_and_lambert_hold_along_the_line() {
    // Beer-Lambert: half the dye takes away half the absorbance, so a sample and its 1:2 dilution
    // say the same. Without scatter, so that the line is the law itself.
    let standards =
        r#"calibration = { standards = ["0 g/L = 0", "0.01 g/L = 0.4", "0.02 g/L = 0.8"] }"#;
    let whole = format!("{standards}\nrinse = [{{ volume = \"2 L\", absorbance = 0.6 }}]");
    let half = format!(
        "{standards}\nrinse = [{{ volume = \"2 L\", absorbance = 0.3, dilution = \"1:2\" }}]"
    );
    let share = |toml: &str| {
        balance(&start(3.0, 5.0), toml).unwrap().waters[0]
            .share
            .middle
    };
    near(share(&whole), share(&half), 1e-12);
    // A 0.6 is 15 mg/L, in 2 L 30 mg, of 3 g one hundredth.
    near(share(&whole), 0.01, 1e-12);
}

#[test]
fn a_balance_by_the_ladder_is_the_balance_by_weight() {
    // The handbook balance of `reference/dyeing` (6.25 g put in, 5 L x 0.2125 g/L in the bath, 20 L x
    // 0.0389 g/L in washings, 4.4095 g fixed), told by a ladder of the same bath: 1.25 g/L at its start.
    let toml = "bath = { volume = \"5 L\", looks_like = \"0.17:1\" }\nrinse = [{ volume = \"20 L\", looks_like = \"0.03112:1\" }]";
    let mut bath = start(6.25, 5.0);
    let found = balance(&bath, toml).unwrap();
    near(6.25 * found.fixed.unwrap().middle, 4.4095, 1e-9);
    near(found.exhaustion.unwrap().middle, 0.83, 1e-12);
    // Nobody needs to know how much dye a bottle held.
    bath.dye = None;
    let unknown = balance(&bath, toml).unwrap();
    assert_eq!(unknown.fixed, found.fixed);
    assert!(unknown.waters[0].grams.is_none());
}

#[test]
fn rinses_to_come_follow_from_the_last_two() {
    // Serial rinses (reference/dyeing, section rinse): a tenth left by each, from 1 % of the dye to
    // below 0.1 % takes one more; from 10 % two.
    let toml = |last: &str| {
        format!(
            "rinse = [{{ volume = \"5 L\", looks_like = \"{last}\", spread = \"1 %\" }}, {{ volume = \"5 L\", looks_like = \"{last}0\", spread = \"1 %\" }}]"
        )
    };
    for (last, more) in [("1:11", 1), ("1:2", 2)] {
        let onward = balance(&start(1.0, 5.0), &toml(last))
            .unwrap()
            .onward
            .unwrap();
        near(onward.ratio.middle, 0.1, 1e-12);
        assert!(
            matches!(onward.stop, Stop::After { more: found, .. } if found == more),
            "{last}: {onward:?}"
        );
        // 1/10 + 1/100 + ... of the last rinse.
        let last: f64 = last[2..].parse().unwrap();
        near(onward.still_to_come.unwrap(), 0.1 / last * 0.1 / 0.9, 1e-12);
    }
    let never = balance(&start(1.0, 5.0), "rinse = [{ volume = \"5 L\", looks_like = \"1:50\" }, { volume = \"5 L\", looks_like = \"1:40\" }]").unwrap();
    assert_eq!(never.onward.unwrap().stop, Stop::Never);
    let clear = balance(&start(1.0, 5.0), "rinse = [{ volume = \"5 L\", looks_like = \"1:50\" }, { volume = \"5 L\", looks_like = \"weaker than 1:1000\" }]").unwrap();
    assert_eq!(clear.onward.unwrap().stop, Stop::Now);
    assert!(
        clear
            .sentences
            .iter()
            .any(|s| s.contains("less than 0.1 %"))
    );
}

#[test]
fn what_does_not_fit_is_said() {
    let codes = |toml: &str| -> Vec<(Level, String)> {
        let found = balance(&start(1.0, 5.0), toml).unwrap();
        found
            .checks
            .into_iter()
            .map(|c| (c.level, c.code))
            .collect()
    };
    let has = |toml: &str, level: Level, code: &str| {
        let codes = codes(toml);
        assert!(
            codes.contains(&(level, code.to_owned())),
            "{toml}: {codes:?}"
        );
    };
    let two = |bath: &str, volume: &str, rinse: &str| {
        format!(
            "bath = {{ volume = \"5 L\", looks_like = \"{bath}\" }}\nrinse = [{{ volume = \"{volume}\", looks_like = \"{rinse}\" }}]"
        )
    };
    has(&two("1:2", "50 L", "1:3"), Level::Wrong, "more_than_put_in");
    has(&two("1:2", "6 L", "1:2"), Level::Doubtful, "barely_closes");
    has(
        &two("1:50", "5 L", "1:5"),
        Level::Doubtful,
        "rinse_stronger",
    );
    has(&two("1:50", "5 L", "1:40"), Level::Note, "rinse_stronger");
    has(
        "rinse = [{ volume = \"5 L\", looks_like = \"1:40\" }]",
        Level::Doubtful,
        "no_bath",
    );
    has(
        "bath = { volume = \"3 L\", looks_like = \"1:4\" }",
        Level::Note,
        "carried_over",
    );
    let dark = "calibration = { standards = [\"0 g/L = 0\", \"0.01 g/L = 0.8\", \"0.02 g/L = 1.6\"] }\nbath = { volume = \"5 L\", absorbance = 1.5 }";
    has(dark, Level::Note, "dark_sample");
    assert!(codes(&two("1:5", "5 L", "1:40")).is_empty());
}

#[test]
fn shares_are_set_against_what_the_class_does() {
    let said = |bath: &str| {
        let toml = format!(
            "bath = {{ volume = \"5 L\", looks_like = \"{bath}\", spread = \"1 %\", volume_spread = \"1 %\" }}"
        );
        balance(&start(1.0, 5.0), &toml).unwrap().sentences[0].clone()
    };
    for (bath, words) in [
        ("1:2", "; less than the"),
        ("1:50", "; more than the"),
        ("1:5", "; within the"),
        ("0.349:1", "; perhaps within the"),
    ] {
        assert!(said(bath).contains(words), "{bath}: {}", said(bath));
        assert!(said(bath).contains("65 to 92 % usual for a warm reactive dye"));
    }
}

#[test]
fn nonsense_gets_a_sentence_with_its_place() {
    let rinse = |entries: &str| format!("{STANDARDS}\nrinse = [{{ {entries} }}]");
    for (entries, place, part) in [
        (
            "volume = \"-5 L\", looks_like = \"1:50\"",
            "rinse 1, volume",
            "below 0",
        ),
        (
            "volume = \"5\", looks_like = \"1:50\"",
            "rinse 1, volume",
            "unit",
        ),
        (
            "volume = \"5 kg\", looks_like = \"1:50\"",
            "rinse 1, volume",
            "a volume is wanted",
        ),
        (
            "volume = \"0 L\", looks_like = \"1:50\"",
            "rinse 1, volume",
            "no water at all",
        ),
        (
            "volume = \"5 L\", looks_like = \"50\"",
            "rinse 1, looks like",
            "as in 1:50",
        ),
        (
            "volume = \"5 L\", looks_like = \"50:1\"",
            "rinse 1, looks like",
            "second number is the larger",
        ),
        (
            "volume = \"5 L\", looks_like = \"1:0\"",
            "rinse 1, looks like",
            "second number is the larger",
        ),
        (
            "volume = \"5 L\", looks_like = \"stronger than 1:2\"",
            "rinse 1, looks like",
            "number is wanted",
        ),
        (
            "volume = \"5 L\", absorbance = 0.6",
            "rinse 1, absorbance",
            "above that of the strongest standard, 0.4",
        ),
        (
            "volume = \"5 L\", absorbance = -0.5",
            "rinse 1, absorbance",
            "measure the blank again",
        ),
        (
            "volume = \"5 L\", absorbance = nan",
            "rinse 1, absorbance",
            "isn't possible",
        ),
        (
            "volume = \"5 L\", absorbance = []",
            "rinse 1, absorbance",
            "isn't possible",
        ),
        (
            "volume = \"5 L\", concentration = \"3\"",
            "rinse 1, concentration",
            "a unit is wanted",
        ),
        (
            "volume = \"5 L\", concentration = \"3 %\"",
            "rinse 1, concentration",
            "a unit is wanted",
        ),
        (
            "volume = \"5 L\", concentration = \"-3 mg/L\"",
            "rinse 1, concentration",
            "below 0",
        ),
        (
            "volume = \"5 L\", concentration = \"3 mg\"",
            "rinse 1, concentration",
            "by litre",
        ),
        (
            "volume = \"5 L\", concentration = \"900 g/L\"",
            "rinse 1, strength",
            "stronger than the bath",
        ),
        (
            "volume = \"5 L\", looks_like = \"1:2\", dilution = \"1:900\"",
            "rinse 1, strength",
            "stronger than the bath",
        ),
        (
            "volume = \"5 L\", looks_like = \"1:2\", dilution = \"5\"",
            "rinse 1, dilution",
            "as in 1:50",
        ),
        (
            "volume = \"5 L\", looks_like = \"1:2\", spread = \"5\"",
            "rinse 1, spread",
            "in percent",
        ),
        (
            "volume = \"5 L\", looks_like = \"1:2\", spread = \"5000 %\"",
            "rinse 1, spread",
            "0 to 900",
        ),
        (
            "volume = \"5 L\"",
            "rinse 1, strength",
            "say how strong it is",
        ),
        (
            "volume = \"5 L\", looks_like = \"1:2\", absorbance = 0.2",
            "rinse 1, strength",
            "one way only",
        ),
    ] {
        let error = balance(&start(1.0, 5.0), &rinse(entries)).unwrap_err();
        let at = error
            .place()
            .unwrap_or_else(|| panic!("{entries}: {error}"));
        assert_eq!(at.to_string(), place, "{entries}: {error}");
        assert!(error.at_its_place().contains(part), "{entries}: {error}");
    }
    for (toml, part) in [
        ("", "readings of 0 waters"),
        ("rinse = 5", "line 1 of the readings"),
        ("rinses = []", "unknown field"),
        (
            "calibration = { standards = [\"1 g/L = 0.1\"] }\nbath = { volume = \"1 L\", absorbance = 0.1 }",
            "3 or more",
        ),
        (
            "calibration = { standards = [\"1 g/L : 0.1\"] }\nbath = { volume = \"1 L\", absorbance = 0.1 }",
            "standard 1: \"1 g/L : 0.1\" has no =",
        ),
        (
            "calibration = { standards = [\"1 g/L = dark\"] }\nbath = { volume = \"1 L\", absorbance = 0.1 }",
            "is no absorbance",
        ),
        (
            "bath = { volume = \"1 L\", absorbance = 0.1 }",
            "nothing without standards",
        ),
    ] {
        let error = balance(&start(1.0, 5.0), toml).unwrap_err();
        assert!(error.to_string().contains(part), "{toml}: {error}");
    }
    let mut bottle = start(1.0, 5.0);
    bottle.dye = None;
    let grams = "bath = { volume = \"1 L\", concentration = \"1 g/L\" }";
    let error = balance(&bottle, grams).unwrap_err();
    assert!(error.to_string().contains("dilution ladder"), "{error}");
    let share = DyeBalance::of(
        &start(1.0, 5.0),
        &WrittenWaters::from_toml("bath = { volume = \"1 L\", looks_like = \"1:9\" }").unwrap(),
        1.5,
    );
    assert!(
        share
            .unwrap_err()
            .to_string()
            .contains("above 0 and below 1")
    );
}

#[test]
fn dye_is_what_the_recipe_puts_in_with_what_was_there() {
    for (name, grams) in [("napkins", 3.25), ("scarf", 0.42 / 0.92)] {
        let path = format!(
            "{}/../../docs/recipes/{name}.toml",
            env!("CARGO_MANIFEST_DIR")
        );
        let recipe = Recipe::read(&std::fs::read_to_string(path).unwrap()).unwrap();
        let start = Start::of(&recipe, &Plan::of(&recipe).unwrap());
        near(start.dye.unwrap().grams(), grams, 1e-9);
    }
}

/// A ladder's step, a volume and a spread.
fn reading() -> impl Strategy<Value = (f64, f64, f64)> {
    (2.0..5000.0f64, 0.1..20.0f64, 0.0..80.0f64)
}

fn written((step, litres, spread): (f64, f64, f64), k: f64) -> WrittenReading {
    WrittenReading {
        volume: format!("{:.9} L", litres * k),
        looks_like: Some(format!("1:{step:.6}")),
        spread: Some(format!("{spread:.3} %")),
        ..WrittenReading::default()
    }
}

proptest! {
    #[test]
    fn no_dye_is_lost_and_none_comes_from_nowhere(
        bath in reading(),
        rinses in proptest::collection::vec(reading(), 0..6),
        k in 0.01..50.0f64,
    ) {
        let of = |k: f64| {
            let waters = WrittenWaters {
                calibration: None,
                bath: Some(written(bath, k)),
                rinse: rinses.iter().map(|r| written(*r, k)).collect(),
            };
            DyeBalance::of(&start(4.0 * k, 5.0 * k), &waters, 0.001).unwrap()
        };
        let (one, many) = (of(1.0), of(k));
        let whole = one.in_bath.unwrap().middle + one.washed_out.middle + one.fixed.unwrap().middle;
        prop_assert!((whole - 1.0).abs() < 1e-12);
        let grams: f64 = one.waters.iter().map(|w| w.grams.unwrap().middle).sum();
        prop_assert!((grams + 4.0 * one.fixed.unwrap().middle - 4.0).abs() < 1e-9);
        // A lot of k times the size with k times the water shares its dye alike.
        let same = |a: Estimate, b: Estimate| {
            (a.middle - b.middle).abs() < 1e-5 && (a.low - b.low).abs() < 1e-5 && (a.high - b.high).abs() < 1e-5
        };
        prop_assert!(same(one.fixed.unwrap(), many.fixed.unwrap()));
        prop_assert!(same(one.washed_out, many.washed_out));
        for share in one.waters.iter().map(|w| w.share).chain([one.fixed.unwrap(), one.washed_out]) {
            prop_assert!(share.low <= share.middle && share.middle <= share.high);
        }
    }
}
