//! The codes and decimals of ISO 4217 in `reference/locale/iso4217_minor_units.csv`, which a
//! general-purpose library gives from the table of the standard's maintenance agency.

#![allow(clippy::unwrap_used, reason = "functions that only tests call")]

use locale::{Currency, LocaleError};

fn rows() -> Vec<(String, Option<u8>)> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../reference/locale/iso4217_minor_units.csv"
    );
    let mut reader = csv::Reader::from_path(path).unwrap();
    let rows = reader.records().map(Result::unwrap);
    rows.map(|row| (row[0].to_owned(), row[1].parse().ok()))
        .collect()
}

#[test]
fn every_code_is_taken_or_refused_by_its_decimals() {
    let rows = rows();
    for (code, decimals) in &rows {
        let read = code.parse::<Currency>();
        match decimals {
            Some(2) => assert_eq!(read.unwrap().code(), code),
            Some(other) => assert_eq!(
                read,
                Err(LocaleError::NoCents {
                    code: code.clone(),
                    decimals: *other
                })
            ),
            None => assert_eq!(read, Err(LocaleError::NoMoney { code: code.clone() })),
        }
    }
    let two = rows.iter().filter(|(_, decimals)| *decimals == Some(2));
    assert_eq!(two.count(), Currency::all().count());
}

#[test]
fn no_other_three_letters_are_a_currency() {
    let known: Vec<String> = rows().into_iter().map(|(code, _)| code).collect();
    let letters = || b'A'..=b'Z';
    for a in letters() {
        for b in letters() {
            for c in letters() {
                let code = String::from_utf8(vec![a, b, c]).unwrap();
                if !known.contains(&code) {
                    let fault = code.parse::<Currency>().unwrap_err();
                    assert_eq!(fault.code(), "no_such_currency", "{code}");
                }
            }
        }
    }
}
