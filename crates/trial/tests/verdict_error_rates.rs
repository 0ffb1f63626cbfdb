//! Verdicts must seldom be wrong. Fewer trials than the example of the same name
//! prints, from fixed seeds; the limits allow for the chance of so few.

#[path = "support/simulation.rs"]
mod simulation;

use simulation::{Count, Loads, Setting, count};

const TRIALS: usize = 300;

/// A share of 5 % and three standard deviations of a count of `TRIALS`.
const RARE: f64 = 0.05 + 0.038;

const USUAL: [f64; 3] = [0.45, 0.25, 0.35];

fn at(truth_de00: f64, pieces: usize, keepers: usize, second_scatters: f64) -> Count {
    let setting = Setting {
        pieces: [pieces; 2],
        keepers,
        loads: Loads::None,
        along_fade: false,
        washing: USUAL,
        second_scatters,
        truth_de00,
    };
    count(setting, TRIALS, 7 + pieces as u64)
}

fn kinds() -> impl Iterator<Item = (usize, usize, f64)> {
    [(2, 0, 1.0), (3, 1, 1.0), (4, 0, 3.0), (8, 0, 1.0)].into_iter()
}

#[test]
fn a_difference_at_the_margin_is_seldom_called_visible_or_below_it() {
    for (pieces, keepers, second) in kinds() {
        let seen = at(1.0, pieces, keepers, second);
        assert!(seen.share(seen.visible) <= RARE, "{pieces} pieces");
        assert!(
            seen.share(seen.alike + seen.small) <= RARE,
            "{pieces} pieces"
        );
    }
}

#[test]
fn no_difference_is_seldom_called_one() {
    for (pieces, keepers, second) in kinds() {
        let seen = at(0.0, pieces, keepers, second);
        assert!(
            seen.share(seen.visible + seen.small) <= RARE,
            "{pieces} pieces"
        );
    }
}

#[test]
fn the_interval_holds_the_truth() {
    for truth_de00 in [0.0, 0.5, 1.0, 3.0] {
        for (pieces, keepers, second) in kinds() {
            let seen = at(truth_de00, pieces, keepers, second);
            let held = seen.share(seen.covered);
            assert!(held >= 1.0 - RARE, "{truth_de00} with {pieces}: {held}");
        }
    }
}

#[test]
fn loads_that_do_something_are_not_taken_for_the_arm() {
    for loads in [Loads::Shared(2), Loads::Own(4)] {
        for truth_de00 in [0.0, 1.0] {
            let setting = Setting {
                pieces: [8; 2],
                keepers: 0,
                loads,
                along_fade: true,
                washing: USUAL,
                second_scatters: 1.0,
                truth_de00,
            };
            let seen = count(setting, TRIALS, 3);
            let wrong = match truth_de00 {
                0.0 => seen.shown,
                _ => seen.visible.max(seen.alike + seen.small),
            };
            assert!(seen.share(wrong) <= RARE, "{truth_de00}: {wrong}");
        }
    }
}

#[test]
fn enough_pieces_come_to_an_answer() {
    let far = at(3.0, 6, 0, 1.0);
    assert!(far.share(far.visible) > 0.9);
    assert_eq!(far.share(far.open) + far.share(far.visible), 1.0);
    let none = at(0.0, 8, 0, 1.0);
    assert!(none.share(none.alike) > 0.9);
}
