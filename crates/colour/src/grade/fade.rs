//! Change in colour: the instrumental grade of ISO 105-A05.

use super::Grade;
use crate::Lab;

/// The grade of change in colour with every term on the way.
///
/// Differences are after minus before. All in CIELAB units but `x`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fade {
    /// Lightness difference.
    pub d_l: f64,
    /// Chroma difference.
    pub d_c: f64,
    /// Metric hue difference, with the sign of the turn along the short way.
    pub d_h: f64,
    /// Mean chroma C_M.
    pub mean_chroma: f64,
    /// Mean hue h_M, degrees.
    pub mean_hue_deg: f64,
    /// The blue region's weight exponent x (no unit).
    pub x: f64,
    /// The term D taken off chroma and hue difference.
    pub d: f64,
    /// Chroma difference less D.
    pub d_ck: f64,
    /// Hue difference less D.
    pub d_hk: f64,
    /// Weighted chroma difference.
    pub d_cf: f64,
    /// Weighted hue difference.
    pub d_hf: f64,
    /// The fastness difference dE_F, 0 upward.
    pub d_ef: f64,
    /// The grade as a decimal, 5 downward, for statistics; below 1 (and even
    /// below 0) for changes beyond the end of the scale.
    pub value: f64,
    /// The reported half-step, from dE_F by the standard's table.
    pub grade: Grade,
}

/// The grey-scale grade of the change from `before` to `after`.
///
/// Both colours for D65 and the 10 degree observer. The decimal `value` comes
/// from the formula, not held at the end of the scale, the reported `grade` from the table: near the
/// table's limits the two differ slightly, as in the standard.
///
/// # Source
/// ISO 105-A05:1996; its limits are the midpoints of the ISO 105-A02 steps.
///
/// ```
/// use colour::{Lab, grade::fade};
/// let f = fade(Lab::new(52.31, -28.42, -24.77), Lab::new(55.1, -26.03, -22.91));
/// assert_eq!(format!("{:.4} {:.4} {}", f.d_ef, f.value, f.grade), "3.4192 2.9919 3");
/// ```
pub fn fade(before: Lab, after: Lab) -> Fade {
    let (c_r, c_t) = (before.chroma(), after.chroma());
    let (h_r, h_t) = (before.hue_deg(), after.hue_deg());
    let d_l = after.l - before.l;
    let d_c = c_t - c_r;
    let d_h = 2.0 * (c_t * c_r).sqrt() * libm::sin(short_way(h_t - h_r).to_radians() / 2.0);
    let mean_chroma = (c_t + c_r) / 2.0;
    let mean_hue_deg = mean_hue(h_t, h_r);

    let from_blue = (mean_hue_deg - 280.0).abs();
    let angle = if from_blue <= 180.0 {
        from_blue
    } else {
        360.0 - from_blue
    };
    let x = (angle / 30.0) * (angle / 30.0);
    let d = d_c * mean_chroma * libm::exp(-x) / 100.0;
    let (d_ck, d_hk) = (d_c - d, d_h - d);
    let chroma_weight = 20.0 * mean_chroma / 1000.0;
    let hue_weight = 10.0 * mean_chroma / 1000.0;
    let d_cf = d_ck / (1.0 + chroma_weight * chroma_weight);
    let d_hf = d_hk / (1.0 + hue_weight * hue_weight);
    let d_ef = (d_l * d_l + d_cf * d_cf + d_hf * d_hf).sqrt();
    Fade {
        d_l,
        d_c,
        d_h,
        mean_chroma,
        mean_hue_deg,
        x,
        d,
        d_ck,
        d_hk,
        d_cf,
        d_hf,
        d_ef,
        value: value_of(d_ef),
        grade: reported(d_ef),
    }
}

fn short_way(degrees: f64) -> f64 {
    if degrees > 180.0 {
        degrees - 360.0
    } else if degrees < -180.0 {
        degrees + 360.0
    } else {
        degrees
    }
}

