use super::super::{Analysis, Contrasts, Layout, Piece};
use super::*;
use crate::{mean_difference, quantile};
use std::{collections::HashMap, path::PathBuf};

fn table(name: &str) -> csv::Reader<std::fs::File> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../reference/statistics");
    csv::Reader::from_path(folder.join(name)).expect("a table")
}

fn layout(arms: usize, pieces: Vec<Piece>, scatter: ScatterOf) -> Layout {
    Layout {
        arms,
        kinds: pieces[0].loads.len(),
        pieces,
        keepers: vec![0; arms],
        contrasts: Contrasts::AllPairs,
        scatter,
    }
}

/// Judges those changes instead of drawn ones.
fn judged(layout: &Layout, changes: &[f64]) -> Vec<(Analysis, Judged)> {
    let design = Design::of(layout).unwrap();
    let truth = Truth {
        effects: vec![0.0; layout.arms],
        piece_sd: 1.0,
        load_sds: vec![0.0; layout.kinds],
        reading_sd: 0.0,
        photos: 1,
        margin: None,
        parts: 1,
    };
    let mut drawer = Drawer::of(layout, &truth, 1);
    drawer.changes.copy_from_slice(changes);
    let rest = |fit: &Fit| {
        let mut rest = fit.nothing();
        fit.rest(changes, &mut rest);
        rest
    };
    let rests: Vec<Rest> = design.fits.iter().map(rest).collect();
    let judge = |at: usize| {
        (
            design.contrasts[at].analysis,
            design.judge(at, &drawer, &rests),
        )
    };
    (0..design.contrasts.len()).map(judge).collect()
}

fn near(found: f64, expected: f64) {
    assert!(
        (found - expected).abs() < 1e-9 * expected.abs().max(1.0),
        "{found} {expected}"
    );
}

/// Reference library: statsmodels' ordinary least squares.
#[test]
fn within_loads_of_two_kinds_it_is_the_reference_library() {
    let figures: HashMap<String, f64> = table("check_statistics.csv")
        .records()
        .map(|row| row.expect("a row"))
        .filter(|row| &row[0] == "within_loads")
        .map(|row| (row[1].to_owned(), row[2].parse().expect("a number")))
        .collect();
    let rows: Vec<(String, usize, usize, f64)> = table("data_loads.csv")
        .deserialize()
        .collect::<Result<_, _>>()
        .expect("rows");
    let pieces = rows.iter().map(|(arm, bath, wash, _)| Piece {
        arm: ["a", "b", "c"]
            .iter()
            .position(|name| name == arm)
            .expect("an arm"),
        loads: vec![Some(*bath), Some(*wash)],
    });
    let changes: Vec<f64> = rows.iter().map(|row| row.3).collect();
    let found = judged(&layout(3, pieces.collect(), ScatterOf::AllArms), &changes);
    for (name, (analysis, judged)) in ["a_b", "a_c", "b_c"].iter().zip(found) {
        assert_eq!(analysis, Analysis::WithinLoads);
        near(judged.difference, figures[&format!("{name}_difference")]);
        near(judged.standard_error, figures[&format!("{name}_se")]);
        near(
            2.0 * quantile::student_above(judged.t(), judged.df),
            figures[&format!("{name}_p")],
        );
        near(judged.df, figures["df"]);
    }
}

/// Welch's and Student's tests are held to a reference library elsewhere.
#[test]
fn without_loads_it_is_welch_or_student_and_means_of_loads_are_welch() {
    let (a, b) = ([2.1, 1.7, 2.5, 2.2], [3.4, 2.2, 4.1, 2.9, 3.6]);
    let changes: Vec<f64> = a.iter().chain(&b).copied().collect();
    let pieces = |load: fn(usize) -> Option<usize>| -> Vec<Piece> {
        let arm = |at: usize| usize::from(at >= 4);
        (0..9)
            .map(|at| Piece {
                arm: arm(at),
                loads: vec![load(at)],
            })
            .collect()
    };
    let welch = mean_difference::welch(&b, &a).unwrap();
    let pooled = mean_difference::pooled(&b, &a).unwrap();
    for (expected, scatter, load) in [
        (
            welch,
            ScatterOf::EachPair,
            (|_| None) as fn(usize) -> Option<usize>,
        ),
        (welch, ScatterOf::AllArms, Some),
        (pooled, ScatterOf::AllArms, |_| Some(0)),
    ] {
        let (_, found) = judged(&layout(2, pieces(load), scatter), &changes).remove(0);
        near(found.difference, expected.difference);
        near(found.standard_error, expected.standard_error);
        near(found.df, expected.df);
    }
}
