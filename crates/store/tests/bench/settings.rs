//! What was chosen for the whole bench.

use crate::desk::{Desk, NOW};
use locale::{Clock, DateFormat, Locale, Measures, SumOrder};

fn american() -> Locale {
    Locale {
        measures: Measures::UsCustomary,
        currency: "USD".parse().ok(),
        sums: SumOrder::CodeFirst,
        dates: DateFormat::MonthNamed,
        clock: Clock::Hours12,
    }
}

#[test]
fn the_newest_choice_counts_and_is_told_in_the_journal() {
    let mut desk = Desk::new();
    assert_eq!(desk.bench.locale().unwrap(), Locale::DATA);
    assert!(!desk.bench.set_locale(Locale::DATA, NOW).unwrap());
    assert!(
        desk.bench
            .journal(None, store::Place::NEWEST, 9)
            .unwrap()
            .is_empty()
    );
    assert!(desk.bench.set_locale(american(), NOW).unwrap());
    assert!(!desk.bench.set_locale(american(), NOW).unwrap());
    assert_eq!(desk.bench.locale().unwrap(), american());
    let entry = desk
        .bench
        .journal(None, store::Place::NEWEST, 9)
        .unwrap()
        .remove(0);
    assert_eq!(entry.what, "settings changed");
    assert_eq!(
        entry.sentence,
        "The settings were changed: US customary measures, sums as USD 8.50, days as Nov 26, 2026, times as 6:05 pm."
    );
    assert!(desk.bench.set_locale(Locale::DATA, NOW).unwrap());
    assert_eq!(desk.bench.locale().unwrap(), Locale::DATA);
    assert_eq!(
        desk.bench
            .journal(None, store::Place::NEWEST, 9)
            .unwrap()
            .len(),
        2
    );
}

#[test]
fn another_handle_and_a_later_start_find_it() {
    let mut desk = Desk::new();
    desk.bench.set_locale(american(), NOW).unwrap();
    let other = store::Bench::open(desk.home.path()).unwrap();
    assert_eq!(other.locale().unwrap(), american());
}
