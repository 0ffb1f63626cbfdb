//! Amounts as a locale writes them, against definitions of NIST SP 811, appendix B: a pound of
//! 453.59237 g in 16 ounces, a US gallon of 3.785411784 L in 128 fluid ounces, °F = 1.8 °C + 32.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use dyeing::{
    Amount, Celsius, Kitchen, Mass, Money, Plan, Recipe, Volume,
    run::RunSheet,
    stock::{Stock, price_with_currency},
};
use locale::{Locale, Measures, SumOrder, within};

const AMERICAN: Locale = Locale {
    measures: Measures::UsCustomary,
    ..Locale::DATA
};
const SHIRTS: &str = include_str!("../../../docs/recipes/shirts.toml");
const NAPKINS: &str = include_str!("../../../docs/recipes/napkins.toml");

fn grams(grams: f64) -> Mass {
    Mass::from_grams(grams).unwrap()
}

fn ml(ml: f64) -> Volume {
    Volume::from_millilitres(ml).unwrap()
}

#[test]
fn metric_comes_first_until_someone_chooses() {
    assert_eq!(grams(250.0).to_string(), "250 g (8.82 oz)");
    assert_eq!(grams(250.0).shown(), "250 g");
    assert_eq!(ml(5000.0).to_string(), "5 L");
    assert_eq!(Celsius::new(60.0).unwrap().to_string(), "60 °C (140 °F)");
    assert_eq!(Celsius::new(60.0).unwrap().shown(), "60 °C");
    assert_eq!(Celsius::on_local_scale(60.0).unwrap().celsius(), 60.0);
    assert_eq!(Kitchen::usual(), Kitchen::Metric);
}

#[test]
fn us_customary_comes_first_where_it_is_chosen() {
    within(AMERICAN, || {
        for (mass_g, said) in [
            (250.0, "8.82 oz (250 g)"),
            (453.592_37, "1 lb (454 g)"),
            (566.990_462_5, "1 lb 4 oz (567 g)"),
            (0.0, "0 oz (0 g)"),
        ] {
            assert_eq!(grams(mass_g).shown(), said);
            assert_eq!(grams(mass_g).to_string(), said);
        }
        for (volume_ml, said) in [
            (3_785.411_784, "1 US gal (3.79 L)"),
            (5000.0, "1.32 US gal (5 L)"),
            (200.0, "6.76 US fl oz (200 ml)"),
            (29.573_529_562_5, "1 US fl oz (29.6 ml)"),
            // A sixth of a fluid ounce.
            (4.928_921_593_75, "1 US tsp (4.93 ml)"),
            (0.0, "0 US tsp (0 ml)"),
        ] {
            assert_eq!(ml(volume_ml).shown(), said);
        }
        for (celsius, long, short) in [
            (100.0, "212 °F (100 °C)", "212 °F"),
            (0.0, "32 °F (0 °C)", "32 °F"),
            (60.0, "140 °F (60 °C)", "140 °F"),
        ] {
            let at = Celsius::new(celsius).unwrap();
            assert_eq!((at.to_string(), at.shown()), (long.into(), short.into()));
        }
        let bare = Celsius::on_local_scale(140.0).unwrap();
        assert!((bare.celsius() - 60.0).abs() < 1e-9);
        assert!(Celsius::on_local_scale(300.0).is_err(), "no bath at 149 °C");
        assert_eq!(Kitchen::usual(), Kitchen::Us);
        assert_eq!(Amount::Bottles(2.0).to_string(), "2 bottles");
        let owed = Stock::of(Amount::Mass(grams(250.0)));
        assert_eq!(owed.to_string(), "8.82 oz (250 g)");
    });
}

#[test]
fn whatever_is_written_can_be_read_again() {
    for volume in [ml(5000.0), ml(200.0), ml(3.0)] {
        let us: Volume = volume.us_customary().parse().unwrap();
        let off = us.millilitres() / volume.millilitres() - 1.0;
        assert!(off.abs() < 0.005, "{} of {volume}", volume.us_customary());
    }
}

