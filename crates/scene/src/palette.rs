//! More invented dyes and cloths, as various as a dyer's shelf.

use crate::{Dye, Reflectance};

impl Dye {
    /// Twelve dyes all round the circle of hues, with brown, black and a very pale
    /// one; several absorption bands each.
    pub fn wide() -> [Self; 12] {
        [
            Self::madder(),
            Self::weld(),
            Self::indigo(),
            Self::walnut(),
            Self::new(
                "cochineal-like crimson",
                &[
                    (526.0, 23.0, 4.4),
                    (563.0, 23.0, 3.6),
                    (490.0, 42.0, 2.4),
                    (405.0, 36.0, 0.9),
                ],
            ),
            Self::new(
                "logwood-like purple",
                &[
                    (575.0, 36.0, 4.4),
                    (625.0, 28.0, 1.9),
                    (520.0, 40.0, 2.6),
                    (395.0, 34.0, 1.6),
                ],
            ),
            Self::new(
                "woad-like blue",
                &[
                    (640.0, 48.0, 3.2),
                    (570.0, 44.0, 1.5),
                    (480.0, 40.0, 0.25),
                    (395.0, 40.0, 0.9),
                ],
            ),
            Self::new(
                "green",
                &[
                    (668.0, 20.0, 2.9),
                    (625.0, 42.0, 2.3),
                    (432.0, 34.0, 5.6),
                    (475.0, 22.0, 1.4),
                ],
            ),
            Self::new(
                "coreopsis-like orange",
                &[(430.0, 52.0, 7.8), (505.0, 28.0, 3.0), (545.0, 18.0, 0.5)],
            ),
            Self::new(
                "cutch-like brown",
                &[
                    (400.0, 75.0, 6.2),
                    (495.0, 60.0, 3.4),
                    (590.0, 60.0, 1.1),
                    (690.0, 70.0, 0.4),
                ],
            ),
            Self::new(
                "iron and gall black",
                &[
                    (560.0, 120.0, 11.0),
                    (400.0, 110.0, 6.0),
                    (700.0, 70.0, 3.2),
                ],
            ),
            Self::new(
                "safflower-like blush",
                &[
                    (522.0, 24.0, 0.34),
                    (405.0, 45.0, 0.16),
                    (480.0, 40.0, 0.08),
                ],
            ),
        ]
    }
}

/// Undyed silk: warm white, darker only in the violet.
pub fn silk() -> Reflectance {
    Reflectance::from_fn(|nm| 0.84 - 0.34 * (-(nm - 380.0) / 48.0).exp())
}

/// Undyed hemp: greyish brown.
pub fn hemp() -> Reflectance {
    Reflectance::from_fn(|nm| 0.55 - 0.36 * (-(nm - 380.0) / 165.0).exp())
}

/// Bleached cotton without brightener.
pub fn bleached_cotton() -> Reflectance {
    Reflectance::from_fn(|nm| 0.91 - 0.16 * (-(nm - 380.0) / 38.0).exp())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{cotton, linen, wool};

    const CLOTHS: [fn() -> Reflectance; 6] = [wool, linen, cotton, silk, hemp, bleached_cotton];

    #[test]
    fn no_shade_is_brighter_than_cloth_can_be() {
        for cloth in CLOTHS {
            for dye in Dye::wide() {
                for depth in [0.02, 0.3, 1.0] {
                    let shade = dye.on(&cloth(), depth);
                    assert!(
                        shade.0.iter().all(|r| (0.005..0.92).contains(r)),
                        "{}",
                        dye.name
                    );
                }
            }
        }
    }

    /// Smooth: no step of 10 nm changes the reflectance by more than broad-banded
    /// dyes do; common practice, no source.
    #[test]
    fn spectra_are_smooth() {
        for dye in Dye::wide() {
            let shade = dye.on(&bleached_cotton(), 0.6);
            let steepest = shade
                .0
                .windows(2)
                .map(|w| (w[1] - w[0]).abs())
                .fold(0.0, f64::max);
            assert!(steepest < 0.18, "{} {steepest}", dye.name);
        }
    }

    #[test]
    fn hues_go_all_round_and_names_tell_the_truth() {
        let lab = |name: &str, depth: f64| {
            let dyes = Dye::wide();
            let dye = dyes.iter().find(|dye| dye.name.ends_with(name));
            dye.expect("a dye of the palette")
                .on(&cotton(), depth)
                .lab_d65_10()
        };
        let hue = |name: &str| {
            let [_, a, b] = lab(name, 1.0);
            b.atan2(a).to_degrees().rem_euclid(360.0)
        };
        for (name, from, to) in [
            ("crimson", 340.0, 375.0),
            ("purple", 270.0, 335.0),
            ("woad-like blue", 200.0, 290.0),
            ("green", 120.0, 180.0),
            ("orange", 45.0, 75.0),
            ("cutch-like brown", 35.0, 80.0),
        ] {
            let hue = hue(name);
            let held = (from..to).contains(&hue) || (from..to).contains(&(hue + 360.0));
            assert!(held, "{name} {hue}");
        }
        let [l, a, b] = lab("black", 1.0);
        assert!(l < 25.0 && a.hypot(b) < 8.0, "{l} {a} {b}");
        assert!(lab("blush", 0.5)[0] > 85.0);
    }
}
