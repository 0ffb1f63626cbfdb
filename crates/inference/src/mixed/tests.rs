use super::*;
use crate::{InferenceError, chance::Chance, dunnett::Dunnett, mean_difference};
use proptest::prelude::*;

const NO_LOADS: &[Option<usize>] = &[];

fn cells(rows: &[(usize, usize, usize, f64)]) -> Cells {
    let mut cells = Cells::new(0);
    for &(piece, arm, stage, value) in rows {
        let place = Place {
            piece,
            loads: NO_LOADS,
        };
        cells.add(place, arm, stage, value).unwrap();
    }
    cells
}

/// Arms of some pieces at some stages, with scatter of pieces and a rest.
fn drawn(seed: u64, arms: usize, per_arm: usize, stages: usize) -> Vec<(usize, usize, usize, f64)> {
    let mut chance = Chance::new(seed);
    let mut rows = Vec::new();
    for arm in 0..arms {
        for piece in arm * per_arm..(arm + 1) * per_arm {
            let own = chance.normal();
            for stage in 0..stages {
                let value = own + 0.5 * chance.normal() + (arm * stage) as f64;
                rows.push((piece, arm, stage, value));
            }
        }
    }
    rows
}

#[test]
fn equal_values_are_refused() {
    let rows: Vec<_> = (0..12).map(|i| (i / 2, i / 6, i % 2, 3.3)).collect();
    assert_eq!(cells(&rows).fit().unwrap_err(), InferenceError::NoScatter);
    // Pieces differ, but none changes: nothing is left to judge stages by.
    let rows: Vec<_> = (0..12)
        .map(|i| (i / 2, i / 6, i % 2, (i / 2) as f64))
        .collect();
    assert_eq!(cells(&rows).fit().unwrap_err(), InferenceError::NoScatter);
}

#[test]
fn what_is_not_a_number_is_refused() {
    let place = Place {
        piece: 0,
        loads: NO_LOADS,
    };
    let mut cells = Cells::new(0);
    for value in [f64::NAN, f64::INFINITY] {
        assert_eq!(
            cells.add(place, 0, 0, value),
            Err(InferenceError::NotFinite)
        );
    }
    let mut data = Data::new(2, 0);
    assert_eq!(
        data.add(place, &[1.0, f64::NAN], 1.0),
        Err(InferenceError::NotFinite)
    );
    let short = data.add(place, &[1.0], 1.0);
    assert_eq!(
        short,
        Err(InferenceError::Length {
            given: 1,
            wanted: 2
        })
    );
    assert!(restricted(&data).is_err() && data.is_empty());
}

#[test]
fn one_stage_is_students_test() {
    let rows: Vec<_> = drawn(4, 2, 5, 1);
    let cells = cells(&rows);
    let fit = cells.fit().unwrap();
    assert_eq!(fit.pieces.state, State::NotTold);
    let found = fit.contrast(&cells.difference(1, 0, 0).unwrap()).unwrap();
    let values: Vec<f64> = rows.iter().map(|row| row.3).collect();
    let student = mean_difference::pooled(&values[..5], &values[5..]).unwrap();
    assert!((found.t() - student.t()).abs() < 1e-9);
    assert!((found.df - student.df).abs() < 1e-9);
}

#[test]
fn a_comparison_of_single_pieces_is_refused_but_not_their_changes() {
    let cells = cells(&drawn(5, 2, 1, 4));
    let fit = cells.fit();
    // As many means as values leave nothing.
    assert!(matches!(fit, Err(InferenceError::TooFew { .. })));
    let mut lines = Data::new(4, 0);
    for (piece, arm, stage, value) in drawn(5, 2, 1, 4) {
        let (arm, stage) = (arm as f64, stage as f64);
        let place = Place {
            piece,
            loads: NO_LOADS,
        };
        lines
            .add(place, &[1.0, arm, stage, arm * stage], value)
            .unwrap();
    }
    let fit = restricted(&lines).unwrap();
    assert_eq!(fit.pieces.state, State::NotTold);
    let refused = fit.contrast(&[0.0, 1.0, 0.0, 0.0]).unwrap_err();
    assert_eq!(refused, InferenceError::Confounded { part: "pieces" });
    assert!(fit.contrast(&[0.0, 0.0, 0.0, 1.0]).is_ok());
}

