//! Intervals of fade curves must hold as often as they say. Fewer trials than the
//! example of the same name prints, from fixed seeds; the limits allow for the chance
//! of so few.

#[path = "support/fades.rs"]
mod fades;

use fades::{Held, Setting, held};
use inference::decay::Curve;

const TRIALS: u64 = 300;
/// 92 % less three standard deviations of a count of `TRIALS`.
const LEAST: f64 = 0.92 - 0.047;

const FADES: Curve = Curve {
    floor: 0.6,
    rate: 0.5,
};

fn of(pieces: usize, stages: &'static [u32], truth: Curve, keeper: bool) -> Held {
    let setting = Setting {
        pieces,
        stages,
        truth,
        reading: 0.02,
        own: if truth.floor > 0.0 {
            [0.1, 0.0]
        } else {
            [0.0; 2]
        },
        keeper,
        missing: 0.0,
    };
    held(&setting, TRIALS)
}

#[test]
fn intervals_hold_for_few_pieces_and_few_stages() {
    for pieces in [2, 4, 8] {
        for stages in [&[1, 3, 5][..], &[1, 2, 3, 5, 7, 10, 15, 20]] {
            for keeper in [false, true] {
                let found = of(pieces, stages, FADES, keeper);
                for share in [found.last, found.twice, found.passing] {
                    assert!(share > LEAST, "{pieces} {stages:?} {keeper}: {found:?}");
                }
            }
        }
    }
}

#[test]
fn intervals_hold_where_nothing_stays() {
    let to_nothing = Curve {
        floor: 0.0,
        rate: 0.1,
    };
    let found = of(4, &[1, 2, 3, 5, 7, 10, 15, 20], to_nothing, false);
    for share in [found.last, found.twice, found.passing] {
        assert!(share > LEAST, "{found:?}");
    }
}

#[test]
fn no_fade_is_seldom_called_one_and_a_fade_never_nothing() {
    let none = of(4, &[1, 3, 5, 10], Curve::FLAT, true);
    // Akaike's criterion takes a needless figure with P(chi-square of 1 > 2) = 16 %, a
    // second one with 14 % (published); the rest is the chance of so few trials.
    assert!(none.shapes[0] > 0.7 - 0.08, "{none:?}");
    assert!(none.last > LEAST);
    let fades = of(4, &[1, 3, 5, 10], FADES, true);
    assert!(fades.shapes[0] < 0.01 && fades.shapes[2] > 0.8, "{fades:?}");
}
