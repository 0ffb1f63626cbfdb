//! Tests of curves of decay against SciPy's nonlinear least squares and against a
//! likelihood with whole matrices. The figures are in
//! `reference/statistics/check_models.csv`.

#[path = "support/reference.rs"]
mod reference;

use inference::decay::{
    Question, Shape, Shared, Value, fit,
    plain::{Figure, Floor, exponential},
};
use reference::{file, within};

fn washes(name: &str) -> Vec<(f64, f64)> {
    let mut reader = csv::Reader::from_path(file(name)).expect("a table of values");
    reader
        .deserialize()
        .map(|row| row.expect("wash and K/S"))
        .collect()
}

fn figure(found: Figure, set: &str, name: &str) {
    within(1e-7, found.value, set, name);
    within(1e-6, found.standard_error, set, &format!("{name}_se"));
    let interval = found.interval(0.95);
    within(1e-6, interval.low, set, &format!("{name}_ci95_low"));
    within(1e-6, interval.high, set, &format!("{name}_ci95_high"));
}

#[test]
fn plain_curves_agree_with_the_reference_library() {
    let curve = exponential(&washes("data_decay.csv"), Floor::Fitted).unwrap();
    figure(curve.amplitude, "decay3", "A");
    figure(curve.rate, "decay3", "k");
    figure(curve.floor.unwrap(), "decay3", "c");
    within(1e-9, curve.rest, "decay3", "RSS");
    // ln 2 / k of the same fit, by hand.
    assert!((curve.half_life() - 3.544_472_389_6).abs() < 1e-6);
    let curve = exponential(&washes("data_decay_pure.csv"), Floor::Zero).unwrap();
    figure(curve.amplitude, "decay2", "A");
    figure(curve.rate, "decay2", "k");
    within(1e-9, curve.rest, "decay2", "RSS");
    assert!(curve.floor.is_none());
}

#[test]
fn the_curve_of_pieces_agrees_with_the_reference_library() {
    let mut reader = csv::Reader::from_path(file("data_fades.csv")).expect("a table of values");
    let values: Vec<Value> = reader
        .deserialize::<(String, f64, f64)>()
        .map(|row| {
            let (piece, rounds, left) = row.expect("piece, round, share left");
            let piece = piece[1..].parse().expect("a number");
            Value {
                piece,
                rounds,
                left,
            }
        })
        .collect();
    let decay = fit(&values, &Shared::NOTHING, &Question::usual(1)).unwrap();
    within(1e-6, decay.curve.floor, "fades", "S_inf");
    within(1e-6, decay.curve.rate, "fades", "k");
    let rest: f64 = values
        .iter()
        .map(|v| (v.left - decay.curve.left(v.rounds)).powi(2))
        .sum();
    within(1e-9, rest, "fades", "RSS");
    let passes = decay.passes(0.8).estimate.rounds().unwrap();
    within(1e-6, passes, "fades", "round_of_0.8");
    within(
        1e-6,
        decay.shapes.no_change.unwrap(),
        "fades",
        "aicc_no_change",
    );
    within(1e-6, decay.shapes.line.unwrap(), "fades", "aicc_line");
    within(1e-6, decay.shapes.curve.unwrap(), "fades", "aicc_curve");
    assert_eq!(decay.shapes.best(), Some(Shape::Curve));
}
