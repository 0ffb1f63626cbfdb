//! Kitchen measures against their exact definitions in
//! `reference/dyeing/kitchen_conversions_exact.csv`, and facts of the trade.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use dyeing::{Amount, Dose, Kitchen, Mass, MassUnit, Volume, VolumeUnit, goods, kitchen, material};

fn exact(unit: &str) -> f64 {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../reference/dyeing/kitchen_conversions_exact.csv"
    );
    let mut reader = csv::Reader::from_path(path).unwrap();
    let rows = reader.records().map(Result::unwrap);
    let row = rows.into_iter().find(|r| &r[0] == unit).expect(unit);
    row[2].parse().unwrap()
}

/// Published definitions: a US gallon of 231 cubic inches, an imperial gallon of 4.54609 L, a
/// pound of 0.45359237 kg.
#[test]
fn measures_are_exact() {
    for (name, text) in [
        ("US gallon", "1 US gallon"),
        ("US quart", "1 quart"),
        ("US pint", "1 US pint"),
        ("US cup (customary)", "1 cup"),
        ("US fluid ounce", "1 fl oz"),
        ("US tablespoon", "1 tbsp"),
        ("US teaspoon", "1 tsp"),
        ("US legal (nutrition label) cup", "1 label cup"),
        ("metric cup", "1 metric cup"),
        ("metric tablespoon", "1 metric tbsp"),
        ("Australian tablespoon", "1 Australian tablespoon"),
        ("metric teaspoon", "1 metric tsp"),
        ("imperial gallon", "1 imperial gallon"),
        ("imperial pint", "1 imp. pint"),
        ("imperial fluid ounce", "1 imperial fl. oz"),
    ] {
        let volume: Volume = text.parse().unwrap();
        assert_eq!(volume.millilitres(), exact(name), "{name}");
    }
    for (name, text) in [
        ("avoirdupois pound", "1 lb"),
        ("avoirdupois ounce", "1 oz"),
        ("grain", "1 grain"),
    ] {
        assert_eq!(text.parse::<Mass>().unwrap().grams(), exact(name), "{name}");
    }
}

#[test]
fn derived_rates_agree() {
    let near = |found: f64, name: &str| {
        let wanted = exact(name);
        assert!(
            (found - wanted).abs() < 1e-12 * wanted,
            "{name}: {found}, {wanted}"
        );
    };
    let gallon_l = VolumeUnit::UsGallon.millilitres() / 1000.0;
    near(MassUnit::Ounce.grams() / gallon_l, "oz/US gal");
    near(MassUnit::Pound.grams() / gallon_l, "lb/US gal");
    let yard_m = exact("yard");
    assert!((yard_m - 36.0 * exact("inch") / 1000.0).abs() < 1e-15);
    near(MassUnit::Ounce.grams() / (yard_m * yard_m), "oz/yd2");
}

/// Common practice, no source.
#[test]
fn facts_of_the_trade() {
    let gallon: Volume = "1 gallon".parse().unwrap();
    assert_eq!(gallon.in_unit(VolumeUnit::UsCup), 16.0);
    let third: Volume = "1/3 cup".parse().unwrap();
    assert!((third.millilitres() - 80.0).abs() < 1.5);
    assert_eq!(
        kitchen::measure(third, Kitchen::Us).unwrap().text,
        "1/3 cup"
    );
    // A third of a cup of salt, or of liquid dye, to a gallon: a cup to three gallons.
    let dose = Dose::read("1/3 cup to a gallon", Kitchen::Us).unwrap();
    let pot: Volume = "3 gallons".parse().unwrap();
    let Amount::Volume(taken) = dose.for_bath(Mass::ZERO, pot).unwrap() else {
        panic!("a cup is a volume");
    };
    assert_eq!(kitchen::measure(taken, Kitchen::Us).unwrap().text, "1 cup");
    // Half a bottle to a pound of dry goods, which are two or three adult T-shirts.
    let dose = Dose::read("half a bottle to a pound", Kitchen::Us).unwrap();
    let shirt = goods::find("T-shirt").unwrap();
    for (count, least, most) in [(2.0, 0.28, 0.45), (3.0, 0.42, 0.67)] {
        for one in [shirt.low_g, shirt.high_g] {
            let all = one.times(count).unwrap();
            let Amount::Bottles(bottles) = dose.for_bath(all, pot).unwrap() else {
                panic!("a bottle of no known size stays a bottle");
            };
            assert!((least..most).contains(&bottles), "{count}: {bottles}");
        }
    }
}

/// A cup of soda ash is 135 to 154 g if light: makers' densities, as `data/materials.toml` says.
#[test]
fn a_cup_of_soda_ash_is_far_from_sure() {
    let cup: Volume = "1 cup".parse().unwrap();
    let [light, ..] = material::find("soda ash")
        .unwrap()
        .density
        .unwrap()
        .weighs(cup)
        .unwrap();
    let [_, _, dense] = material::find("dense soda ash")
        .unwrap()
        .density
        .unwrap()
        .weighs(cup)
        .unwrap();
    assert_eq!(
        (light.grams().round(), dense.grams().round()),
        (135.0, 248.0)
    );
}
