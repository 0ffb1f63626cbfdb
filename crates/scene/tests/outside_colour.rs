//! The true colours against the `colour` crate and a reference library.

use colour::{Spectrum, View};
use scene::{Dye, PATCHES, Reflectance, chart_spectra, cotton, linen, wool};

/// Source: the crate `colour`, which sums by 1 nm with tables of its own.
#[test]
fn truth_agrees_with_the_colour_crate() {
    let mut surfaces = chart_spectra().to_vec();
    for dye in Dye::palette() {
        for cloth in [wool(), linen(), cotton()] {
            surfaces.extend([0.2, 0.7, 1.0].map(|depth| dye.on(&cloth, depth)));
        }
    }
    for surface in surfaces {
        let theirs = Spectrum::new(380.0, 10.0, surface.0.to_vec())
            .unwrap()
            .lab(View::D65_10)
            .to_array();
        let apart = distance(surface.lab_d65_10(), theirs);
        assert!(apart < 0.1, "{apart} at {theirs:?}");
    }
}

/// Source: reference library (colour-science 0.4.7, ASTM E308).
#[test]
fn truth_agrees_with_a_reference_library() {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../reference/colour/check_spectral_lab.csv"
    );
    let table = std::fs::read_to_string(path).unwrap();
    let spectra = chart_spectra();
    let mut checked = 0;
    for line in table.lines().filter(|line| line.contains(",D65/10,")) {
        let cells: Vec<&str> = line.split(',').collect();
        let patch = PATCHES
            .iter()
            .position(|name| cells[0] == *name || cells[0].starts_with(&format!("{name} (")))
            .unwrap_or_else(|| panic!("no patch is called {}", cells[0]));
        let wanted = [5, 6, 7].map(|i| cells[i].parse::<f64>().unwrap());
        let apart = distance(spectra[patch].lab_d65_10(), wanted);
        assert!(apart < 0.02, "{} {apart}", cells[0]);
        checked += 1;
    }
    assert_eq!(checked, 12);
}

#[test]
fn a_perfect_white_is_white() {
    let lab = Reflectance::flat(1.0).lab_d65_10();
    assert!(distance(lab, [100.0, 0.0, 0.0]) < 1e-9);
}

fn distance(a: [f64; 3], b: [f64; 3]) -> f64 {
    (0..3).map(|k| (a[k] - b[k]).powi(2)).sum::<f64>().sqrt()
}
