//! Laws that hold for every quantity.

use dyeing::{
    Amount, Celsius, Dose, Kitchen, LiquorRatio, Mass, MassUnit, Money, PercentOwf, PercentWv,
    Volume, VolumeUnit, exhaustion::Partition, kitchen, material,
};
use proptest::prelude::*;

const VOLUMES: [VolumeUnit; 8] = [
    VolumeUnit::Litre,
    VolumeUnit::UsTeaspoon,
    VolumeUnit::UsTablespoon,
    VolumeUnit::UsCup,
    VolumeUnit::UsGallon,
    VolumeUnit::MetricCup,
    VolumeUnit::ImperialPint,
    VolumeUnit::ImperialGallon,
];
const MASSES: [MassUnit; 4] = [
    MassUnit::Kilogram,
    MassUnit::Grain,
    MassUnit::Ounce,
    MassUnit::Pound,
];

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs())
}

proptest! {
    #[test]
    fn there_and_back(value in 0.0..1e6f64, unit in 0usize..8, mass in 0usize..4) {
        let volume = Volume::new(value, VOLUMES[unit]).unwrap();
        prop_assert!(near(volume.in_unit(VOLUMES[unit]), value));
        let weight = Mass::new(value, MASSES[mass]).unwrap();
        prop_assert!(near(weight.in_unit(MASSES[mass]), value));
        let warm = Celsius::from_fahrenheit(32.0 + value / 1e4).unwrap();
        prop_assert!((warm.fahrenheit() - 32.0 - value / 1e4).abs() < 1e-9);
        let stock = PercentWv::new(1.0 + value / 1e5).unwrap();
        prop_assert!(near(stock.within(stock.holding(weight).unwrap()).unwrap().grams(), weight.grams()));
    }

    #[test]
    fn what_a_kitchen_says_can_be_read_again(ml in 0.7..40_000.0f64) {
        for kind in [Kitchen::Us, Kitchen::Metric, Kitchen::Imperial] {
            let volume = Volume::from_millilitres(ml).unwrap();
            let measure = kitchen::measure(volume, kind).unwrap();
            let again: Volume = measure.text.parse().unwrap();
            prop_assert!(near(again.millilitres(), measure.volume.millilitres()), "{}", measure.text);
            // Never further off than half of the smallest spoon or a good cup's share.
            let off = (again.millilitres() - ml).abs();
            prop_assert!(off <= (0.04 * ml).max(0.65), "{ml} ml is not {}", measure.text);
            prop_assert!(measure.least <= measure.volume && measure.volume <= measure.most);
        }
    }

    #[test]
    fn twice_the_goods_take_twice_the_dye(goods in 0.1..1e5f64, k in 0.01..100.0f64, percent in 0.0..20.0f64) {
        let goods = Mass::from_grams(goods).unwrap();
        let share = PercentOwf::new(percent).unwrap();
        let (one, many) = (share.of(goods).unwrap(), share.of(goods.times(k).unwrap()).unwrap());
        prop_assert!(near(many.grams(), one.grams() * k));
        let ratio = LiquorRatio::new(20.0).unwrap();
        let (one, many) = (ratio.liquor(goods).unwrap(), ratio.liquor(goods.times(k).unwrap()).unwrap());
        prop_assert!(near(many.millilitres(), one.millilitres() * k));
        for text in ["1/3 cup to a gallon", "60 g/L", "half a bottle to a pound", "20 % owf"] {
            let dose = Dose::read(text, Kitchen::Us).unwrap();
            let small = dose.for_bath(goods, one).unwrap();
            let large = dose.for_bath(goods.times(k).unwrap(), many).unwrap();
            if let Some(found) = large.over(small) {
                prop_assert!((found - k).abs() < 1e-9 * k, "{text}");
            }
        }
    }

    #[test]
    fn nothing_is_below_nothing(value in -1e9..1e9f64) {
        prop_assert_eq!(Mass::from_grams(value).is_ok(), value >= 0.0);
        prop_assert_eq!(Volume::from_millilitres(value).is_ok(), value >= 0.0);
        prop_assert_eq!(PercentOwf::new(value).is_ok(), value >= 0.0);
        prop_assert!(Mass::from_grams(1.0).unwrap().times(-1.0).is_err());
    }

    #[test]
    fn money_is_whole_cents(cents in 0i64..10_000_000, factor in 0.0..100.0f64) {
        let found = Money::from_cents(cents).times(factor).unwrap();
        prop_assert!((found.cents() as f64 - cents as f64 * factor).abs() <= 0.5 + 1e-5);
        prop_assert_eq!(found.to_string().parse::<Money>().unwrap(), found);
    }

    #[test]
    fn more_water_takes_up_less(k in 1.0..500.0f64, ratio in 2.0..100.0f64) {
        let partition = Partition::new(k).unwrap();
        let (a, b) = (LiquorRatio::new(ratio).unwrap(), LiquorRatio::new(ratio * 1.5).unwrap());
        prop_assert!(partition.share(a) > partition.share(b));
        let again = Partition::from_share(partition.share(a), a).unwrap();
        prop_assert!((again.k_l_per_kg() - k).abs() < 1e-6 * k);
        prop_assert!(partition.change_of_pot(a, b).sentence().contains('%'));
    }

    #[test]
    fn any_text_gets_an_answer(text in "\\PC{0,20}", digits in "[0-9/ .,½a-z%]{0,16}") {
        for text in [text, digits] {
            for fault in [
                text.parse::<Mass>().err(),
                text.parse::<Volume>().err(),
                text.parse::<Celsius>().err(),
                Dose::read(&text, Kitchen::Imperial).err(),
                PercentWv::read(&text).err(),
                text.parse::<LiquorRatio>().err(),
                text.parse::<Money>().err(),
            ].into_iter().flatten() {
                prop_assert!(!fault.to_string().is_empty());
                if let Some(pointed) = fault.pointed() {
                    let mark = pointed.lines().last().unwrap().chars().count();
                    prop_assert!(mark <= text.chars().count() + 1);
                }
            }
        }
    }
}

