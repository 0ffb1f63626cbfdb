//! Verdicts by eye must seldom be wrong. Fewer gradings than the example of the same
//! name prints, from fixed seeds; the limits allow for the chance of so few.

#[path = "support/gradings.rs"]
mod gradings;

use gradings::{Count, Eyes, STEADY, Setting, UNSTEADY, USUAL, count};

const GRADINGS: usize = 400;

/// A share of 5 % and three standard deviations of a count of `GRADINGS`.
const RARE: f64 = 0.05 + 0.033;

fn at(pieces: usize, judges: usize, margin: f64, middle: f64, margins: f64, eyes: Eyes) -> Count {
    let setting = Setting {
        pieces: [pieces; 2],
        judges,
        staining: false,
        margin_de00: margin,
        margins,
        middle,
        eyes,
    };
    count(setting, GRADINGS, 7 + pieces as u64)
}

fn kinds() -> impl Iterator<Item = (usize, usize, f64, f64, Eyes)> {
    [
        (2, 1, 1.0, 4.0, USUAL),
        (3, 4, 2.0, 3.5, UNSTEADY),
        (8, 1, 2.0, 3.5, UNSTEADY),
        (8, 2, 1.0, 5.0, USUAL),
        (8, 4, 1.0, 5.0, USUAL),
        (6, 3, 2.0, 2.0, USUAL),
        (8, 4, 1.0, 4.0, STEADY),
    ]
    .into_iter()
}

#[test]
fn a_difference_at_the_margin_is_seldom_called_visible_or_below_it() {
    for (pieces, judges, margin, middle, eyes) in kinds() {
        let seen = at(pieces, judges, margin, middle, 1.0, eyes);
        assert!(seen.share(seen.visible) <= RARE, "{pieces} by {judges}");
        assert!(
            seen.share(seen.alike + seen.small) <= RARE,
            "{pieces} by {judges}"
        );
        assert!(
            seen.share(seen.covered) >= 1.0 - RARE,
            "{pieces} by {judges}"
        );
    }
}

#[test]
fn no_difference_is_seldom_called_one() {
    for (pieces, judges, margin, middle, eyes) in kinds() {
        let seen = at(pieces, judges, margin, middle, 0.0, eyes);
        assert!(
            seen.share(seen.visible + seen.small) <= RARE && seen.share(seen.shown) <= RARE,
            "{pieces} by {judges}"
        );
    }
}

#[test]
fn enough_eyes_come_to_an_answer() {
    let far = at(4, 3, 1.0, 4.0, 3.0, USUAL);
    assert!(far.share(far.visible) > 0.9);
    let none = at(6, 3, 2.0, 3.5, 0.0, USUAL);
    assert!(none.share(none.alike) > 0.9);
    assert_eq!(
        none.share(none.visible + none.open + none.small + none.alike),
        1.0
    );
}

/// The same for staining, about grades 4 and 3.
#[test]
fn stains_are_seldom_called_different_or_alike_wrongly() {
    for (pieces, judges, margin_de00, middle) in [(3, 2, 3.0, 4.0), (6, 3, 3.0, 3.0)] {
        let seen = |margins| {
            let setting = Setting {
                pieces: [pieces; 2],
                judges,
                staining: true,
                margin_de00,
                margins,
                middle,
                eyes: USUAL,
            };
            count(setting, GRADINGS, 11)
        };
        let at_margin = seen(1.0);
        assert!(at_margin.share(at_margin.visible) <= RARE);
        assert!(at_margin.share(at_margin.alike + at_margin.small) <= RARE);
        assert!(at_margin.share(at_margin.covered) >= 1.0 - RARE);
        let none = seen(0.0);
        assert!(none.share(none.shown) <= RARE);
        let far = seen(3.0);
        assert!(far.share(far.visible) > 0.5, "{}", far.visible);
    }
}
