//! How near colours in a box of CIELAB may lie to one, for a search.

use colour::{Lab, difference::ciede2000};

/// More than this is not near, CIEDE2000.
pub const FURTHEST_DE00: f64 = 8.0;

/// CIEDE2000 of two CIELAB colours under one light.
pub fn distance_de00(one: [f64; 3], other: [f64; 3]) -> f64 {
    let lab = |[l, a, b]: [f64; 3]| Lab::new(l, a, b);
    ciede2000(lab(one), lab(other))
}

/// How much chroma G of CIEDE2000 adds at most: to a little chroma half of it, to no chroma more
/// than this.
const MOST_ADDED: f64 = 6.4;
/// The most that the rotation term weighs chroma and hue together: sin 60 degrees, at hue 275.
const MOST_TURN: f64 = 0.866_03;
/// The same for a mean hue of 0 to 180 degrees, 85 from there or more.
const FAR_FROM_BLUE: f64 = 1e-5;

/// The greatest T, by which S_H goes with hue: 1.5725 at hue 234.
const MOST_T: f64 = 1.573;

/// What the CIEDE2000 from `lab` to a colour in a box is at least, given the box's lowest and
/// highest L\*, a\* and b\*.
///
/// 0 inside the box. For a box that is a point it is near the distance itself, and in the blues up
/// to 2.8 times less.
///
/// # Source
/// ISO/CIE 11664-6, the weighting functions at their greatest: S_C is above S_H, and with the
/// rotation term x, y for the weighted differences of chroma and hue give at least
/// (1 - |R_T| / 2)(x² + y²).
pub fn least_de00(lab: [f64; 3], low: [f64; 3], high: [f64; 3]) -> f64 {
    let off = |n: usize| (low[n] - lab[n]).max(lab[n] - high[n]).max(0.0);
    let from_50 = |l: f64| ((lab[0] + l) / 2.0 - 50.0).powi(2);
    let from_50 = from_50(low[0]).max(from_50(high[0]));
    let s_l = 1.0 + 0.015 * from_50 / (20.0 + from_50).sqrt();
    // How far from 0 the box's a* or b* reaches, and how near it comes.
    let furthest = |n: usize| low[n].abs().max(high[n].abs());
    let nearest = |n: usize| low[n].max(-high[n]).max(0.0);
    let own = lab[1].hypot(lab[2]);
    let most = furthest(1).hypot(furthest(2));
    let least = nearest(1).hypot(nearest(2));
    let chroma = (own + most) / 2.0;
    let chroma = chroma + MOST_ADDED.min(chroma / 2.0);
    let (s_c, s_h) = (1.0 + 0.045 * chroma, 1.0 + 0.015 * MOST_T * chroma);
    let turn = match lab[2] >= 0.0 && low[2] >= 0.0 {
        true => FAR_FROM_BLUE,
        false => MOST_TURN,
    };
    let together = turn * seventh((chroma / 25.0).powi(7));
    let apart = off(1).powi(2) + off(2).powi(2);
    // Of a step between two colours all may be chroma, which counts least; but no more than the
    // two chromas differ, a* having been stretched by 1 + G.
    let g = 0.5 * (1.0 - seventh(((own + least) / 50.0).powi(7)));
    let squares = |of: f64, least: f64, most: f64| {
        let of = of * of;
        (most * most - of).abs().max((least * least - of).abs())
    };
    let stretched =
        squares(own, least, most) + g * (2.0 + g) * squares(lab[1], nearest(1), furthest(1));
    let in_chroma = (stretched / (own + least).max(f64::MIN_POSITIVE)).powi(2);
    let by_hue = apart / (s_h * s_h) - in_chroma * (1.0 / (s_h * s_h) - 1.0 / (s_c * s_c));
    let flat = (apart / (s_c * s_c)).max(by_hue);
    let l = off(0) / s_l;
    (l * l + (1.0 - together) * flat).sqrt()
}

/// The root of x / (1 + x), as the weights of chroma have it.
fn seventh(power: f64) -> f64 {
    (power / (1.0 + power)).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]
        #[test]
        fn no_colour_of_a_box_lies_nearer(
            lab in [0.0..100.0f64, -110.0..110.0f64, -110.0..110.0f64],
            away in [-15.0..15.0f64, -70.0..70.0f64, -70.0..70.0f64], part in 0.0..1.0f64,
            below in [0.0..9.0f64, 0.0..9.0f64, 0.0..9.0f64], size in 0.0..1.0f64,
            above in [0.0..9.0f64, 0.0..9.0f64, 0.0..9.0f64], grey in 0.0..1.0f64,
        ) {
            // A third of the cases near the grey axis, where hues turn far.
            let shrink = if grey < 0.33 { 0.1 } else { 1.0 };
            let lab = [lab[0], shrink * lab[1], shrink * lab[2]];
            let other = [0, 1, 2].map(|n| lab[n] + part * shrink * away[n]);
            let low = [0, 1, 2].map(|n| other[n] - size * below[n]);
            let high = [0, 1, 2].map(|n| other[n] + size * above[n]);
            let de00 = distance_de00(lab, other);
            let least = least_de00(lab, low, high);
            prop_assert!(least <= de00 + 1e-9, "{lab:?} {other:?}: {least} {de00}");
        }
    }

    /// A search opens no more boxes than it must where the bound is close.
    #[test]
    fn the_bound_is_close_outside_the_blues() {
        for (lab, other) in [
            ([50.0, 40.0, 20.0], [50.0, 45.0, 22.5]),
            ([60.0, -30.0, 50.0], [60.0, -32.0, 53.33]),
            ([70.0, 1.0, 2.0], [75.0, 1.0, 2.0]),
        ] {
            let share = least_de00(lab, other, other) / distance_de00(lab, other);
            assert!((0.8..=1.0).contains(&share), "{lab:?} {share}");
        }
    }
}
