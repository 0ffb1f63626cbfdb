//! Tests of means against figures from reference libraries (SciPy, statsmodels).
//! The figures are in `reference/statistics/check_statistics.csv`, whose last
//! column names the source of each.

use inference::{
    dunnett::Dunnett,
    equivalence, holm, mean_difference,
    occasion::{Look, Occasions},
    permutation,
    power::Test,
    sample_size,
    summary::Summary,
};
use nalgebra::{Matrix3, Vector3};
use std::{collections::HashMap, path::PathBuf};

fn file(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("../../reference/statistics")
        .join(name)
}

fn figures() -> HashMap<(String, String), f64> {
    let mut reader =
        csv::Reader::from_path(file("check_statistics.csv")).expect("a table of figures");
    reader
        .records()
        .map(|record| {
            let record = record.expect("a row of three");
            let key = (record[0].to_owned(), record[1].to_owned());
            (key, record[2].parse().expect("a number"))
        })
        .collect()
}

fn arms(name: &str) -> (Vec<f64>, Vec<f64>) {
    let mut reader = csv::Reader::from_path(file(name)).expect("a table of values");
    let rows: Vec<(String, f64)> = reader
        .deserialize()
        .collect::<Result<_, _>>()
        .expect("rows of arm and value");
    let first = rows[0].0.clone();
    let (a, b): (Vec<_>, Vec<_>) = rows.into_iter().partition(|row| row.0 == first);
    let values = |rows: Vec<(String, f64)>| rows.into_iter().map(|row| row.1).collect();
    (values(a), values(b))
}

fn near(found: f64, set: &str, quantity: &str) {
    within(1e-9, found, set, quantity);
}

/// Agrees to that share of the figure.
fn within(share: f64, found: f64, set: &str, quantity: &str) {
    let expected = figures()[&(set.to_owned(), quantity.to_owned())];
    let allowed = share * expected.abs().max(1e-3);
    assert!(
        (found - expected).abs() < allowed,
        "{set} {quantity}: {found} is not {expected}"
    );
}

#[test]
fn welch_agrees_with_the_reference_library() {
    let (a, b) = arms("data_two_arms.csv");
    let found = mean_difference::welch(&a, &b).unwrap();
    let (first, second) = (Summary::of(&a).unwrap(), Summary::of(&b).unwrap());
    near(first.mean, "welch", "mean_a");
    near(second.mean, "welch", "mean_b");
    near(first.sd(), "welch", "sd_a");
    near(second.sd(), "welch", "sd_b");
    near(found.t(), "welch", "t");
    near(found.df, "welch", "df");
    near(found.standard_error, "welch", "se");
    near(found.p_two_sided(), "welch", "p_two_sided");
    near(found.interval(0.95).low, "welch", "ci95_low");
    near(found.interval(0.95).high, "welch", "ci95_high");
}

#[test]
fn pooled_agrees_with_the_reference_library() {
    let (a, b) = arms("data_two_arms.csv");
    let found = mean_difference::pooled(&a, &b).unwrap();
    near(found.t(), "student_pooled", "t");
    near(found.p_two_sided(), "student_pooled", "p");
}

#[test]
fn two_one_sided_tests_agree_with_the_reference_library() {
    let (a, b) = arms("data_tost.csv");
    let welch = mean_difference::welch(&a, &b).unwrap();
    let pooled = mean_difference::pooled(&a, &b).unwrap();
    for (set, found) in [("tost_unequal", welch), ("tost_pooled", pooled)] {
        for margin in [0.5, 0.3] {
            let tests = equivalence::two_one_sided(&found, margin).unwrap();
            let name = |what: &str| format!("margin_{margin}_{what}");
            near(tests.p(), set, &name("p"));
            near(tests.t_lower, set, &name("t_lower"));
            near(tests.p_lower, set, &name("p_lower"));
            near(tests.t_upper, set, &name("t_upper"));
            near(tests.p_upper, set, &name("p_upper"));
            near(found.df, set, &name("df"));
        }
    }
    near(welch.interval(0.90).low, "tost_unequal", "ci90_low");
    near(welch.interval(0.90).high, "tost_unequal", "ci90_high");
}