fn mean_hue(h_t: f64, h_r: f64) -> f64 {
    let mean = (h_t + h_r) / 2.0;
    if (h_t - h_r).abs() <= 180.0 {
        mean
    } else if h_t + h_r < 360.0 {
        mean + 180.0
    } else {
        mean - 180.0
    }
}

/// The decimal grade of a fastness difference dE_F (0 upward), not held at the end of
/// the scale.
///
/// # Source
/// ISO 105-A05:1996.
///
/// ```
/// assert_eq!(colour::grade::value_of(1.7), 4.0);
/// ```
pub fn value_of(d_ef: f64) -> f64 {
    if d_ef <= 3.4 {
        5.0 - d_ef / 1.7
    } else {
        5.0 - libm::log2(d_ef / 0.85)
    }
}

/// The fastness difference dE_F that has this decimal grade, 0 where the grade is 5
/// or better: [`value_of`] turned round.
///
/// # Source
/// ISO 105-A05:1996.
///
/// ```
/// assert_eq!(colour::grade::difference_of(4.0), 1.7);
/// ```
pub fn difference_of(value: f64) -> f64 {
    if value >= 3.0 {
        1.7 * (5.0 - value).max(0.0)
    } else {
        0.85 * libm::exp2(5.0 - value)
    }
}

/// The fastness difference dE_F from which a change is graded worse than `grade`; none
/// for grade 1, the worst.
///
/// # Source
/// ISO 105-A05:1996, the table of grades.
///
/// ```
/// let four = "4".parse()?;
/// assert_eq!(colour::grade::worse_from(four), Some(2.10));
/// # Ok::<(), colour::ColourError>(())
/// ```
pub fn worse_from(grade: Grade) -> Option<f64> {
    let place = 10.0 - 2.0 * grade.value();
    LIMITS.get(place as usize).copied()
}

/// The table's limits: from each dE_F on a change is a half-step worse.
const LIMITS: [f64; 8] = [0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60];

fn reported(d_ef: f64) -> Grade {
    let worse = LIMITS.iter().filter(|&&limit| d_ef >= limit).count() as u8;
    Grade::from_half_steps(10 - worse)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_lightness_step_of_the_scale_gives_its_grade() {
        // ISO 105-A02: nominal steps of the grey scale, published.
        let steps = [
            (0.0, "5"),
            (0.8, "4-5"),
            (1.7, "4"),
            (2.5, "3-4"),
            (3.4, "3"),
            (4.8, "2-3"),
            (6.8, "2"),
            (9.6, "1-2"),
            (13.6, "1"),
        ];
        for (step, grade) in steps {
            let result = fade(Lab::new(41.0, 0.0, 0.0), Lab::new(41.0 + step, 0.0, 0.0));
            assert_eq!(result.grade.to_string(), grade);
            assert!((result.value - result.grade.value()).abs() < 0.05, "{step}");
        }
    }

    #[test]
    fn a_grade_and_its_difference_lead_to_each_other() {
        // ISO 105-A02: nominal steps of the grey scale, published, to its tolerances.
        for (step, grade) in [(0.0, 5.0), (1.7, 4.0), (3.4, 3.0), (6.8, 2.0), (13.6, 1.0)] {
            assert!((difference_of(grade) - step).abs() < 1e-9, "{grade}");
            assert!((value_of(step) - grade).abs() < 1e-9, "{grade}");
        }
        assert_eq!(difference_of(5.3), 0.0);
    }

    proptest! {
        #[test]
        fn grades_stay_on_the_scale(
            l1 in 0.0..100.0, a1 in -90.0..90.0, b1 in -90.0..90.0,
            l2 in 0.0..100.0, a2 in -90.0..90.0, b2 in -90.0..90.0,
        ) {
            let f = fade(Lab::new(l1, a1, b1), Lab::new(l2, a2, b2));
            prop_assert!(f.value <= 5.0);
            prop_assert!((1.0..=5.0).contains(&f.grade.value()));
        }
    }
}
