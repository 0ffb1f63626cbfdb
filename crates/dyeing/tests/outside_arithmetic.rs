//! Every row of `reference/dyeing/check_dye_arithmetic.csv`, whose last column names the source:
//! published worked examples, definitions, and figures of a second implementation.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use dyeing::{
    Celsius, Dose, Kitchen, LiquorRatio, Mass, PercentOwf, PercentWv, Volume,
    absorbance::{self, Calibration},
    balance::{DyeBalance, Start, WrittenReading, WrittenWaters},
    exhaustion::{self, Partition},
    hydrate::{self, Hydrate},
    rinse,
};

struct Row {
    section: String,
    case: String,
    inputs: String,
    value: String,
    unit: String,
}

fn rows() -> Vec<Row> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../reference/dyeing/check_dye_arithmetic.csv"
    );
    let mut reader = csv::Reader::from_path(path).unwrap();
    let records = reader.records().map(Result::unwrap);
    records
        .map(|r| Row {
            section: r[0].to_owned(),
            case: r[1].to_owned(),
            inputs: r[2].to_owned(),
            value: r[4].to_owned(),
            unit: r[5].to_owned(),
        })
        .collect()
}

fn g(text: &str) -> Mass {
    text.parse().unwrap()
}

fn ml(value: f64) -> Volume {
    Volume::from_millilitres(value).unwrap()
}

fn owf(percent: f64) -> PercentOwf {
    PercentOwf::new(percent).unwrap()
}

fn stock_ml(goods: &str, percent: f64, stock: f64) -> f64 {
    let dye = owf(percent).of(g(goods)).unwrap();
    PercentWv::new(stock)
        .unwrap()
        .holding(dye)
        .unwrap()
        .millilitres()
}

/// Stock for an auxiliary by g/L in a bath of 50 ml.
fn auxiliary_ml(grams_per_litre: f64, stock: f64) -> f64 {
    let dose = Dose::grams_per_litre(grams_per_litre).unwrap();
    let dyeing::Amount::Mass(solid) = dose.for_bath(Mass::ZERO, ml(50.0)).unwrap() else {
        panic!("g/L gives a mass");
    };
    PercentWv::new(stock)
        .unwrap()
        .holding(solid)
        .unwrap()
        .millilitres()
}

fn solid_g(dose: &str) -> f64 {
    let dose = Dose::read(dose, Kitchen::Us).unwrap();
    match dose.for_bath(g("250 g"), ml(5000.0)).unwrap() {
        dyeing::Amount::Mass(mass) => mass.grams(),
        other => panic!("{other} is no mass"),
    }
}

fn ratio(value: f64) -> LiquorRatio {
    LiquorRatio::new(value).unwrap()
}

fn standards() -> Calibration {
    // Printed absorbances; that one of them looks like 1/pi is chance.
    #[allow(clippy::approx_constant)]
    let absorbances = [0.004, 0.083, 0.161, 0.242, 0.318, 0.401];
    let pairs: Vec<_> = (0..6)
        .map(|k| (f64::from(k) * 2.0, absorbances[k as usize]))
        .collect();
    Calibration::fit(&pairs).unwrap()
}

/// A bath of so much liquor with so much dye.
fn bath_of(dye: &str, liquor_ml: f64) -> Start {
    Start {
        liquor: ml(liquor_ml),
        dye: Some(g(dye)),
        usual_exhaustion_percent: [60.0, 90.0],
        usual_fixation_percent: [50.0, 80.0],
        class: "dye".into(),
        kitchen: dyeing::Kitchen::Metric,
    }
}

/// Retained and total liquor, L/kg, as a row of rinses states them; the target comes from its unit.
fn rinse_count(inputs: &str, unit: &str) -> f64 {
    let numbers: Vec<f64> = inputs
        .split_whitespace()
        .filter_map(|word| word.parse().ok())
        .collect();
    let target = unit.rsplit(' ').next().unwrap().parse().unwrap();
    let left = rinse::left_by_one(numbers[0], numbers[1] - numbers[0], 0.0).unwrap();
    f64::from(rinse::rinses_to(target, left).unwrap())
}

