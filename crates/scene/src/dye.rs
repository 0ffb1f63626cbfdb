//! Invented dyes on invented cloth, by single-constant Kubelka-Munk.

use crate::reflectance::Reflectance;

/// One absorption band: a bell over the wavelength, in units of K/S.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Wavelength of the peak, nm.
    pub peak_nm: f64,
    /// Standard deviation of the bell, nm.
    pub width_nm: f64,
    /// K/S at the peak for a depth of 1.
    pub strength: f64,
}

/// A dye as the sum of its absorption bands. All dyes here are invented; their
/// names say which plant's colour they resemble.
#[derive(Debug, Clone, PartialEq)]
pub struct Dye {
    /// What it is called.
    pub name: String,
    /// Its absorption bands, added up.
    pub bands: Vec<Band>,
}

impl Dye {
    /// A dye of `(peak nm, width nm, K/S at depth 1)` bands.
    pub fn new(name: &str, bands: &[(f64, f64, f64)]) -> Self {
        let band = |&(peak_nm, width_nm, strength)| Band {
            peak_nm,
            width_nm,
            strength,
        };
        Self {
            name: name.to_owned(),
            bands: bands.iter().map(band).collect(),
        }
    }

    /// A madder-like red.
    pub fn madder() -> Self {
        let bands = [(505.0, 46.0, 5.2), (415.0, 40.0, 2.6), (565.0, 22.0, 0.9)];
        Self::new("madder-like red", &bands)
    }

    /// A weld-like yellow.
    pub fn weld() -> Self {
        Self::new(
            "weld-like yellow",
            &[(405.0, 42.0, 7.5), (460.0, 24.0, 1.4)],
        )
    }

    /// An indigo-like blue.
    pub fn indigo() -> Self {
        let bands = [
            (655.0, 55.0, 7.5),
            (575.0, 45.0, 3.6),
            (500.0, 45.0, 0.9),
            (390.0, 60.0, 1.1),
        ];
        Self::new("indigo-like blue", &bands)
    }

    /// A walnut-like brown.
    pub fn walnut() -> Self {
        let bands = [(380.0, 95.0, 4.6), (520.0, 70.0, 1.7), (640.0, 80.0, 0.5)];
        Self::new("walnut-like brown", &bands)
    }

    /// Every dye of the small palette.
    pub fn palette() -> [Self; 4] {
        [Self::madder(), Self::weld(), Self::indigo(), Self::walnut()]
    }

    /// K/S at a wavelength (nm) for a depth of 1.
    pub fn k_over_s(&self, nm: f64) -> f64 {
        let at = |b: &Band| b.strength * (-0.5 * ((nm - b.peak_nm) / b.width_nm).powi(2)).exp();
        self.bands.iter().map(at).sum()
    }

    /// The cloth dyed to `depth` (0 = undyed, 1 = a full shade). A piece that
    /// has lost a share of its dye is one dyed to `depth * (1.0 - lost)`.
    pub fn on(&self, cloth: &Reflectance, depth: f64) -> Reflectance {
        dyed(cloth, &[(self, depth)])
    }
}

/// The cloth with several dyes on it, each to its own depth.
///
/// K/S of the cloth and of each dye times its depth add up, and the sum gives
/// the reflectance back.
///
/// # Source
/// Kubelka and Munk (1931) in the single-constant form: K/S = (1 - R)^2 / 2R.
pub fn dyed(cloth: &Reflectance, dyes: &[(&Dye, f64)]) -> Reflectance {
    let mut result = cloth.clone();
    for (value, nm) in result.0.iter_mut().zip(crate::wavelengths_nm()) {
        let bare = *value;
        let mut k_s = (1.0 - bare).powi(2) / (2.0 * bare);
        for (dye, depth) in dyes {
            k_s += depth * dye.k_over_s(nm);
        }
        *value = 1.0 + k_s - (k_s * k_s + 2.0 * k_s).sqrt();
    }
    result
}

/// Undyed wool: cream, darker towards the violet.
pub fn wool() -> Reflectance {
    Reflectance::from_fn(|nm| 0.80 - 0.46 * (-(nm - 380.0) / 85.0).exp())
}

/// Undyed linen: greyish beige.
pub fn linen() -> Reflectance {
    Reflectance::from_fn(|nm| 0.62 - 0.34 * (-(nm - 380.0) / 130.0).exp())
}

/// Undyed cotton, scoured: nearly white.
pub fn cotton() -> Reflectance {
    Reflectance::from_fn(|nm| 0.86 - 0.24 * (-(nm - 380.0) / 60.0).exp())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_dye_leaves_the_cloth() {
        let bare = Dye::madder().on(&linen(), 0.0);
        for (a, b) in bare.0.iter().zip(&linen().0) {
            assert!((a - b).abs() < 1e-12);
        }
    }

    /// Source: published (Kubelka and Munk): K/S is 0.25 at R = 0.5 and 4.05 at R = 0.1.
    #[test]
    fn k_over_s_adds_up() {
        let level = Dye::new("level", &[(550.0, 1e9, 3.8)]);
        let shade = level.on(&Reflectance::flat(0.5), 1.0);
        assert!((shade.0[17] - 0.1).abs() < 1e-9, "{}", shade.0[17]);
    }

    #[test]
    fn a_faded_piece_is_lighter() {
        for dye in Dye::palette() {
            let lightness = |depth| dye.on(&wool(), depth).lab_d65_10()[0];
            assert!(lightness(0.5) > lightness(0.8) && lightness(0.8) > lightness(1.0));
        }
    }
}
