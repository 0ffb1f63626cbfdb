//! How much dye a colour speaks of: Kubelka and Munk's K/S.
//!
//! K/S of opaque cloth grows with the dye on it: that of the cloth and that of each dye
//! add up. Of a spectrum it is summed over wavelengths. Where only CIELAB is known,
//! three channels stand in for the spectrum: long, middle and short wavelengths as the
//! sharpened cones of the Bradford matrix see them, each as a share of what white sends
//! back. A channel blurs what a narrow band of dye does: of six made-up dyes of which
//! two thirds were left, 65 to 71 % were found. So it is good for ratios of one dye's
//! depths, not for comparing dyes.

use crate::{Lab, Spectrum, View, Xyz, adapt, spectrum::resample_sprague};

/// Reflectance below which a channel is too dark to tell.
const DARKEST: f64 = 1e-3;

/// Kubelka and Munk's K/S of a reflectance, 0 upward.
///
/// Reflectances are shares of the light; below 0.001 they count as that, above 1 as 1.
///
/// # Source
/// Kubelka and Munk 1931, the single-constant form (1 - R)^2 / 2R.
///
/// ```
/// assert_eq!(colour::strength::k_over_s(0.1), 4.05);
/// ```
pub fn k_over_s(reflectance: f64) -> f64 {
    let r = reflectance.clamp(DARKEST, 1.0);
    (1.0 - r) * (1.0 - r) / (2.0 * r)
}

/// The reflectance of a K/S of 0 upward; the reverse of [`k_over_s`].
pub fn reflectance(k_over_s: f64) -> f64 {
    let k = k_over_s.max(0.0);
    1.0 + k - (k * k + 2.0 * k).sqrt()
}

/// Sum of K/S over 400, 410, ... 700 nm.
///
/// ```
/// let half = colour::Spectrum::new(400.0, 10.0, vec![0.5; 31])?;
/// assert!((colour::strength::of_spectrum(&half) - 31.0 * 0.25).abs() < 1e-9);
/// # Ok::<(), colour::ColourError>(())
/// ```
pub fn of_spectrum(spectrum: &Spectrum) -> f64 {
    let by_nm = resample_sprague(spectrum.start_nm(), spectrum.step_nm(), spectrum.values());
    (40..=340).step_by(10).map(|at| k_over_s(by_nm[at])).sum()
}

/// Sum of K/S over the three channels that stand in for a spectrum.
pub fn of_lab(lab: Lab, view: View) -> f64 {
    channels(lab, view).map(k_over_s).iter().sum()
}

/// The colour of `share` of the dye that makes `bare` cloth `dyed`: a pale dyeing, or
/// the stain that this dye leaves. By the three channels.
pub fn dyeing(bare: Lab, dyed: Lab, share: f64, view: View) -> Lab {
    let white = view.white();
    let (bare, dyed) = (
        channels(bare, view).map(k_over_s),
        channels(dyed, view).map(k_over_s),
    );
    let seen = [0, 1, 2].map(|k| reflectance(bare[k] + share * (dyed[k] - bare[k])));
    adapt::from_cone_shares(seen, white).to_lab(white)
}

/// What each channel sends back, as a share of white's.
fn channels(lab: Lab, view: View) -> [f64; 3] {
    let white = view.white();
    let xyz: Xyz = lab.to_xyz(white);
    adapt::cone_shares(xyz, white)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_grey_has_the_same_k_over_s_in_each_channel() {
        // Half of the light comes back: L* by CIELAB's definition, K/S 0.25 published.
        let grey = Xyz::new(0.5, 0.5, 0.5);
        let white = View::D65_10.white();
        let grey = Xyz::new(grey.x * white.x, grey.y * white.y, grey.z * white.z);
        let strength = of_lab(grey.to_lab(white), View::D65_10);
        assert!((strength - 0.75).abs() < 1e-9);
        assert!(of_lab(Lab::new(100.0, 0.0, 0.0), View::D65_2) < 1e-12);
    }

    #[test]
    fn what_is_too_dark_or_too_light_stays_finite() {
        for r in [-0.1, 0.0, 1.2, f64::MIN_POSITIVE] {
            assert!(k_over_s(r).is_finite() && k_over_s(r) >= 0.0);
        }
        assert!(of_lab(Lab::new(-3.0, 0.0, 0.0), View::D65_10).is_finite());
    }

    #[test]
    fn all_of_a_dye_is_the_dyed_cloth_and_none_the_bare() {
        let (bare, dyed) = (Lab::new(92.0, -0.5, 4.0), Lab::new(38.0, 42.0, 20.0));
        for (share, like) in [(0.0, bare), (1.0, dyed)] {
            let got = dyeing(bare, dyed, share, View::D65_10);
            for (got, like) in got.to_array().into_iter().zip(like.to_array()) {
                assert!((got - like).abs() < 1e-6, "{got} {like}");
            }
        }
        let pale = dyeing(bare, dyed, 0.02, View::D65_10);
        assert!(pale.l < bare.l && pale.a > bare.a);
    }

    proptest! {
        #[test]
        fn reflectance_comes_back(r in 0.002..1.0) {
            prop_assert!((reflectance(k_over_s(r)) - r).abs() < 1e-9);
        }

        #[test]
        fn a_share_of_a_dye_has_that_share_of_its_strength(share in 0.05..1.0) {
            let (bare, dyed) = (Lab::new(90.0, 0.0, 5.0), Lab::new(40.0, 30.0, 10.0));
            let of = |lab| of_lab(lab, View::D65_10) - of_lab(bare, View::D65_10);
            let part = of(dyeing(bare, dyed, share, View::D65_10));
            prop_assert!((part / of(dyed) - share).abs() < 1e-6);
        }
    }
}