#[test]
fn permutation_agrees_with_the_reference_library() {
    let (a, b) = arms("data_two_arms.csv");
    let found = permutation::mean_difference(&a, &b).unwrap();
    near(found.as_extreme as f64, "permutation", "6v6_count");
    near(found.splits as f64, "permutation", "6v6_total");
    near(found.p(), "permutation", "6v6_p_scipy");
    for n in [3, 4, 5] {
        let low: Vec<f64> = (0..n).map(f64::from).collect();
        let high: Vec<f64> = (0..n).map(|v| f64::from(v) + 100.0).collect();
        let found = permutation::mean_difference(&low, &high).unwrap();
        near(found.p(), "permutation", &format!("smallest_p_{n}v{n}"));
    }
}

fn looks(name: &str) -> Occasions {
    let mut reader = csv::Reader::from_path(file(name)).expect("a table of values");
    let looks: Vec<Look> = reader
        .deserialize::<(usize, usize, f64)>()
        .map(|row| {
            let (occasion, subject, value) = row.expect("occasion, subject, value");
            Look {
                occasion,
                subject,
                value: Vector3::new(value, 0.0, 0.0),
            }
        })
        .collect();
    Occasions::of(&looks).expect("enough looks")
}

#[test]
fn scatter_by_occasions_agrees_with_projections() {
    let along = Matrix3::from_diagonal(&Vector3::new(1.0, 0.0, 0.0));
    for (file, set) in [
        ("data_judges.csv", "occasions_judges"),
        ("data_occasions.csv", "occasions_holes"),
    ] {
        let found = looks(file);
        let rest = found.within_part(&along);
        near(rest.variance, set, "within");
        near(rest.df, set, "within_df");
        near(found.within_df() as f64, set, "within_df");
        near(found.between_df() as f64, set, "between_df");
        near(found.between()[(0, 0)], set, "between");
        near(found.between_part(&along).variance, set, "between");
        within(1e-6, rest.interval(0.95).low, set, "within_sd_low");
        within(1e-6, rest.interval(0.95).high, set, "within_sd_high");
    }
}

/// Published: Shrout and Fleiss 1979, table 3: mean squares 32.49 and 1.02.
#[test]
fn scatter_by_occasions_agrees_with_a_published_table_and_restricted_likelihood() {
    let found = looks("data_judges.csv");
    let (rest, between) = (found.within()[(0, 0)], found.between()[(0, 0)]);
    assert_eq!(format!("{rest:.2}"), "1.02");
    assert_eq!(format!("{:.2}", rest + 6.0 * between), "32.49");
    within(1e-3, rest, "occasions_judges_reml", "within");
    within(1e-3, between, "occasions_judges_reml", "between");
}

#[test]
fn power_agrees_with_the_reference_library() {
    for (d, n) in [(2.0, 3), (2.0, 4), (2.0, 5), (2.0, 6), (0.5, 20), (1.2, 12)] {
        let n_real = f64::from(n);
        let test = Test {
            parts: 1.0,
            df: 2.0 * (n_real - 1.0),
            tail: 0.05,
        };
        let found = test.power(d * (n_real / 2.0).sqrt());
        within(1e-7, found, "power", &format!("t_d{d:.1}_n{n}"));
    }
    for (length, df) in [(2.0, 4.0), (4.0, 8.0), (5.0, 22.0), (9.0, 2.0)] {
        let test = Test {
            parts: 3.0,
            df,
            tail: 0.025,
        };
        let name = format!("vector_l{length:.1}_df{df}");
        within(1e-7, test.power(length), "power", &name);
        let name = format!("vector_smallest_df{df}");
        within(1e-7, test.smallest(0.8), "power", &name);
    }
}