#[test]
fn an_arm_with_one_piece_is_compared_by_the_scatter_of_the_others() {
    let rows: Vec<_> = drawn(6, 2, 5, 3)
        .into_iter()
        .filter(|(piece, ..)| *piece <= 5)
        .collect();
    let cells = cells(&rows);
    let fit = cells.fit().unwrap();
    let found = fit.contrast(&cells.difference(0, 1, 2).unwrap()).unwrap();
    assert!(found.standard_error > 0.5 && found.df < 12.0, "{found:?}");
}

#[test]
fn arms_with_loads_of_their_own_are_not_compared() {
    let mut cells = Cells::new(1);
    for (piece, arm, stage, value) in drawn(7, 2, 4, 3) {
        let loads = &[Some(arm)];
        cells
            .add(Place { piece, loads }, arm, stage, value)
            .unwrap();
    }
    let fit = cells.fit().unwrap();
    assert_eq!(fit.loads[0].state, State::NotTold);
    let refused = fit
        .contrast(&cells.difference(0, 1, 2).unwrap())
        .unwrap_err();
    assert_eq!(refused, InferenceError::Confounded { part: "loads" });
    assert!(
        fit.contrast(&cells.difference_of_changes(0, 1, 0, 2).unwrap())
            .is_ok()
    );
}

#[test]
fn a_load_for_each_piece_changes_nothing() {
    let rows = drawn(8, 2, 4, 3);
    let mut with = Cells::new(1);
    for &(piece, arm, stage, value) in &rows {
        let loads = &[Some(piece + 7)];
        with.add(Place { piece, loads }, arm, stage, value).unwrap();
    }
    let without = cells(&rows);
    let weights = with.difference(0, 1, 2).unwrap();
    let fit = with.fit().unwrap();
    assert_eq!(fit.loads[0].state, State::NotTold);
    let found = fit.contrast(&weights).unwrap();
    let plain = without.fit().unwrap().contrast(&weights).unwrap();
    assert!((found.standard_error - plain.standard_error).abs() < 1e-9);
    assert!((found.df - plain.df).abs() < 1e-6);
}

/// Pieces that differ less than chance would have them: common practice calls the
/// variance 0, and the model is then ordinary least squares.
#[test]
fn pieces_that_differ_by_nothing_have_a_variance_of_0() {
    let rows: Vec<_> = [1.0, 3.0, 3.1, 0.9, 1.1, 2.9, 2.0, 4.1, 4.0, 2.1, 1.9, 3.9]
        .into_iter()
        .enumerate()
        .map(|(i, value)| (i / 2, i / 6, 0, value))
        .collect();
    let cells = cells(&rows);
    let fit = cells.fit().unwrap();
    assert_eq!(
        fit.pieces,
        Part {
            variance: 0.0,
            state: State::Zero
        }
    );
    let found = fit.contrast(&cells.difference(0, 1, 0).unwrap()).unwrap();
    let values: Vec<f64> = rows.iter().map(|row| row.3).collect();
    let plain = mean_difference::pooled(&values[6..], &values[..6]).unwrap();
    assert!((found.estimate - plain.difference).abs() < 1e-9);
    assert!((found.standard_error - plain.standard_error).abs() < 1e-9);
    assert!((found.df - 10.0).abs() < 1e-9);
}

#[test]
fn a_fixed_effect_that_follows_from_others_is_named() {
    let mut data = Data::new(3, 0);
    for (piece, arm, _, value) in drawn(9, 2, 4, 2) {
        let arm = arm as f64;
        let place = Place {
            piece,
            loads: NO_LOADS,
        };
        data.add(place, &[1.0, arm, 1.0 - arm], value).unwrap();
    }
    let refused = restricted(&data).unwrap_err();
    assert_eq!(refused, InferenceError::Inseparable { column: 2 });
    assert!(refused.to_string().contains("fixed effect 3"));
}

#[test]
fn a_lost_piece_leaves_a_cell_and_a_lost_cell_is_named() {
    let mut rows = drawn(10, 3, 3, 3);
    rows.retain(|(piece, _, stage, _)| {
        (*piece, *stage) != (4, 2) && (*piece / 3, *stage) != (2, 1)
    });
    let cells = cells(&rows);
    let fit = cells.fit().unwrap();
    assert!(fit.contrast(&cells.difference(0, 1, 2).unwrap()).is_ok());
    assert!(
        fit.contrast(&cells.average_difference(0, 2).unwrap())
            .is_ok()
    );
    let lost = cells.difference(0, 2, 1).unwrap_err();
    assert_eq!(lost.to_string(), "arm 3 has no value at stage 2");
}

