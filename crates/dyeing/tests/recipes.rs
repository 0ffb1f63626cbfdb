//! Recipes from text to plan, facts of the trade, and what nonsense is told.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use dyeing::{
    Amount, Mass, Money, Plan, Recipe, VolumeUnit, caution::Hazard, check::Level,
    run_sheet::StepKind, scale,
};
use proptest::prelude::*;

fn example(name: &str) -> Recipe {
    let path = format!(
        "{}/../../docs/recipes/{name}.toml",
        env!("CARGO_MANIFEST_DIR")
    );
    Recipe::read(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn plan(name: &str) -> Plan {
    Plan::of(&example(name)).unwrap()
}

/// A recipe in few words, with more of it behind.
fn recipe(class: &str, fibre: &str, goods: &str, water: &str, more: &str) -> String {
    format!(
        "name = \"test\"\nclass = \"{class}\"\nfibre = \"{fibre}\"\ngoods = {{ weight = \"{goods}\" }}\nwater = {{ {water} }}\n{more}"
    )
}

/// All sentences that a recipe gets: refusal or checks.
fn told(text: &str) -> String {
    match Recipe::read(text).and_then(|r| Plan::of(&r)) {
        Err(refused) => refused.to_string(),
        Ok(plan) => {
            let all = plan
                .checks
                .iter()
                .map(|c| format!("{:?} {}: {}", c.level, c.code, c.sentence));
            all.collect::<Vec<_>>().join("\n")
        }
    }
}

const DYE: &str = "dye = [{ name = \"blue\", amount = \"1 % owf\" }]\n";
const LR: &str = "liquor_ratio = \"15:1\"";

/// Definitions: rows "two-dye" of `reference/dyeing/check_dye_arithmetic.csv`.
#[test]
fn napkins_come_out_as_defined() {
    let plan = plan("napkins");
    assert_eq!(plan.lines[0].metric, "200 ml");
    assert_eq!(plan.lines[1].metric, "125 ml");
    assert_eq!(plan.baths.metric, "5 L");
    assert_eq!(plan.top_up.metric(), "4.68 L");
    assert_eq!(plan.baths.count, 1);
    assert!((plan.depth_owf.unwrap() - 1.3).abs() < 1e-12);
    assert!(
        plan.checks.iter().all(|c| c.level == Level::Note),
        "{:?}",
        plan.checks
    );
}

/// Common practice, no source: half a bottle to a pound, 1/3 cup of salt to a gallon, a soak of 30
/// min, a simmer of about 20 min; 4 tbsp to 3 gallons against 2 tbsp to a gallon is off by 1.5.
#[test]
fn shirts_are_dyed_as_the_trade_does() {
    let plan = plan("shirts");
    let pounds = plan.goods.mass.in_unit(dyeing::MassUnit::Pound);
    let Amount::Volume(dye) = plan.lines[0].amount else {
        panic!("a bottle of known size is a volume");
    };
    assert!((dye.in_unit(VolumeUnit::UsFluidOunce) - 4.0 * pounds).abs() < 1e-9);
    let Amount::Volume(salt) = plan.lines[1].amount else {
        panic!("cups are a volume");
    };
    assert!((salt.in_unit(VolumeUnit::UsCup) - 5.0 / 3.0).abs() < 1e-9);
    assert_eq!(plan.lines[1].kitchen.as_deref(), Some("1 2/3 cups"));
    let departure = plan
        .checks
        .iter()
        .find(|c| c.code == "label_departure")
        .unwrap();
    assert!(
        departure.sentence.contains("by a factor of 1.5"),
        "{}",
        departure.sentence
    );
    for code in ["typical_weight", "unknown_strength"] {
        assert!(plan.checks.iter().any(|c| c.code == code), "{code}");
    }
    assert_eq!(plan.steps[0].minutes, Some(30.0));
    let soak = plan
        .steps
        .iter()
        .find(|s| s.kind == StepKind::MatchingSoak)
        .unwrap();
    let treat = plan
        .steps
        .iter()
        .find(|s| s.kind == StepKind::AfterTreat)
        .unwrap();
    assert_eq!(
        (soak.arms.as_slice(), treat.arms.as_slice()),
        (&["plain".to_owned()][..], &["fixed".to_owned()][..])
    );
    assert_eq!(
        (soak.begins_min, soak.minutes, soak.to_c),
        (treat.begins_min, treat.minutes, treat.to_c)
    );
}

/// 4 tbsp of 8 fl oz (16 tbsp) at 6.49 is 1.6225, so 1.62; for three pieces 0.54 each.
#[test]
fn an_extra_step_has_its_price() {
    let cost = plan("shirts").cost;
    assert_eq!(cost.steps[0].money, Money::from_cents(162));
    assert_eq!(cost.steps[0].sentence, "fixative adds 0.54 USD per piece");
    let arms: Money = cost.arms.iter().map(|a| a.money).sum();
    assert_eq!(arms, cost.total);
    let lines: Money = cost.lines.iter().map(|l| l.money).sum();
    assert_eq!(lines, cost.total);
    let (fixed, plain) = (&cost.arms[0], &cost.arms[1]);
    assert!((fixed.money.cents() - plain.money.cents() - 162).abs() <= 1);
    // Stock is paid by the dye in it: 2 g of 100 g at 9.50.
    assert_eq!(plan("napkins").cost.lines[0].money, Money::from_cents(19));
}

/// A recipe with two priced dyes; its text may name what prices are in.
#[test]
fn an_exhaust_bath_is_used_again() {
    let plan = plan("scarf");
    // 0.42 g at a strength of 92 % is 0.4565 g, of which 0.05 g is there.
    let Amount::Mass(rose) = plan.lines[0].amount else {
        panic!("powder is weighed");
    };
    assert!((rose.grams() - (0.42 / 0.92 - 0.05)).abs() < 1e-9);
    assert!(
        plan.lines[0]
            .note
            .as_deref()
            .unwrap()
            .contains("in the bath already")
    );
    assert_eq!(plan.uptake.left_in_bath_g.len(), 1);
    // Silk keeps below its limit without being told.
    assert_eq!(plan.programme.hottest().celsius(), 85.0);
    assert!(plan.checks.iter().any(|c| c.code == "kept_cooler"));
}

#[test]
fn nonsense_is_told_what_is_usual() {
    let reactive = "auxiliary = [{ name = \"salt\", amount = \"50 g/L\" }, { name = \"soda ash\", amount = \"12 g/L\" }]\n";
    for (what, text, parts) in [
        (
            "0 g",
            recipe("direct", "cotton", "0 g", LR, DYE),
            &["0 g", "usually 130 to 200 g"][..],
        ),
        (
            "300 % owf",
            recipe(
                "direct",
                "cotton",
                "100 g",
                LR,
                "dye = [{ name = \"blue\", amount = \"300 % owf\" }]",
            ),
            &["Wrong depth", "300 % owf", "is usual"],
        ),
        (
            "5 L in 2 L",
            recipe(
                "direct",
                "cotton",
                "250 g",
                "volume = \"5 L\"",
                &format!("pot = {{ capacity = \"2 L\" }}\n{DYE}"),
            ),
            &[
                "Wrong pot_too_small",
                "5 L of liquor doesn't fit into a pot of 2 L",
                "4 baths",
            ],
        ),
        (
            "1//3 cup",
            recipe(
                "direct",
                "cotton",
                "250 g",
                LR,
                "auxiliary = [{ name = \"salt\", amount = \"1//3 cup\" }]",
            ),
            &["auxiliary \"salt\", amount", "at character 3"],
        ),
        (
            "reactive on polyester",
            recipe(
                "reactive-warm",
                "polyester",
                "250 g",
                LR,
                &format!("{DYE}{reactive}"),
            ),
            &[
                "Wrong wrong_fibre",
                "doesn't dye polyester",
                "usually dyed with disperse dye",
            ],
        ),
        (
            "boiling silk",
            recipe(
                "acid-levelling",
                "silk",
                "50 g",
                "liquor_ratio = \"30:1\"",
                &format!("process = {{ hold = \"100 C\" }}\n{DYE}"),
            ),
            &["Wrong too_hot_for_fibre", "too hot for silk", "80 to 85 °C"],
        ),
        (
            "no alkali",
            recipe(
                "reactive-cold",
                "cotton",
                "250 g",
                LR,
                &format!("{DYE}auxiliary = [{{ name = \"salt\", amount = \"40 g/L\" }}]"),
            ),
            &[
                "Wrong no_alkali",
                "doesn't bind",
                "of soda ash is usual for 1 % owf",
            ],
        ),
        (
            "salt far off",
            recipe(
                "reactive-warm",
                "cotton",
                "250 g",
                LR,
                &format!(
                    "{DYE}auxiliary = [{{ name = \"salt\", amount = \"5 g/L\" }}, {{ name = \"soda ash\", amount = \"10 g/L\" }}]"
                ),
            ),
            &["Doubtful salt_far_off", "very little", "35 g/L"],
        ),
        (
            "salt in a milling bath",
            recipe(
                "acid-milling",
                "wool",
                "250 g",
                "liquor_ratio = \"30:1\"",
                &format!(
                    "{DYE}auxiliary = [{{ name = \"glauber's salt\", amount = \"10 % owf\" }}, {{ name = \"vinegar\", amount = \"20 ml/L\" }}]"
                ),
            ),
            &["usually dyed without one"],
        ),
        (
            "polyester at home",
            recipe(
                "disperse",
                "polyester",
                "250 g",
                LR,
                &format!("{DYE}auxiliary = [{{ name = \"vinegar\", amount = \"15 ml/L\" }}]"),
            ),
            &["Wrong above_the_boil", "pressure cooker"],
        ),
        (
            "a blend",
            recipe("direct", "60 % cotton, 40 % polyester", "250 g", LR, DYE),
            &["40 % of these goods"],
        ),
        (
            "unknown class",
            recipe("magic", "cotton", "250 g", LR, DYE),
            &["no class of dye called \"magic\"", "reactive-cold"],
        ),
        (
            "a slip in TOML",
            "name = \"x\"\nclass = ".into(),
            &["line 2"],
        ),
        (
            "a wrong key",
            recipe("direct", "cotton", "250 g", LR, "colour = \"blue\""),
            &["line 6", "colour"],
        ),
        (
            "weight from a bottle of unknown strength",
            recipe(
                "direct",
                "cotton",
                "250 g",
                LR,
                "dye = [{ name = \"b\", amount = \"1 % owf\", liquid = \"unknown\" }]",
            ),
            &["dye \"b\"", "label's proportion"],
        ),
        (
            "solutions above the bath",
            recipe(
                "direct",
                "cotton",
                "250 g",
                LR,
                "dye = [{ name = \"b\", amount = \"4 % owf\", stock = \"0.1 %\" }]",
            ),
            &["more than the bath", "stronger stock"],
        ),
        (
            "a price that doesn't fit",
            recipe(
                "direct",
                "cotton",
                "250 g",
                LR,
                "dye = [{ name = \"b\", amount = \"1 % owf\", price = \"3.50 per cup\" }]",
            ),
            &["price of \"b\""],
        ),
        (
            "next to no water",
            recipe("direct", "cotton", "5 kg", "volume = \"100 ml\"", DYE),
            &["liquor ratio", "usually 10 to 40"],
        ),
    ] {
        let told = told(&text);
        for part in parts {
            assert!(told.contains(part), "{what}: \"{part}\" is not in: {told}");
        }
    }
}

/// Washing soda is soda ash with ten waters: 40.5 g/L do the work of 15 (molar masses).
#[test]
fn washing_soda_counts_as_soda_ash() {
    let with = |amount: &str| {
        let more = format!(
            "dye = [{{ name = \"blue\", amount = \"1.5 % owf\" }}]\nauxiliary = [{{ name = \"salt\", amount = \"50 g/L\" }}, {{ name = \"washing soda\", amount = \"{amount}\" }}]"
        );
        told(&recipe("reactive-warm", "cotton", "250 g", LR, &more))
    };
    assert!(!with("40.5 g/L").contains("alkali"));
    assert!(with("15 g/L").contains("alkali_far_off"));
}

#[test]
fn cautions_go_with_what_is_in_the_bath() {
    let hazards = |plan: &Plan| plan.cautions.iter().map(|c| c.hazard).collect::<Vec<_>>();
    let napkins = hazards(&plan("napkins"));
    for hazard in [
        Hazard::DataSheet,
        Hazard::Sensitiser,
        Hazard::Hot,
        Hazard::Alkali,
        Hazard::Pots,
        Hazard::Children,
        Hazard::Disposal,
    ] {
        assert!(napkins.contains(&hazard), "{hazard:?}");
    }
    assert!(!napkins.contains(&Hazard::Formaldehyde) && !napkins.contains(&Hazard::Metal));
    let more = format!(
        "{DYE}auxiliary = [{{ name = \"copper sulphate\", amount = \"2 % owf\" }}, {{ name = \"caustic soda\", amount = \"2 g/L\" }}]\nafter = [{{ name = \"resin fixative\", amount = \"20 ml/L\", temperature = \"50 C\", time = \"20 min\" }}]"
    );
    let text = recipe("direct", "cotton", "250 g", LR, &more);
    let grim = hazards(&Plan::of(&Recipe::read(&text).unwrap()).unwrap());
    for hazard in [
        Hazard::Metal,
        Hazard::Caustic,
        Hazard::Formaldehyde,
        Hazard::Dust,
    ] {
        assert!(grim.contains(&hazard), "{hazard:?}");
    }
}

#[test]
fn a_caution_stands_at_the_step_that_needs_it() {
    let plan = plan("napkins");
    let soda = plan
        .steps
        .iter()
        .find(|s| s.kind == StepKind::Add && s.text.contains("soda ash"))
        .unwrap();
    assert!(soda.cautions.iter().any(|c| c.hazard == Hazard::Alkali));
    let presoak = &plan.steps[0];
    assert!(presoak.cautions.is_empty());
}

#[test]
fn the_sheet_and_the_curve_agree() {
    for name in ["napkins", "shirts", "scarf"] {
        let plan = plan(name);
        let bath = |k: StepKind| {
            matches!(
                k,
                StepKind::Add | StepKind::Raise | StepKind::Hold | StepKind::Cool
            )
        };
        let sum: f64 = plan
            .steps
            .iter()
            .filter(|s| bath(s.kind))
            .filter_map(|s| s.minutes)
            .sum();
        assert!((sum - plan.programme.minutes()).abs() < 1e-9, "{name}");
        assert!(
            plan.programme
                .points
                .is_sorted_by(|a, b| a.minute <= b.minute)
        );
        let added: usize = plan.programme.additions.iter().map(|a| a.what.len()).sum();
        assert_eq!(added, plan.lines.len(), "{name}: everything goes in once");
        assert!(plan.steps.iter().zip(1..).all(|(s, n)| s.number == n));
        assert_eq!(plan.steps.last().unwrap().kind, StepKind::Dry);
        assert!(serde_json::to_string(&plan).unwrap().contains("\"steps\""));
    }
}

#[test]
fn a_lot_says_what_does_not_scale() {
    let recipe = example("napkins");
    let sample = Plan::of(&recipe).unwrap();
    let lot = Plan::of(&recipe.scaled_to("10 kg".parse().unwrap()).unwrap()).unwrap();
    assert_eq!(lot.baths.ratio, sample.baths.ratio);
    let codes: Vec<_> = scale::checks(&sample, &lot, Some(3.0))
        .into_iter()
        .map(|c| c.code)
        .collect();
    assert!(codes.contains(&"more_baths".to_owned()) && codes.contains(&"large_step".to_owned()));
    let mut filled = recipe.clone();
    filled.water = dyeing::recipe::Water::Ratio("40:1".parse().unwrap());
    let wet = Plan::of(&filled).unwrap();
    let told = scale::checks(&sample, &wet, None);
    assert_eq!(told[0].code, "ratio_not_held");
    assert!(told[0].sentence.contains("paler"), "{}", told[0].sentence);
}

proptest! {
    #[test]
    fn scaling_scales_every_amount(k in 0.05..50.0f64) {
        for name in ["napkins", "shirts", "scarf"] {
            let mut recipe = example(name);
            for dye in &mut recipe.dyes { dye.in_bath = None; }
            for auxiliary in &mut recipe.auxiliaries { auxiliary.in_bath = None; }
            recipe.pot = None;
            let small = Plan::of(&recipe).unwrap();
            let large = Plan::of(&recipe.scaled_to(recipe.goods.mass.times(k).unwrap()).unwrap()).unwrap();
            for (a, b) in small.lines.iter().zip(&large.lines) {
                let ratio = b.amount.over(a.amount).unwrap();
                prop_assert!((ratio - k).abs() < 1e-9 * k, "{}", a.name);
            }
            for (a, b) in small.after.iter().zip(&large.after) {
                let ratio = b.line.amount.over(a.line.amount).unwrap();
                prop_assert!((ratio - k).abs() < 1e-9 * k, "{}", a.line.name);
                let water = b.liquor.millilitres() / a.liquor.millilitres();
                prop_assert!((water - k).abs() < 1e-9 * k);
            }
            let water = large.baths.liquor.millilitres() / small.baths.liquor.millilitres();
            prop_assert!((water - k).abs() < 1e-9 * k);
        }
    }

    #[test]
    fn amounts_are_never_negative_and_money_adds_up(
        goods in 1.0..50_000.0f64,
        depth in 0.0..15.0f64,
        left in 0.0..10.0f64,
        pieces in 1u32..40,
        cents in 0u32..100_000,
    ) {
        let text = format!(
            "name = \"t\"\nclass = \"direct\"\nfibre = \"cotton\"\ngoods = {{ weight = \"{goods} g\" }}\narms = {{ a = {pieces}, b = 3 }}\nwater = {{ liquor_ratio = \"20:1\" }}\npot = {{ capacity = \"12 L\" }}\ndye = [{{ name = \"d\", amount = \"{depth} % owf\", in_bath = \"{left} g\", price = \"{}.{:02} per 100 g\" }}]\nafter = [{{ name = \"fixative\", amount = \"3 % owf\", temperature = \"40 C\", time = \"20 min\", arms = [\"b\"], price = \"1.99 per 30 g\" }}]",
            cents / 100, cents % 100
        );
        let plan = Plan::of(&Recipe::read(&text).unwrap()).unwrap();
        for line in &plan.lines {
            prop_assert!(line.solid_g.unwrap_or(0.0) >= 0.0);
        }
        prop_assert!(plan.top_up >= dyeing::Volume::ZERO);
        let arms: Money = plan.cost.arms.iter().map(|a| a.money).sum();
        prop_assert_eq!(arms, plan.cost.total);
        for arm in &plan.cost.arms {
            let off = arm.per_piece.cents() * i64::from(arm.pieces) - arm.money.cents();
            prop_assert!(2 * off.abs() <= i64::from(arm.pieces), "{off}");
        }
        let held = plan.baths.each_goods.times(f64::from(plan.baths.count)).unwrap();
        prop_assert!((held.grams() - Mass::from_grams(goods).unwrap().grams()).abs() < 1e-6 * goods);
    }

    #[test]
    fn any_recipe_text_gets_an_answer(word in "[ -~]{0,30}") {
        let quoted = word.replace(['"', '\\'], "");
        let text = recipe("direct", &quoted, "250 g", LR, &format!("dye = [{{ name = \"x\", amount = \"{quoted}\" }}]"));
        prop_assert!(!told(&text).is_empty());
        prop_assert!(Recipe::read(&word).is_err());
    }
}
