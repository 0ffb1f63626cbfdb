//! What a margin looks like: two cloths that differ by just so much.

use crate::swatch;
use crate::text;
use colour::{Lab, difference::ciede2000};

/// The colour that fades in the picture: a blue of middle depth.
const DYED: Lab = Lab {
    l: 42.0,
    a: -4.0,
    b: -26.0,
};
/// Undyed cloth, towards which it fades.
const UNDYED: Lab = Lab {
    l: 90.0,
    a: 0.0,
    b: 4.0,
};
/// Halvings by which the faded colour is found; far below what anybody sees.
const HALVINGS: usize = 40;

/// A dyed colour, and the same faded by `de00` (CIEDE2000, above 0).
pub fn colours(de00: f64) -> [Lab; 2] {
    let on_the_way = |share: f64| {
        let between = |from: f64, to: f64| from + share * (to - from);
        Lab::new(
            between(DYED.l, UNDYED.l),
            between(DYED.a, UNDYED.a),
            between(DYED.b, UNDYED.b),
        )
    };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = (low + high) / 2.0;
        if ciede2000(DYED, on_the_way(middle)) < de00 {
            low = middle;
        } else {
            high = middle;
        }
    }
    [DYED, on_the_way(high)]
}

/// Both side by side and touching, as SVG on mid-grey.
pub fn svg(de00: f64) -> String {
    let name = text::margin_pair::a_blue_cloth_and_the_same_faded(format_args!("{de00:.1}"));
    swatch::side_by_side(colours(de00), &name, 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pair_differs_by_the_margin() {
        for de00 in [0.8, 1.7, 2.5, 6.8, 13.6] {
            let [dyed, faded] = colours(de00);
            assert!((ciede2000(dyed, faded) - de00).abs() < 1e-6, "{de00}");
            assert!(faded.l > dyed.l);
        }
        let svg = svg(1.7);
        assert!(svg.contains("lab(42.00 -4.00 -26.00)") && !svg.contains("style="));
    }
}
