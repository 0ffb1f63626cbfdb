//! Tests of models against figures from reference libraries (statsmodels,
//! SciPy, NLTK) and closed forms. The figures are in
//! `reference/statistics/check_models.csv`, whose last column names the source of each.

#[path = "support/reference.rs"]
mod reference;

use inference::{
    agreement::{self, Apart},
    hotelling::Hotelling,
    mixed::{self, Cells, Data, Place},
    permutation::{self, Measure},
    share,
};
use nalgebra::{SMatrix, SVector, Vector3};
use reference::{file, within};

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

fn lab() -> [Vec<Vector3<f64>>; 2] {
    let mut reader =
        csv::Reader::from_path(file("data_hotelling_lab.csv")).expect("a table of values");
    let mut groups = [Vec::new(), Vec::new()];
    for row in reader.deserialize::<(String, f64, f64, f64)>() {
        let (group, lightness, a, b) = row.expect("group and a colour");
        groups[usize::from(group == "B")].push(Vector3::new(lightness, a, b));
    }
    groups
}

#[test]
fn hotellings_test_of_two_groups_agrees_with_the_reference_library() {
    let [a, b] = lab();
    let test = Hotelling::two_samples(&a, &b).unwrap();
    let set = "hotelling_lab";
    for (part, name) in ["dL", "da", "db"].into_iter().enumerate() {
        within(1e-9, test.mean[part], set, name);
    }
    within(1e-9, test.t_squared(), set, "T2");
    let (f, above, below) = test.f();
    within(1e-9, f, set, "F");
    within(1e-9, f, set, "manova_F");
    within(1e-9, above, set, "df1");
    within(1e-9, below, set, "df2");
    within(1e-9, test.p(), set, "p");
    within(1e-8, test.p(), set, "manova_p");
    let distances = test.distance_interval(0.95);
    within(1e-7, distances.low, set, "distance_low");
    within(1e-7, distances.high, set, "distance_high");
    let splits = permutation::vectors(&a, &b, Measure::HotellingsT).unwrap();
    within(1e-9, splits.p(), set, "exact_perm_p_T2");
    let splits = permutation::vectors(&a, &b, Measure::Length).unwrap();
    within(1e-9, splits.p(), set, "exact_perm_p_length");
}

#[test]
fn hotellings_test_of_changes_agrees_with_the_reference_library() {
    let [a, b] = lab();
    let changes: Vec<Vector3<f64>> = a.iter().zip(&b).map(|(a, b)| a - b).collect();
    let test = Hotelling::one_sample(&changes, &Vector3::zeros()).unwrap();
    within(1e-9, test.t_squared(), "hotelling_one", "T2");
    within(1e-9, test.f().0, "hotelling_one", "F");
    within(1e-9, test.p(), "hotelling_one", "p");
    let turned = permutation::signs(&changes, Measure::HotellingsT).unwrap();
    within(1e-9, turned.p(), "hotelling_one", "signs_p_T2");
}

/// Published: A. C. Rencher, Methods of Multivariate Analysis, four psychological tests
/// of 32 men and 32 women, T-squared 97.6015. Means and covariances are from memory and
/// rounded, so that only the first digits can be held to it.
#[test]
fn hotellings_test_comes_near_a_published_example() {
    let mean = SVector::<f64, 4>::new(3.63, 2.0, 10.53, 0.81);
    let pooled = SMatrix::<f64, 4, 4>::new(
        7.164, 6.047, 5.693, 4.701, 6.047, 15.89, 8.492, 5.856, 5.693, 8.492, 29.36, 13.98, 4.701,
        5.856, 13.98, 22.32,
    );
    let test = Hotelling::new(mean, pooled, 62.0, 2.0 / 32.0).unwrap();
    assert!(
        (test.t_squared() - 97.6015).abs() < 0.15,
        "{}",
        test.t_squared()
    );
    assert_eq!((test.f().1, test.f().2), (4.0, 59.0));
}

/// Grades of three people as half-steps from 0 (grade 1) to 8 (grade 5).
fn grades() -> Vec<[usize; 3]> {
    let mut reader = csv::Reader::from_path(file("data_grades.csv")).expect("a table of values");
    reader
        .deserialize::<(usize, f64, f64, f64)>()
        .map(|row| {
            let (_, first, second, third) = row.expect("a piece and three grades");
            [first, second, third].map(|grade| (2.0 * grade - 2.0) as usize)
        })
        .collect()
}

#[test]
fn agreement_of_two_agrees_with_the_reference_library() {
    let pairs: Vec<(usize, usize)> = grades().iter().map(|own| (own[0], own[1])).collect();
    for (apart, name) in [
        (Apart::Other, "plain"),
        (Apart::Steps, "linear"),
        (Apart::SquaredSteps, "quadratic"),
    ] {
        let found = agreement::kappa(&pairs, 9, apart).unwrap();
        within(1e-9, found.kappa, "kappa", &format!("{name}_kappa"));
        within(1e-9, found.standard_error, "kappa", &format!("{name}_se"));
        within(
            1e-9,
            found.standard_error_of_none,
            "kappa",
            &format!("{name}_se_of_none"),
        );
        within(1e-7, found.p(), "kappa", &format!("{name}_p"));
    }
}

/// Where all judge everything, alpha without an order is Fleiss' kappa but for the last
/// of the judgements: 1 - alpha is (1 - kappa) (n - 1) / n.
#[test]
fn agreement_of_several_agrees_with_the_reference_library() {
    let things: Vec<Vec<usize>> = grades().iter().map(|own| own.to_vec()).collect();
    let found = agreement::alpha(&things, 9, Apart::Other).unwrap();
    let judgements = found.judgements as f64;
    let kappa = 1.0 - (1.0 - found.alpha) * judgements / (judgements - 1.0);
    within(1e-9, kappa, "kappa", "fleiss");
}

/// With judgements missing: every fifth of the first person and every seventh of the last.
#[test]
fn agreement_with_judgements_missing_agrees_with_the_reference_library() {
    let things: Vec<Vec<usize>> = grades()
        .iter()
        .enumerate()
        .map(|(at, [first, second, third])| {
            let first = (at % 5 != 0).then_some(*first);
            let third = (at % 7 != 3).then_some(*third);
            first.into_iter().chain([*second]).chain(third).collect()
        })
        .collect();
    for (apart, name) in [(Apart::Other, "nominal"), (Apart::SquaredSteps, "interval")] {
        let found = agreement::alpha(&things, 9, apart).unwrap();
        within(1e-9, found.alpha, "alpha", &format!("{name}_alpha"));
    }
}

#[test]
fn the_interval_of_a_share_agrees_with_the_reference_library() {
    for (count, tries) in [(0, 10), (1, 4), (3, 12), (12, 12), (37, 400)] {
        let found = share::exact(count, tries, 0.95).unwrap();
        within(1e-9, found.low, "share", &format!("{count}_of_{tries}_low"));
        within(
            1e-9,
            found.high,
            "share",
            &format!("{count}_of_{tries}_high"),
        );
    }
}
