//! Figures of reference libraries, in `reference/statistics`.

use std::{collections::HashMap, path::PathBuf};

/// A file of that folder.
pub fn file(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("../../reference/statistics")
        .join(name)
}

/// Agrees with a figure of `check_models.csv` to that share of it.
pub fn within(share: f64, found: f64, set: &str, quantity: &str) {
    let expected = figures()[&(set.to_owned(), quantity.to_owned())];
    let allowed = share * expected.abs();
    assert!(
        (found - expected).abs() <= allowed,
        "{set} {quantity}: {found} is not {expected}"
    );
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