#[test]
fn balanced_arms_against_a_control_have_dunnetts_limit() {
    let cells = cells(&drawn(11, 4, 4, 1));
    let fit = cells.fit().unwrap();
    let weights: Vec<_> = (1..4)
        .map(|arm| cells.difference(0, arm, 0).unwrap())
        .collect();
    let judged = fit.by_dunnett(&weights).unwrap();
    let limit = Dunnett::equal(3).unwrap().limit(0.05, 12.0);
    for (interval, contrast) in judged.intervals(0.95).into_iter().zip(&judged.contrasts) {
        let half = (interval.high - interval.low) / 2.0;
        assert!((half / contrast.standard_error - limit).abs() < 1e-6);
    }
    let by_holm = fit.by_holm(&weights).unwrap();
    for (at, (contrast, p)) in by_holm.into_iter().enumerate() {
        assert!(contrast.p() <= judged.p(at).unwrap() + 1e-9 && contrast.p() <= p);
    }
    let apart = [
        cells.difference(0, 1, 0).unwrap(),
        cells.difference(2, 3, 0).unwrap(),
    ];
    assert_eq!(fit.by_dunnett(&apart), Err(InferenceError::NoControl));
}

/// The usual small trial, sparse, in washes that hold some pieces of each arm.
fn trial(seed: u64, piece_sd: f64, load_sd: f64) -> Cells {
    let mut chance = Chance::new(seed);
    let mut cells = Cells::new(1);
    let mut washes = [0.0; 12];
    washes
        .iter_mut()
        .for_each(|wash| *wash = load_sd * chance.normal());
    for piece in 0..10 {
        let own = piece_sd * chance.normal();
        for stage in 0..3 {
            if (piece + 2 * stage) % 7 == 3 {
                continue;
            }
            let wash = stage * 4 + (piece / 2 + stage) % 4;
            let value = own + washes[wash] + 0.4 * chance.normal();
            let loads = &[Some(wash)];
            cells
                .add(Place { piece, loads }, piece % 2, stage, value)
                .unwrap();
        }
    }
    cells
}

#[test]
fn intervals_hold_in_small_sparse_trials() {
    const RUNS: u64 = 800;
    for (piece_sd, load_sd) in [(0.8, 0.5), (0.4, 0.0), (0.0, 0.8)] {
        let mut held = [0.0; 2];
        for seed in 0..RUNS {
            let cells = trial(1000 + seed, piece_sd, load_sd);
            let fit = cells.fit().unwrap();
            let weights = [
                cells.difference(0, 1, 2),
                cells.difference_of_changes(0, 1, 0, 2),
            ];
            for (held, weights) in held.iter_mut().zip(weights) {
                let found = fit.contrast(&weights.unwrap()).unwrap();
                *held += f64::from(found.interval(0.95).contains(0.0)) / RUNS as f64;
            }
        }
        for share in held {
            assert!(
                share > 0.92 && share < 0.98,
                "{piece_sd} {load_sd}: {share}"
            );
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]
    #[test]
    fn shift_scale_and_order_change_nothing_else(
        seed in 0_u64..1000, shift in -1e4..1e4, scale in 1e-3..1e3,
    ) {
        let rows = drawn(seed, 2, 4, 3);
        let plain = cells(&rows);
        let mut turned: Vec<_> = rows
            .iter()
            .map(|(piece, arm, stage, value)| (90 - piece, *arm, *stage, value * scale + shift))
            .collect();
        turned.reverse();
        let moved = cells(&turned);
        let one = plain.fit().unwrap();
        let other = moved.fit().unwrap();
        let (a, b) = (
            one.contrast(&plain.difference(0, 1, 2).unwrap()).unwrap(),
            other.contrast(&moved.difference(0, 1, 2).unwrap()).unwrap(),
        );
        let near = |a: f64, b: f64, size: f64| (a - b).abs() < 1e-6 * size;
        prop_assert!(near(a.estimate * scale, b.estimate, scale));
        prop_assert!(near(a.standard_error * scale, b.standard_error, scale));
        prop_assert!(near(a.df, b.df, 10.0));
        prop_assert!(near(one.pieces.variance * scale * scale, other.pieces.variance, scale * scale));
    }
}
