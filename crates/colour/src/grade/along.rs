//! What a grade looks like: the colour to which a change of that grade leads.

use super::{difference_of, fade};
use crate::Lab;

/// Halvings by which the colour is found; far below what anybody sees.
const HALVINGS: usize = 60;
/// The longest way that is gone, CIELAB units: farther than any surface colour.
const LONGEST: f64 = 250.0;
/// Steps in which the way is searched for where the grade is passed first.
const STEPS: usize = 500;

/// The first colour on the way from `before` along `direction` (in L*, a*, b*; of any
/// length) whose change is graded `value` (a decimal grade, 5 downward).
///
/// None where the direction has no length, or the way leaves 0 to 100 in lightness before the
/// change is as great. The change of a way grows steadily for all but odd colours; where it doesn't, the
/// first colour of that grade counts.
///
/// # Source
/// ISO 105-A05:1996, turned round by halving.
///
/// ```
/// use colour::{Lab, grade::{along, fade}};
/// let before = Lab::new(40.0, 30.0, 10.0);
/// let after = along(before, [3.0, -4.0, -1.0], 4.0).expect("a way in reach");
/// assert_eq!(fade(before, after).grade.to_string(), "4");
/// ```
pub fn along(before: Lab, direction: [f64; 3], value: f64) -> Option<Lab> {
    let length = direction.iter().map(|part| part * part).sum::<f64>().sqrt();
    if !(length > 1e-9 && length.is_finite()) {
        return None;
    }
    let target = difference_of(value);
    let at = |way: f64| {
        let [l, a, b] = direction.map(|part| part / length * way);
        Lab::new(before.l + l, before.a + a, before.b + b)
    };
    let reached = |way: f64| fade(before, at(way)).d_ef >= target;
    let step = LONGEST / STEPS as f64;
    let far = (0..=STEPS)
        .map(|n| n as f64 * step)
        .find(|way| reached(*way))?;
    let (mut near, mut far) = ((far - step).max(0.0), far);
    for _ in 0..HALVINGS {
        let middle = (near + far) / 2.0;
        if reached(middle) {
            far = middle;
        } else {
            near = middle;
        }
    }
    let found = at(far);
    (0.0..=100.0).contains(&found.l).then_some(found)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_grey_scale_itself_comes_out() {
        // ISO 105-A02: nominal steps of the grey scale, published: lightness of greys alone.
        for (value, step) in [
            (5.0, 0.0),
            (4.5, 0.8),
            (4.0, 1.7),
            (3.0, 3.4),
            (2.0, 6.8),
            (1.0, 13.6),
        ] {
            let found = along(Lab::new(41.0, 0.0, 0.0), [2.0, 0.0, 0.0], value).unwrap();
            assert!((found.l - 41.0 - step).abs() < 0.06, "{value}: {}", found.l);
        }
    }

    #[test]
    fn what_is_out_of_reach_is_said() {
        assert!(along(Lab::new(95.0, 0.0, 0.0), [1.0, 0.0, 0.0], 1.0).is_none());
        assert!(along(Lab::new(40.0, 0.0, 0.0), [0.0; 3], 4.0).is_none());
        assert!(along(Lab::new(40.0, 0.0, 0.0), [f64::NAN, 0.0, 0.0], 4.0).is_none());
    }

    proptest! {
        #[test]
        fn the_change_found_is_of_that_grade(
            l in 20.0..70.0, a in -40.0..40.0, b in -40.0..40.0,
            dl in -1.0..1.0, da in -1.0..1.0, db in -1.0..1.0,
            half_steps in 2_u8..10,
        ) {
            let value = f64::from(half_steps) / 2.0;
            let before = Lab::new(l, a, b);
            if let Some(after) = along(before, [dl, da, db], value) {
                let found = fade(before, after);
                prop_assert!((found.d_ef - difference_of(value)).abs() < 1e-6);
                prop_assert!((found.value - value).abs() < 1e-6);
            }
        }
    }
}
