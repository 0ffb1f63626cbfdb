use super::{plain::Floor, *};
use crate::{InferenceError, chance::Chance};
use proptest::prelude::*;

/// Pieces that follow the curve, each with a start error of its own and noise.
fn drawn(curve: Curve, pieces: usize, stages: &[f64], noise: f64) -> Vec<Value> {
    let mut chance = Chance::new(pieces as u64);
    let mut values = Vec::new();
    for piece in 0..pieces {
        let start = 1.0 + noise * chance.normal();
        for &rounds in stages {
            let left = curve.left(rounds) * start + noise * chance.normal();
            values.push(Value {
                piece,
                rounds,
                left,
            });
        }
    }
    values
}

const FADES: Curve = Curve {
    floor: 0.6,
    rate: 0.4,
};
const STAGES: [f64; 5] = [1.0, 3.0, 5.0, 10.0, 15.0];

fn asked(values: &[Value]) -> Result<Decay, InferenceError> {
    fit(values, &Shared::NOTHING, &Question::usual(3))
}

#[test]
fn a_curve_without_noise_comes_back() {
    let decay = asked(&drawn(FADES, 4, &STAGES, 0.0)).unwrap();
    assert_eq!(decay.state, State::Within);
    assert!((decay.curve.floor - 0.6).abs() < 1e-7 && (decay.curve.rate - 0.4).abs() < 1e-6);
    assert_eq!(decay.shapes.best(), Some(Shape::Curve));
    let ends = decay.passes(0.8).interval.unwrap();
    assert!(matches!(ends, (Round::Seen(low), Round::Seen(high)) if (high - low).abs() < 1e-3));
}

#[test]
fn the_last_round_bounds_what_is_said() {
    let decay = asked(&drawn(FADES, 6, &[1.0, 3.0, 5.0], 0.01)).unwrap();
    assert!(!decay.left(5.0).unwrap().extrapolated);
    assert!(decay.left(5.01).unwrap().extrapolated && decay.left(10.0).unwrap().extrapolated);
    let refused = decay.left(10.1).unwrap_err();
    assert!(
        refused.to_string().contains("twice the last round"),
        "{refused}"
    );
    assert!(decay.left(-1.0).is_err() && decay.left(f64::NAN).is_err());
    // Passed at 1.7, at 6.5, at 12, never.
    assert!(matches!(decay.passes(0.8).estimate, Round::Seen(_)));
    assert!(matches!(
        decay.passes(0.63).estimate,
        Round::Extrapolated(_)
    ));
    assert_eq!(decay.passes(0.603).estimate, Round::Later);
    assert_eq!(decay.passes(0.3).estimate, Round::Later);
    assert_eq!(decay.passes(1.0).estimate, Round::Seen(0.0));
}

#[test]
fn bounds_are_kept_and_said() {
    let line: Vec<Value> = (0..4)
        .flat_map(|piece| {
            [1.0, 3.0, 5.0].map(|rounds| Value {
                piece,
                rounds,
                left: 1.0 - 0.1 * rounds + 0.001 * (piece as f64) * rounds,
            })
        })
        .collect();
    let decay = asked(&line).unwrap();
    assert_eq!((decay.state, decay.curve.floor), (State::NoFloor, 0.0));
    assert_eq!(decay.shapes.best(), Some(Shape::Line));
    let at_once: Vec<Value> = line.iter().map(|v| Value { left: 0.7, ..*v }).collect();
    let decay = asked(&at_once).unwrap();
    assert_eq!(decay.state, State::AtOnce);
    assert!((decay.curve.floor - 0.7).abs() < 1e-4);
    let rising: Vec<Value> = line
        .iter()
        .map(|v| Value {
            left: 1.0 + 0.02 * v.rounds,
            ..*v
        })
        .collect();
    let decay = asked(&rising).unwrap();
    assert_eq!((decay.state, decay.curve), (State::Rising, Curve::FLAT));
    assert_eq!(decay.passes(0.9).estimate, Round::Later);
}

#[test]
fn all_equal_to_the_start_is_flat() {
    let same = drawn(Curve::FLAT, 3, &STAGES, 0.0);
    let decay = asked(&same).unwrap();
    assert_eq!((decay.state, decay.curve), (State::Flat, Curve::FLAT));
    assert_eq!(decay.shapes.best(), Some(Shape::NoChange));
    assert_eq!(decay.left(30.0).unwrap().left, 1.0);
}

#[test]
fn one_piece_has_a_curve_and_no_interval() {
    let decay = asked(&drawn(FADES, 1, &STAGES, 0.01)).unwrap();
    assert_eq!(decay.pieces, 1);
    assert!(decay.left(3.0).unwrap().interval.is_none());
    assert!(decay.passes(0.8).interval.is_none() && decay.floor_interval().is_none());
    assert!(matches!(decay.passes(0.8).estimate, Round::Seen(_)));
}

