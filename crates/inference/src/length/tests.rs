//! Laws and limits of the length's interval.

use super::*;
use proptest::prelude::*;

fn even(variance: f64, df: f64) -> Error {
    Error {
        covariance: Matrix3::identity() * variance,
        df,
    }
}

#[test]
fn far_from_zero_it_is_students_interval() {
    for df in [2.0, 4.0, 10.0, 1000.0] {
        let covariance = Matrix3::from_diagonal(&Vector3::new(0.04, 0.03, 0.02));
        let length = Length::new(Vector3::new(1e3, 0.0, 0.0), &Error { covariance, df });
        let interval = length.interval(0.95);
        let half = quantile::student(0.975, df) * 0.2;
        assert!((interval.low - (1e3 - half)).abs() < 0.01 * half, "{df}");
        assert!((interval.high - (1e3 + half)).abs() < 0.01 * half, "{df}");
    }
}

#[test]
fn at_zero_an_even_scatter_gives_the_f_test() {
    // F quantiles with 3 and df degrees of freedom at 0.975: printed tables (published).
    for (df, f) in [(2.0, 39.17), (4.0, 9.979), (10.0, 4.826)] {
        let edge = (3.0_f64 * f).sqrt();
        let at = |length: f64| Length::new(Vector3::new(0.0, length, 0.0), &even(1.0, df));
        assert_eq!(at(edge * 0.995).lower(0.975), 0.0);
        assert!(at(edge * 1.005).lower(0.975) > 0.0);
    }
}

#[test]
fn without_any_scatter_it_is_the_length_itself() {
    let length = Length::new(Vector3::new(3.0, 4.0, 0.0), &even(0.0, 3.0));
    let interval = length.interval(0.95);
    assert!((interval.low - 5.0).abs() < 1e-9 && (interval.high - 5.0).abs() < 1e-9);
    let none = Length::new(Vector3::zeros(), &even(0.0, 3.0)).interval(0.95);
    assert_eq!((none.low, none.high), (0.0, 0.0));
}

#[test]
fn a_lucky_zero_is_not_taken_for_proof() {
    let length = Length::new(Vector3::zeros(), &even(1.0, 6.0));
    assert!((length.upper(0.95) - quantile::student(0.95, 6.0)).abs() < 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn the_interval_holds_the_length_seen_and_widens_with_the_level(
        d in prop::array::uniform3(-4.0f64..4.0),
        s in prop::array::uniform3(0.0f64..1.5),
        df in 1.0f64..30.0,
    ) {
        let error = Error {
            covariance: Matrix3::from_diagonal(&Vector3::from(s).map(|v| v * v)),
            df,
        };
        let length = Length::new(Vector3::from(d), &error);
        let narrow = length.interval(0.90);
        let wide = length.interval(0.95);
        prop_assert!(wide.low >= 0.0 && wide.low <= narrow.low + 1e-9);
        prop_assert!(narrow.contains(length.observed()));
        prop_assert!(narrow.high <= wide.high + 1e-9);
        prop_assert!((narrow.high - length.upper(0.95)).abs() < 1e-9);
    }

    #[test]
    fn units_do_not_matter(d in prop::array::uniform3(-4.0f64..4.0), scale in 0.01f64..100.0) {
        let one = Length::new(Vector3::from(d), &even(0.3, 5.0)).interval(0.95);
        let other = Length::new(Vector3::from(d) * scale, &even(0.3 * scale * scale, 5.0));
        let other = other.interval(0.95);
        prop_assert!((one.low * scale - other.low).abs() < 1e-6 * scale);
        prop_assert!((one.high * scale - other.high).abs() < 1e-6 * scale);
    }
}
