//! Tests of the mixed model against figures from reference libraries (statsmodels,
//! SciPy) and closed forms. The figures are in
//! `reference/statistics/check_models.csv`, whose last column names the source of each.

use inference::mixed::{self, Cells, Data, Place};
use std::{collections::HashMap, path::PathBuf};

fn file(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("../../reference/statistics")
        .join(name)
}

fn figures() -> HashMap<(String, String), f64> {
    let mut reader = csv::Reader::from_path(file("check_models.csv")).expect("a table of figures");
    reader
        .records()
        .map(|record| {
            let record = record.expect("a row of four");
            let key = (record[0].to_owned(), record[1].to_owned());
            (key, record[2].parse().expect("a number"))
        })
        .collect()
}

/// Agrees to that share of the figure.
fn within(share: f64, found: f64, set: &str, quantity: &str) {
    let expected = figures()[&(set.to_owned(), quantity.to_owned())];
    let allowed = share * expected.abs();
    assert!(
        (found - expected).abs() < allowed,
        "{set} {quantity}: {found} is not {expected}"
    );
}

fn washes(with_interaction: bool) -> Data {
    let columns = if with_interaction { 4 } else { 3 };
    let mut data = Data::new(columns, 0);
    let mut reader = csv::Reader::from_path(file("data_lmm.csv")).expect("a table of values");
    let mut pieces: Vec<String> = Vec::new();
    for row in reader.deserialize::<(String, String, f64, f64)>() {
        let (piece, treatment, wash, value) = row.expect("piece, treatment, wash, value");
        let at = pieces.iter().position(|known| *known == piece);
        let at = at.unwrap_or_else(|| {
            pieces.push(piece);
            pieces.len() - 1
        });
        let treated = f64::from(treatment == "fixative");
        let row = [1.0, treated, wash, wash * treated];
        let place = Place {
            piece: at,
            loads: &[],
        };
        data.add(place, &row[..columns], value)
            .expect("a whole row");
    }
    data
}

const NAMES: [&str; 4] = ["Intercept", "treatment", "wash", "wash:treatment"];

#[test]
fn mixed_model_agrees_with_the_closed_form() {
    let fit = mixed::restricted(&washes(true)).unwrap();
    within(1e-9, fit.residual, "lmm_closed_form", "var_resid");
    within(1e-9, fit.pieces.variance, "lmm_closed_form", "var_piece");
    within(1e-9, fit.log_likelihood, "lmm_closed_form", "loglik_reml");
    for (at, name) in NAMES.into_iter().enumerate() {
        let mut weights = vec![0.0; 4];
        weights[at] = 1.0;
        let contrast = fit.contrast(&weights).unwrap();
        within(
            1e-9,
            contrast.estimate,
            "lmm_closed_form",
            &format!("fe_{name}"),
        );
        within(
            1e-9,
            contrast.standard_error,
            "lmm_closed_form",
            &format!("se_{name}"),
        );
        within(1e-7, contrast.df, "lmm_closed_form", &format!("df_{name}"));
    }
}

#[test]
fn mixed_model_agrees_with_the_reference_library() {
    // The library's own search stops near the fifth digit of a variance.
    let fit = mixed::restricted(&washes(true)).unwrap();
    within(1e-4, fit.residual, "lmm_reml", "var_resid");
    within(2e-4, fit.pieces.variance, "lmm_reml", "var_piece");
    within(1e-8, fit.log_likelihood, "lmm_reml", "loglik_reml");
    for (at, name) in NAMES.into_iter().enumerate() {
        let mut weights = vec![0.0; 4];
        weights[at] = 1.0;
        let contrast = fit.contrast(&weights).unwrap();
        within(1e-9, contrast.estimate, "lmm_reml", &format!("fe_{name}"));
        within(
            1e-4,
            contrast.standard_error,
            "lmm_reml",
            &format!("se_{name}"),
        );
    }
    let shared = fit.pieces.variance / (fit.pieces.variance + fit.residual);
    within(5e-5, shared, "lmm_reml", "ICC");
}

#[test]
fn likelihood_ratio_agrees_with_the_reference_library() {
    let full = mixed::full(&washes(true)).unwrap();
    let fewer = mixed::full(&washes(false)).unwrap();
    let (ratio, p) = full.likelihood_ratio(&fewer).unwrap();
    within(1e-6, ratio, "lmm_ml", "LR_interaction");
    within(1e-4, p, "lmm_ml", "p_LR_1df");
}

#[test]
fn sparse_design_with_baths_and_washes_agrees_with_whole_matrices() {
    let mut cells = Cells::new(2);
    let mut reader = csv::Reader::from_path(file("data_sparse.csv")).expect("a table of values");
    let mut pieces: Vec<String> = Vec::new();
    for row in reader.deserialize::<(String, String, usize, usize, f64)>() {
        let (cell, piece, bath, wash, value) = row.expect("cell, piece, bath, wash, value");
        if !pieces.contains(&piece) {
            pieces.push(piece.clone());
        }
        let at = pieces
            .iter()
            .position(|known| *known == piece)
            .expect("just put in");
        let arm = usize::from(cell.as_bytes()[0] - b'a');
        let stage = usize::from(cell.as_bytes()[1] - b'0');
        let place = Place {
            piece: at,
            loads: &[Some(bath), Some(wash)],
        };
        cells.add(place, arm, stage, value).expect("a whole row");
    }
    let fit = cells.fit().unwrap();
    let set = "lmm_sparse";
    within(1e-7, fit.residual, set, "var_resid");
    within(1e-7, fit.pieces.variance, set, "var_piece");
    within(1e-7, fit.loads[0].variance, set, "var_bath");
    within(1e-7, fit.loads[1].variance, set, "var_wash");
    within(1e-9, fit.log_likelihood, set, "loglik_reml");
    for (name, weights) in [
        ("a0_b0", cells.difference(0, 1, 0)),
        ("a3_b3", cells.difference(0, 1, 3)),
        ("a3_c3", cells.difference(0, 2, 3)),
        ("a0_a3", cells.change(0, 0, 3)),
    ] {
        let contrast = fit.contrast(&weights.unwrap()).unwrap();
        within(1e-7, contrast.estimate, set, &format!("{name}_difference"));
        within(1e-7, contrast.standard_error, set, &format!("{name}_se"));
        within(1e-6, contrast.df, set, &format!("{name}_df"));
    }
}