#[test]
fn too_little_and_what_is_no_number_are_refused() {
    let one_stage = asked(&drawn(FADES, 4, &[5.0], 0.01)).unwrap_err();
    assert_eq!(
        one_stage,
        InferenceError::TooFewStages { given: 1, least: 2 }
    );
    assert!(matches!(
        asked(&[]),
        Err(InferenceError::TooFewStages { given: 0, .. })
    ));
    let mut values = drawn(FADES, 4, &STAGES, 0.01);
    for (rounds, left) in [
        (1.0, f64::NAN),
        (f64::INFINITY, 0.9),
        (0.0, 1.0),
        (-1.0, 0.9),
        (1.0, 1e9),
    ] {
        values[2] = Value {
            piece: 0,
            rounds,
            left,
        };
        assert!(asked(&values).is_err(), "{rounds} {left}");
    }
    let fine = drawn(FADES, 4, &STAGES, 0.01);
    for question in [
        Question {
            level: 1.0,
            ..Question::usual(1)
        },
        Question {
            draws: 3,
            ..Question::usual(1)
        },
    ] {
        assert!(fit(&fine, &Shared::NOTHING, &question).is_err());
    }
    let shared = Shared {
        by_stage: f64::NAN,
        ..Shared::NOTHING
    };
    assert!(fit(&fine, &shared, &Question::usual(1)).is_err());
}

#[test]
fn missing_looks_and_repeats_are_taken() {
    let mut values = drawn(FADES, 5, &STAGES, 0.01);
    values.retain(|v| (v.piece + v.rounds as usize) % 4 != 1);
    let again = values[0];
    values.push(again);
    let decay = asked(&values).unwrap();
    let left = decay.left(15.0).unwrap();
    assert!((left.left - FADES.left(15.0)).abs() < 0.02);
    assert!(left.interval.unwrap().contains(left.left));
}

/// What is shared by a stage can't be seen in how pieces differ, so it widens.
#[test]
fn what_a_stage_shares_widens_the_interval() {
    let values = drawn(FADES, 6, &STAGES, 0.02);
    let width = |shared: &Shared| {
        let decay = fit(&values, shared, &Question::usual(1)).unwrap();
        let interval = decay.left(10.0).unwrap().interval.unwrap();
        interval.high - interval.low
    };
    let alone = width(&Shared::NOTHING);
    let kept = width(&Shared {
        by_stage: 1.0,
        at_start: 1.0,
        by_others: 0.0,
    });
    let others = width(&Shared {
        by_stage: 1.0,
        at_start: 0.0,
        by_others: 1.0,
    });
    assert!(
        kept > 1.5 * alone && others > 1.5 * alone,
        "{alone} {kept} {others}"
    );
}

#[test]
fn the_plain_curve_refuses_what_settles_nothing() {
    let at = |values: &[f64]| -> Vec<(f64, f64)> {
        values
            .iter()
            .enumerate()
            .map(|(n, v)| (n as f64, *v))
            .collect()
    };
    let flat = at(&[5.0; 6]);
    let rising = at(&[1.0, 2.0, 4.0, 8.0, 16.0, 32.0]);
    let line = at(&[10.0, 9.0, 8.0, 7.0, 6.0, 5.0]);
    for values in [&flat, &rising, &line] {
        let refused = plain::exponential(values, Floor::Fitted).unwrap_err();
        assert!(
            matches!(refused, InferenceError::NotSettled { .. }),
            "{refused}"
        );
    }
    assert!(plain::exponential(&flat[..3], Floor::Fitted).is_err());
    assert!(plain::exponential(&[(1.0, 2.0); 6], Floor::Zero).is_err());
    assert!(plain::exponential(&at(&[5.0, f64::NAN, 3.0, 2.0]), Floor::Zero).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(30))]
    #[test]
    fn order_and_unit_of_rounds_change_nothing_else(
        floor in 0.05..0.95, rate in 0.05..1.0, scale in 0.2..5.0,
    ) {
        let values = drawn(Curve { floor, rate }, 3, &STAGES, 0.02);
        let mut turned: Vec<Value> = values
            .iter()
            .map(|v| Value { piece: 9 - v.piece, rounds: v.rounds * scale, left: v.left })
            .collect();
        turned.reverse();
        let (one, other) = (asked(&values).unwrap(), asked(&turned).unwrap());
        prop_assert!((one.curve.floor - other.curve.floor).abs() < 1e-5);
        prop_assert!(f64::abs(one.curve.rate - other.curve.rate * scale) < 1e-4 * one.curve.rate);
        let (a, b) = (one.shapes.curve.unwrap(), other.shapes.curve.unwrap());
        prop_assert!((a - b).abs() < 1e-3);
    }

    #[test]
    fn figures_stay_within_their_bounds(
        left in proptest::collection::vec(-1.0..3.0, 12), seed in 0_u64..100,
    ) {
        let values: Vec<Value> = left
            .iter()
            .enumerate()
            .map(|(i, left)| Value { piece: i % 3, rounds: (1 + i / 3) as f64, left: *left })
            .collect();
        let decay = fit(&values, &Shared::NOTHING, &Question { draws: 100, ..Question::usual(seed) });
        let decay = decay.unwrap();
        prop_assert!((0.0..=1.0).contains(&decay.curve.floor) && decay.curve.rate >= 0.0);
        let interval = decay.floor_interval().unwrap();
        prop_assert!(interval.low >= 0.0 && interval.high <= 1.0);
        let at_last = decay.left(4.0).unwrap();
        prop_assert!(at_last.left <= 1.0 && at_last.left >= 0.0);
    }
}
