//! Tests of pooled trials and of a published layout against figures from reference
//! libraries (statsmodels, SciPy). The figures are in
//! `reference/statistics/check_models.csv`; the README beside it names the data's sources.

#[path = "support/reference.rs"]
mod reference;

use inference::{
    Interval,
    dunnett::Dunnett,
    pool::{Between, Found, Pooled, pool},
    quantile,
    summary::Summary,
};
use reference::{file, within};
use std::collections::BTreeMap;

fn trials(name: &str) -> Vec<Found> {
    let mut reader = csv::Reader::from_path(file(name)).expect("a table of trials");
    reader
        .deserialize::<(u32, f64, f64)>()
        .map(|row| {
            let (_, value, variance) = row.expect("trial, value, variance");
            Found { value, variance }
        })
        .collect()
}

fn agrees(pooled: &Pooled, set: &str, by: &str) {
    let same = |found: f64, what: &str| within(1e-9, found, set, &format!("{by}_{what}"));
    let both = |found: Interval, what: &str| {
        same(found.low, &format!("{what}low"));
        same(found.high, &format!("{what}high"));
    };
    same(pooled.between, "between");
    same(pooled.mean, "mean");
    same(pooled.standard_error, "se");
    same(pooled.spread, "spread");
    same(pooled.adjusted_error(), "adjusted_se");
    same(pooled.p(), "adjusted_p");
    both(pooled.interval_of_many(0.95), "");
    both(pooled.interval_as_adjusted(0.95), "adjusted_");
    both(pooled.next_one(0.95).expect("three trials"), "next_");
    within(1e-9, pooled.q, set, "q");
    within(1e-9, pooled.q_p(), set, "q_p");
    within(1e-9, 100.0 * pooled.share_between(), set, "percent_between");
}

#[test]
fn pooled_trials_agree_with_the_reference_library() {
    for (set, data) in [("pool_bcg", "data_bcg.csv"), ("pool_dye", "data_pool.csv")] {
        let trials = trials(data);
        for (name, by) in [
            ("moments", Between::Moments),
            ("restricted", Between::Restricted),
        ] {
            agrees(&pool(&trials, by).unwrap(), set, name);
        }
    }
}

/// As the general statistics library metafor prints it for these published trials.
#[test]
fn published_trials_pool_as_printed() {
    let pooled = pool(&trials("data_bcg.csv"), Between::Restricted).unwrap();
    let printed = |value: f64| format!("{value:.4}");
    assert_eq!(printed(pooled.between), "0.3132");
    assert_eq!(printed(pooled.mean), "-0.7145");
    assert_eq!(printed(pooled.standard_error), "0.1798");
    assert_eq!(printed(pooled.adjusted_error()), "0.1808");
    assert_eq!(printed(pooled.interval(0.95).low), "-1.1084");
    assert_eq!(printed(pooled.p()), "0.0019");
}

/// 180 grades of denim (Dean and Voss, table 10.17): experimenters by launderings.
#[test]
fn a_published_layout_agrees_with_the_reference_library() {
    let mut cells: BTreeMap<(u32, u32), Vec<f64>> = BTreeMap::new();
    let mut launderings: BTreeMap<u32, Vec<f64>> = BTreeMap::new();
    let mut reader = csv::Reader::from_path(file("data_denim.csv")).expect("a table of grades");
    for row in reader.deserialize::<(u32, u32, f64)>() {
        let (experimenter, laundering, grade) = row.expect("block, colour, grade");
        cells
            .entry((experimenter, laundering))
            .or_default()
            .push(grade);
        launderings.entry(laundering).or_default().push(grade);
    }
    let pooled = |groups: Vec<&Vec<f64>>| {
        let each = groups.iter().map(|values| Summary::of(values).unwrap());
        each.fold((0.0, 0.0), |(squares, df), own| {
            let own_df = (own.count - 1) as f64;
            (squares + own.variance * own_df, df + own_df)
        })
    };
    let (squares, df) = pooled(cells.values().collect());
    within(1e-9, squares, "denim", "rest_squares");
    within(1e-9, df, "denim", "rest_df");
    let (within_launderings, df) = pooled(launderings.values().collect());
    let variance = within_launderings / df;
    let first = Summary::of(&launderings[&1]).unwrap();
    let dunnett = Dunnett::equal(launderings.len() - 1).unwrap();
    for (laundering, values) in &launderings {
        let own = Summary::of(values).unwrap();
        within(1e-9, own.mean, "denim", &format!("mean_{laundering}"));
        if *laundering > 1 {
            let error = (variance * (1.0 / own.count as f64 + 1.0 / first.count as f64)).sqrt();
            let t = (own.mean - first.mean) / error;
            within(1e-9, t, "denim", &format!("first_t_{laundering}"));
            // One of four tests is at most as rare as alone, and at least a fourth of that.
            let (alone, together) = (2.0 * quantile::student_above(-t, df), dunnett.p(t, df));
            assert!(
                alone < together && together <= 4.0 * alone,
                "{alone} {together}"
            );
        }
    }
}
