//! Verdicts must seldom be wrong. Fewer trials than the example of the same name
//! prints, from fixed seeds; the limits allow for the chance of so few.

#[path = "support/simulation.rs"]
mod simulation;

use simulation::{Count, Setting, count};

const TRIALS: usize = 300;

/// A share of 5 % and three standard deviations of a count of `TRIALS`.
const RARE: f64 = 0.05 + 0.038;

const USUAL: [f64; 3] = [0.45, 0.25, 0.35];

fn at(truth_de00: f64, pieces: usize, keeper: bool, second_scatters: f64) -> Count {
    let setting = Setting {
        pieces: [pieces; 2],
        keeper,
        washing: USUAL,
        second_scatters,
        truth_de00,
    };
    count(setting, TRIALS, 7 + pieces as u64)
}

fn kinds() -> impl Iterator<Item = (usize, bool, f64)> {
    [
        (2, false, 1.0),
        (3, true, 1.0),
        (4, false, 3.0),
        (8, false, 1.0),
    ]
    .into_iter()
}

#[test]
fn a_difference_at_the_margin_is_seldom_called_visible_or_below_it() {
    for (pieces, keeper, second) in kinds() {
        let seen = at(1.0, pieces, keeper, second);
        assert!(seen.share(seen.visible) <= RARE, "{pieces} pieces");
        assert!(
            seen.share(seen.alike + seen.small) <= RARE,
            "{pieces} pieces"
        );
    }
}

#[test]
fn no_difference_is_seldom_called_one() {
    for (pieces, keeper, second) in kinds() {
        let seen = at(0.0, pieces, keeper, second);
        assert!(
            seen.share(seen.visible + seen.small) <= RARE,
            "{pieces} pieces"
        );
    }
}

#[test]
fn the_interval_holds_the_truth() {
    for truth_de00 in [0.0, 0.5, 1.0, 3.0] {
        for (pieces, keeper, second) in kinds() {
            let seen = at(truth_de00, pieces, keeper, second);
            let held = seen.share(seen.covered);
            assert!(held >= 1.0 - RARE, "{truth_de00} with {pieces}: {held}");
        }
    }
}

#[test]
fn enough_pieces_come_to_an_answer() {
    let far = at(3.0, 6, false, 1.0);
    assert!(far.share(far.visible) > 0.9);
    assert_eq!(far.share(far.open) + far.share(far.visible), 1.0);
    let none = at(0.0, 8, false, 1.0);
    assert!(none.share(none.alike) > 0.9);
}