#[test]
fn faults_say_what_to_write() {
    for (text, part) in [
        ("60 %", "% owf"),
        ("3 T", "tbsp"),
        ("a pinch", "weigh it"),
        ("1//3 cup", "after the stroke"),
        ("5", "a unit is missing"),
        ("1-2 tbsp", "a range is no amount"),
        ("1 cup + 3 g", "can't be added"),
        ("2 metric gallons", "US or imperial"),
        ("3 wombats", "no unit known"),
        ("5 g per 0 L", "more than 0"),
        ("20 min", "not a time"),
    ] {
        let fault = Dose::read(text, Kitchen::Us).unwrap_err().to_string();
        assert!(fault.contains(part), "{text}: {fault}");
    }
    let over_the_boil = "400 F".parse::<Celsius>().unwrap_err().to_string();
    assert!(over_the_boil.contains("0 to 140 °C"), "{over_the_boil}");
}

#[test]
fn doses_are_read_as_labels_write_them() {
    let goods: Mass = "1 lb".parse().unwrap();
    let gallons: Volume = "3 gallons".parse().unwrap();
    let dose = |text: &str| {
        Dose::read(text, Kitchen::Us)
            .unwrap()
            .for_bath(goods, gallons)
            .unwrap()
    };
    assert_eq!(
        dose("half a bottle to a pound of dry goods"),
        Amount::Bottles(0.5)
    );
    assert_eq!(dose("1/2 bottle per lb"), Amount::Bottles(0.5));
    let Amount::Volume(cups) = dose("1/3 cup to a gallon of water") else {
        panic!("cups are a volume");
    };
    assert!((cups.in_unit(VolumeUnit::UsCup) - 1.0).abs() < 1e-12);
    let Amount::Mass(salt) = dose("20 % owf") else {
        panic!("% owf is a mass");
    };
    assert!((salt.grams() - 0.2 * goods.grams()).abs() < 1e-9);
}

/// The spread of a spoonful of powder is the measure's and the powder's together.
#[test]
fn a_powder_by_the_cup_says_how_far_it_is_off() {
    let ash = material::find("soda ash").unwrap();
    let wanted = Mass::from_grams(75.0).unwrap();
    let found = kitchen::powder(wanted, ash.density.unwrap(), Kitchen::Us).unwrap();
    assert_eq!(found.measure.text, "1/2 cup + 1 tsp");
    assert!(found.least.grams() < 70.0 && found.most.grams() > 110.0);
    assert_eq!(
        found.off(wanted),
        "it may weigh 66.6 to 117 g (-11 to +56 %)"
    );
}

/// Once they were 1/4 cup + 1 tbsp, which is 3.5 ml less; a cup holds 236.6 ml.
#[test]
fn one_measure_is_said_where_it_is_nearer_than_two() {
    let volume = Volume::from_millilitres(77.4).unwrap();
    let measure = kitchen::measure(volume, Kitchen::Us).unwrap();
    assert_eq!(measure.text, "1/3 cup");
    assert!((measure.volume.millilitres() - 236.588 / 3.0).abs() < 0.01);
}