fn found(row: &Row) -> Vec<f64> {
    let reading = || standards().concentration(0.275, 3).unwrap();
    let one = match (row.section.as_str(), row.case.as_str()) {
        ("owf", "dye mass") => owf(2.5).of(g("250 g")).unwrap().grams(),
        ("liquor", "volume") => ratio(20.0).liquor(g("250 g")).unwrap().millilitres(),
        ("stock", "dye stock") => stock_ml("5 g", 1.5, 1.0),
        ("stock", "dye stock 2") => stock_ml("5 g", 0.5, 1.0),
        ("stock", "dye stock 3") => stock_ml("5 g", 2.0, 0.5),
        ("gpl", "salt stock") => auxiliary_ml(40.0, 20.0),
        ("gpl", "soda stock") => auxiliary_ml(10.0, 20.0),
        ("gpl", "wetting agent") => auxiliary_ml(0.5, 1.0),
        ("gpl", "sequestrant") => auxiliary_ml(2.0, 1.0),
        ("gpl", "top-up water") => {
            let liquids = [2.5, 10.0, 5.0, 7.5, 10.0, 2.5].map(ml);
            dyeing::top_up(ml(50.0), liquids).unwrap().millilitres()
        }
        ("gpl", "salt solid") => solid_g("60 g/L"),
        ("gpl", "soda solid") => solid_g("15 g/L"),
        ("two-dye", "green") => {
            return vec![stock_ml("250 g", 0.8, 1.0), stock_ml("250 g", 0.5, 1.0)];
        }
        ("two-dye", "water to top up") => dyeing::top_up(ml(5000.0), [200.0, 125.0].map(ml))
            .unwrap()
            .millilitres(),
        ("owf", "salt as % owf <-> g/L") => owf(20.0).grams_per_litre(ratio(20.0)),
        ("owf", "vat check") => owf(10.0).grams_per_litre(ratio(30.0)),
        ("purity", _) => hydrate::at_strength(g("6.25 g"), 92.0).unwrap().grams(),
        ("moisture", "conditioned weight") => {
            hydrate::conditioned(g("200 g"), 8.5).unwrap().grams()
        }
        ("moisture", _) => hydrate::moisture_content_percent(8.5),
        ("hydrate", "Glauber salt") => 50.0 * Hydrate::GlauberDecahydrate.grams_for_one(),
        ("hydrate", "washing soda") => 15.0 * Hydrate::SodaDecahydrate.grams_for_one(),
        ("hydrate", _) => 15.0 * Hydrate::SodaMonohydrate.grams_for_one(),
        ("vinegar", _) => 2.0 * hydrate::vinegar_for_acid(56.0, 1.06, 0.05),
        ("exhaustion", "E") => {
            100.0 * exhaustion::exhausted_share(0.5, ml(1.0), 0.085, ml(1.0)).unwrap()
        }
        ("exhaustion", "E from absorbance") => {
            100.0 * exhaustion::exhausted_share(0.925 * 10.0, ml(1.0), 0.63 * 2.0, ml(1.0)).unwrap()
        }
        ("exhaustion", _) => 6.25 * 0.83 / 250.0 * 1000.0,
        ("fixation", "T total fixation") => 100.0 * exhaustion::total_fixation(0.83, 0.85),
        ("fixation", "unfixed to remove by washing") => {
            6.25 * (1.0 - exhaustion::total_fixation(0.83, 0.85))
        }
        ("fixation", _) => {
            let water = |volume: &str, concentration: &str| WrittenReading {
                volume: volume.into(),
                concentration: Some(concentration.into()),
                ..WrittenReading::default()
            };
            let waters = WrittenWaters {
                calibration: None,
                bath: Some(water("5 L", "0.2125 g/L")),
                rinse: vec![water("20 L", "38.9 mg/L")],
            };
            let balance = DyeBalance::of(&bath_of("6.25 g", 5000.0), &waters, 0.001).unwrap();
            balance.fixed.unwrap().middle * 6.25
        }
        ("partition", _) => {
            let ratio = ratio(row.unit.rsplit(' ').next().unwrap().parse().unwrap());
            100.0 * Partition::new(40.0).unwrap().share(ratio)
        }
        ("beer", "concentration") => {
            absorbance::milligrams_per_litre(0.742, 21_500.0, 1.0, 700.0).unwrap()
        }
        ("beer_calibration", "slope_L_per_mg") => standards().slope,
        ("beer_calibration", "intercept") => standards().intercept,
        ("beer_calibration", "s_y") => standards().scatter,
        ("beer_calibration", "x0_for_A0.275_m3") => reading().mg_per_l,
        ("beer_calibration", "se_x0") => reading().se_mg_per_l,
        ("beer_calibration", "ci95_low") => reading().low_mg_per_l,
        ("beer_calibration", "ci95_high") => reading().high_mg_per_l,
        ("beer_calibration", "LOD_3.3s/b") => standards().detection_limit_mg_per_l(),
        ("beer_calibration", "LOQ_10s/b") => standards().quantification_limit_mg_per_l(),
        ("beer", "rinse dye") => reading().mg_per_l * 5.0 * 3.0,
        ("beer_two_dye", case) => {
            let matrix = [[21_500.0, 3100.0], [2400.0, 26_800.0]];
            let both = absorbance::two_dyes(matrix, [0.612, 0.488]).unwrap();
            1e6 * both[usize::from(case == "c2")]
        }
        ("rinse", "n rinses") => rinse_count(&row.inputs, &row.unit),
        ("rinse", "split rinses") => {
            let one = |fresh| rinse::left_by_one(1.0, fresh, 0.0).unwrap();
            return vec![one(30.0), one(10.0).powi(3)];
        }
        ("rinse", "continuous overflow") => rinse::left_by_overflow(30.0, 10.0).unwrap(),
        ("rinse", "partition") => rinse::left_by_one(1.0, 10.0, 5.0).unwrap(),
        ("rinse", "partition n") => {
            let n = row.unit.rsplit(' ').next().unwrap().parse().unwrap();
            rinse::left_by_one(1.0, 10.0, 5.0).unwrap().powi(n)
        }
        ("temp", "F to C") => row.inputs.parse::<Celsius>().unwrap().celsius(),
        (section, case) => panic!("no test for {section}, {case}"),
    };
    vec![one]
}

#[test]
fn every_row_comes_out() {
    let rows = rows();
    assert_eq!(rows.len(), 69);
    for row in &rows {
        let printed = row
            .value
            .split(|c: char| !c.is_ascii_digit() && c != '.' && c != 'e' && c != '-');
        let wanted: Vec<f64> = printed.filter_map(|w| w.parse().ok()).collect();
        let found = found(row);
        assert_eq!(found.len(), wanted.len(), "{}: {}", row.section, row.case);
        for (found, wanted) in found.iter().zip(wanted) {
            // Two rows print eight decimals; the others are written in full.
            let allowed = if row.case == "split rinses" {
                5e-9
            } else {
                1e-9 * wanted.abs()
            };
            assert!(
                (found - wanted).abs() <= allowed,
                "{}: {}: {found} is not {wanted}",
                row.section,
                row.case
            );
        }
    }
}