/// Agreement to 1e-6: the library stops its search for an exact size there.
#[test]
fn sample_sizes_agree_with_the_reference_library() {
    for d in [0.5, 0.8, 1.2, 2.0] {
        for wanted in [0.8, 0.9] {
            let needed = sample_size::for_difference(d, wanted, 0.05).unwrap();
            let name = |what: &str| format!("d{d:.1}_power{wanted}_{what}");
            within(1e-6, needed.exact, "sample_size", &name("exact"));
            near(f64::from(needed.whole), "sample_size", &name("whole"));
            let reached = sample_size::power(d, f64::from(needed.whole), 0.05).unwrap();
            let name = format!("d{d:.1}_n{}", needed.whole);
            within(1e-7, reached, "sample_size", &name);
        }
        for n in [3, 4, 5, 6, 8, 10, 12, 20] {
            let found = sample_size::power(d, f64::from(n), 0.05).unwrap();
            within(1e-7, found, "power_grid", &format!("d{d:.1}_n{n}"));
        }
    }
}

/// Published: 64 and 86 per arm for half a standard deviation, 26 and 34 for 0.8;
/// J. Cohen, Statistical Power Analysis for the Behavioral Sciences (1988), table
/// 2.4.1 (from memory).
#[test]
fn sample_sizes_agree_with_a_printed_table() {
    for (d, wanted, printed) in [
        (0.5, 0.8, 64),
        (0.5, 0.9, 86),
        (0.8, 0.8, 26),
        (0.8, 0.9, 34),
    ] {
        let needed = sample_size::for_difference(d, wanted, 0.05).unwrap();
        assert_eq!(needed.whole, printed, "{d} {wanted}");
    }
}

#[test]
fn power_of_equivalence_agrees_with_integrals() {
    for margin in [0.5, 1.0, 1.5, 2.0] {
        let needed = sample_size::for_equivalence(margin, 0.0, 0.8, 0.05).unwrap();
        let whole = f64::from(needed.whole);
        near(
            whole,
            "equivalence_size",
            &format!("margin{margin:.1}_whole"),
        );
        let found = sample_size::equivalence_power(margin, 0.0, whole, 0.05).unwrap();
        let name = format!("margin{margin:.1}_n{whole}");
        within(1e-8, found, "equivalence_size", &name);
    }
    for (margin, truly, n) in [(1.0, 0.3, 20), (2.0, 1.0, 6), (1.5, 0.5, 3), (0.5, 0.5, 70)] {
        let found = sample_size::equivalence_power(margin, truly, f64::from(n), 0.05).unwrap();
        let name = format!("margin{margin:.1}_truly{truly:.1}_n{n}");
        within(1e-8, found, "equivalence_size", &name);
    }
}

#[test]
fn limits_against_a_control_agree_with_integrals() {
    for several in [1, 2, 3, 5, 9] {
        for df in [2, 5, 10, 20, 60] {
            let found = Dunnett::equal(several).unwrap().limit(0.05, f64::from(df));
            within(1e-6, found, "dunnett", &format!("several{several}_df{df}"));
        }
    }
    let three = Dunnett::equal(3).unwrap();
    within(
        1e-6,
        three.limit(0.01, 12.0),
        "dunnett",
        "several3_df12_tail0.01",
    );
    // Arms of 1 and a control of 4 or 1/4 correlate by 0.2 and 0.8.
    for (control, name) in [(4.0, "0.2"), (0.25, "0.8")] {
        let found = Dunnett::of(control, &[1.0; 3]).unwrap().limit(0.05, 12.0);
        within(
            1e-6,
            found,
            "dunnett",
            &format!("several3_df12_correlation{name}"),
        );
    }
}

#[test]
fn holm_agrees_with_the_reference_library() {
    let found = holm::adjusted(&[0.012, 0.2, 0.001, 0.04, 0.03, 0.9]).unwrap();
    for (at, p) in found.iter().enumerate() {
        near(*p, "holm", &format!("p{at}"));
    }
}
