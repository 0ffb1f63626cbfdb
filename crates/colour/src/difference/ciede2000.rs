//! CIEDE2000, and its metric near one colour.

use crate::Lab;

/// 25 to the seventh power, of the chroma weight.
const CHROMA_CORNER: f64 = 6_103_515_625.0;

/// The CIEDE2000 difference of two colours, all parametric factors 1.
///
/// Symmetric; 0 for equal colours. About 1 can just be seen side by side
/// (common practice).
///
/// # Source
/// ISO/CIE 11664-6; the branches as in Sharma, Wu and Dalal, Color Research and
/// Application 30 (2005) 21-30, whose 34 published pairs it gives.
///
/// ```
/// use colour::{Lab, difference::ciede2000};
/// let d = ciede2000(Lab::new(50.0, 2.6772, -79.7751), Lab::new(50.0, 0.0, -82.7485));
/// assert_eq!(format!("{d:.4}"), "2.0425");
/// ```
pub fn ciede2000(a: Lab, b: Lab) -> f64 {
    let mean_chroma7 = libm::pow((a.chroma() + b.chroma()) / 2.0, 7.0);
    let g = 0.5 * (1.0 - (mean_chroma7 / (mean_chroma7 + CHROMA_CORNER)).sqrt());
    let (c1, h1) = polar((1.0 + g) * a.a, a.b);
    let (c2, h2) = polar((1.0 + g) * b.a, b.b);

    let dh = hue_step(c1 * c2, h1, h2);
    let delta_l = b.l - a.l;
    let delta_c = c2 - c1;
    let delta_h = 2.0 * (c1 * c2).sqrt() * libm::sin(dh.to_radians() / 2.0);

    let l_bar = (a.l + b.l) / 2.0;
    let c_bar = (c1 + c2) / 2.0;
    let h_bar = mean_hue(c1 * c2, h1, h2);
    let t = 1.0 - 0.17 * cos_deg(h_bar - 30.0)
        + 0.24 * cos_deg(2.0 * h_bar)
        + 0.32 * cos_deg(3.0 * h_bar + 6.0)
        - 0.20 * cos_deg(4.0 * h_bar - 63.0);
    let from_50 = (l_bar - 50.0) * (l_bar - 50.0);
    let s_l = 1.0 + 0.015 * from_50 / (20.0 + from_50).sqrt();
    let s_c = 1.0 + 0.045 * c_bar;
    let s_h = 1.0 + 0.015 * c_bar * t;
    let from_blue = (h_bar - 275.0) / 25.0;
    let turn = 30.0 * libm::exp(-from_blue * from_blue);
    let c_bar7 = libm::pow(c_bar, 7.0);
    let r_t =
        -2.0 * (c_bar7 / (c_bar7 + CHROMA_CORNER)).sqrt() * libm::sin((2.0 * turn).to_radians());

    let (l, c, h) = (delta_l / s_l, delta_c / s_c, delta_h / s_h);
    // The rotation term may leave a rounding error below zero for equal colours.
    (l * l + c * c + h * h + r_t * c * h).max(0.0).sqrt()
}

/// The CIEDE2000 metric at a colour: the matrix G for which the difference of
/// `at` and `at + d` is close to the root of d' G d for small d (below about 5).
///
/// Rows and columns in the order L*, a*, b*; symmetric, positive definite.
/// From CIEDE2000 itself by steps to both sides along each axis and diagonal.
pub fn ciede2000_metric(at: Lab) -> [[f64; 3]; 3] {
    const STEP: f64 = 0.05;
    let squared = |d: [f64; 3]| {
        let half = d.map(|v| v * STEP / 2.0);
        let one = Lab::new(at.l - half[0], at.a - half[1], at.b - half[2]);
        let two = Lab::new(at.l + half[0], at.a + half[1], at.b + half[2]);
        let e = ciede2000(one, two) / STEP;
        e * e
    };
    let axes = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
    let mut g = [[0.0; 3]; 3];
    for i in 0..3 {
        g[i][i] = squared(axes[i]);
        for j in 0..i {
            let sum = [0, 1, 2].map(|k| axes[i][k] + axes[j][k]);
            let gap = [0, 1, 2].map(|k| axes[i][k] - axes[j][k]);
            g[i][j] = (squared(sum) - squared(gap)) / 4.0;
            g[j][i] = g[i][j];
        }
    }
    g
}

fn cos_deg(degrees: f64) -> f64 {
    libm::cos(degrees.to_radians())
}

/// Chroma and hue in degrees, 0 up to 360; hue 0 at the grey axis.
fn polar(a: f64, b: f64) -> (f64, f64) {
    let p = Lab::new(0.0, a, b);
    (p.chroma(), p.hue_deg())
}

/// Hue difference in degrees along the short way (equation 10 of the paper).
fn hue_step(chroma_product: f64, h1: f64, h2: f64) -> f64 {
    let d = h2 - h1;
    if chroma_product == 0.0 {
        0.0
    } else if d > 180.0 {
        d - 360.0
    } else if d < -180.0 {
        d + 360.0
    } else {
        d
    }
}

/// Mean hue in degrees (equation 14 of the paper).
fn mean_hue(chroma_product: f64, h1: f64, h2: f64) -> f64 {
    let sum = h1 + h2;
    if chroma_product == 0.0 {
        sum
    } else if (h1 - h2).abs() <= 180.0 {
        sum / 2.0
    } else if sum < 360.0 {
        (sum + 360.0) / 2.0
    } else {
        (sum - 360.0) / 2.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn any_lab() -> impl Strategy<Value = Lab> {
        (0.0..100.0, -90.0..90.0, -90.0..90.0).prop_map(|(l, a, b)| Lab::new(l, a, b))
    }

    proptest! {
        #[test]
        fn it_is_symmetric_and_not_negative(a in any_lab(), b in any_lab()) {
            let there = ciede2000(a, b);
            prop_assert!(there >= 0.0);
            prop_assert!((there - ciede2000(b, a)).abs() < 1e-9);
        }

        #[test]
        fn equal_colours_differ_by_nothing(a in any_lab()) {
            prop_assert_eq!(ciede2000(a, a), 0.0);
        }

        #[test]
        fn the_metric_tells_small_differences(
            l in 10.0..90.0, a in 5.0..60.0, b in -60.0..60.0,
            dl in -0.5..0.5, da in -0.5..0.5, db in -0.5..0.5,
        ) {
            let g = ciede2000_metric(Lab::new(l, a, b));
            let d = [dl, da, db];
            let mut sum: f64 = 0.0;
            for i in 0..3 { for j in 0..3 { sum += d[i] * g[i][j] * d[j]; } }
            let exact = ciede2000(
                Lab::new(l - dl / 2.0, a - da / 2.0, b - db / 2.0),
                Lab::new(l + dl / 2.0, a + da / 2.0, b + db / 2.0),
            );
            prop_assert!((sum.max(0.0).sqrt() - exact).abs() < 0.01 + 0.03 * exact);
        }
    }
}