#[test]
fn sums_and_prices_carry_their_currency() {
    let euro = Locale {
        currency: "EUR".parse().ok(),
        ..Locale::DATA
    };
    let first = Locale {
        sums: SumOrder::CodeFirst,
        ..euro
    };
    let sum = Money::from_cents(850);
    assert_eq!(within(Locale::DATA, || sum.shown("")), "8.50");
    assert_eq!(within(euro, || sum.shown("")), "8.50 EUR");
    assert_eq!(within(first, || sum.shown("")), "EUR 8.50");
    assert_eq!(within(first, || sum.shown("USD")), "USD 8.50");
    for (written, said) in [
        ("9.50 per 100 g", "EUR 9.50 per 100 g"),
        ("9,5/kg", "EUR 9,5/kg"),
        (" 6 each ", "EUR 6 each"),
        ("", ""),
        ("dear", "dear"),
    ] {
        assert_eq!(within(first, || price_with_currency(written, "")), said);
    }
}

#[test]
fn a_plan_says_everything_in_the_chosen_measures() {
    let recipe = Recipe::read(NAPKINS).unwrap();
    let dollars = Locale {
        currency: "USD".parse().ok(),
        ..AMERICAN
    };
    let plan = within(dollars, || Plan::of(&recipe)).unwrap();
    let sheet = within(dollars, || RunSheet::of(&plan));
    let texts = sheet.steps.iter().map(|step| step.text.as_str());
    let text = texts.collect::<Vec<_>>().join("\n");
    for part in ["oz (", "US gal (", "°F ("] {
        assert!(text.contains(part), "{part}: {text}");
    }
    assert!(sheet.about.contains("US gal ("), "{}", sheet.about);
    // A recipe that names its currency keeps it; nothing relabels it.
    let named = Recipe::read(SHIRTS).unwrap();
    let euro = Locale {
        currency: "EUR".parse().ok(),
        ..AMERICAN
    };
    let plan = within(euro, || Plan::of(&named)).unwrap();
    assert!(named.currency == "USD" && !plan.cost.steps.is_empty());
    for step in &plan.cost.steps {
        assert!(
            step.sentence.contains(" USD per piece"),
            "{}",
            step.sentence
        );
    }
}

#[test]
fn data_is_the_same_whatever_was_chosen() {
    let recipe = Recipe::read(SHIRTS).unwrap();
    let data = || within(Locale::DATA, || Plan::of(&recipe)).unwrap();
    let plain = serde_json::to_string(&data()).unwrap();
    assert_eq!(
        within(AMERICAN, || serde_json::to_string(&data()).unwrap()),
        plain
    );
    assert!(plain.contains("°C (") && !plain.contains("US gal ("));
}

/// A sheet that was kept by an earlier edition of this library, which wrote a step otherwise.
#[test]
fn a_kept_sheet_is_shown_as_chosen_though_its_recipe_gives_another_one_now() {
    for text in [SHIRTS, NAPKINS] {
        let recipe = Recipe::read(text).unwrap();
        let write = || RunSheet::of(&Plan::of(&recipe).unwrap());
        let now = within(Locale::DATA, write);
        let mut kept = now.clone();
        kept.steps[0].title.push_str(", as it was said then");
        let shown = within(AMERICAN, || kept.rewritten(Some(&recipe)));
        let lost = within(AMERICAN, || kept.rewritten(None));
        assert_eq!(shown, lost);
        let exact = within(AMERICAN, || now.rewritten(Some(&recipe)));
        assert_eq!(exact, within(AMERICAN, write));
        // Told by its sentences, which are rounded, it says the amounts that it says written anew.
        for (told, exact) in shown.steps.iter().zip(&exact.steps) {
            agree(&told.text, &exact.text);
            assert_eq!((told.to_c, &told.arms), (exact.to_c, &exact.arms));
        }
        agree(&shown.about, &exact.about);
        assert!(shown.about.contains("US gal"), "{}", shown.about);
        // Metric stays as it was kept.
        assert_eq!(within(Locale::DATA, || kept.rewritten(None)), kept);
    }
}

/// Fails unless two texts have the same numbers, in whatever order, to a hundredth of each.
fn agree(told: &str, exact: &str) {
    let numbers = |text: &str| {
        let words = text.split(|c: char| !c.is_ascii_digit() && c != '.');
        let mut found: Vec<f64> = words.filter_map(|word| word.parse().ok()).collect();
        found.sort_by(f64::total_cmp);
        found
    };
    let (ours, theirs) = (numbers(told), numbers(exact));
    let near = |(a, b): (&f64, &f64)| (a - b).abs() <= 0.01 * b;
    let all = ours.iter().zip(&theirs).all(near) && ours.len() == theirs.len();
    assert!(all, "{told}\n{exact}");
}
