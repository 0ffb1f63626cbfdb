//! Measured colours on a screen: CSS `lab()` with an sRGB stand-in, on neutral mid-grey.
//!
//! CSS `lab()` is defined for D50; the readings are for D65 and 10 degrees. The three
//! numbers are passed on as they are, so a neutral stays neutral and a screen shows the
//! colour as it looks to an eye adapted to the screen. Screens only approximate: the
//! numbers belong beside every swatch.

use crate::svg::escape;
use crate::text;
use colour::{Lab, View};
use photo::ChartReference;
use std::{cmp::Reverse, collections::BTreeSet};
use trial::{Reading, Role, Trial};

/// The neutral ground on which measured colours are shown.
pub const GROUND: &str = "#777777";

/// CSS Color 4 `lab()` text, such as `lab(52.31 -28.42 -24.77)`.
pub fn css_lab(lab: Lab) -> String {
    format!(
        "lab({:.2} {:.2} {:.2})",
        lab.l.clamp(0.0, 100.0),
        lab.a,
        lab.b
    )
}

/// The nearest sRGB colour as `#rrggbb`, channels outside the screen's range cut off.
///
/// # Source
/// IEC 61966-2-1 (sRGB matrix and transfer curve).
pub fn srgb_hex(lab: Lab) -> String {
    let linear = linear_srgb(lab);
    let byte = |v: f64| {
        let v = v.clamp(0.0, 1.0);
        let coded = if v <= 0.003_130_8 {
            12.92 * v
        } else {
            1.055 * v.powf(1.0 / 2.4) - 0.055
        };
        (coded * 255.0).round() as u8
    };
    format!(
        "#{:02x}{:02x}{:02x}",
        byte(linear[0]),
        byte(linear[1]),
        byte(linear[2])
    )
}

/// Whether an sRGB screen can show the colour, but for what rounds away.
pub fn in_srgb(lab: Lab) -> bool {
    let fits = |v: &f64| (-0.002..=1.002).contains(v);
    linear_srgb(lab).iter().all(fits)
}

/// Linear red, green and blue of sRGB, 0 to 1 where a screen can show them.
fn linear_srgb(lab: Lab) -> [f64; 3] {
    let xyz = lab.to_xyz(View::D65_2.white());
    let (x, y, z) = (xyz.x / 100.0, xyz.y / 100.0, xyz.z / 100.0);
    [
        3.240_625 * x - 1.537_208 * y - 0.498_629 * z,
        -0.968_931 * x + 1.875_756 * y + 0.041_518 * z,
        0.055_710 * x - 0.204_021 * y + 1.056_996 * z,
    ]
}

/// The CIELAB colour (D65, 2 degrees) of `#rrggbb` or `rrggbb`; nothing for another text.
///
/// # Source
/// IEC 61966-2-1 (sRGB matrix and transfer curve).
pub fn lab_of_hex(text: &str) -> Option<Lab> {
    let digits = text.trim().trim_start_matches('#');
    let is_hex = digits.len() == 6 && digits.bytes().all(|b| b.is_ascii_hexdigit());
    let number = u32::from_str_radix(digits, 16).ok().filter(|_| is_hex)?;
    let [r, g, b] = [16, 8, 0].map(|shift| {
        let coded = f64::from(number >> shift & 0xff) / 255.0;
        if coded <= 0.04045 {
            coded / 12.92
        } else {
            ((coded + 0.055) / 1.055).powf(2.4)
        }
    });
    let xyz = colour::Xyz::new(
        100.0 * (0.412_390_8 * r + 0.357_584_3 * g + 0.180_480_8 * b),
        100.0 * (0.212_639_0 * r + 0.715_168_7 * g + 0.072_192_3 * b),
        100.0 * (0.019_330_8 * r + 0.119_194_8 * g + 0.950_532_2 * b),
    );
    Some(xyz.to_lab(View::D65_2.white()))
}

/// The numbers of a colour for a reader: `L* 52.3  a* -28.4  b* -24.8`, with true minus signs.
pub fn numbers(lab: Lab) -> String {
    format!("L* {:.1} a* {:.1} b* {:.1}", lab.l, lab.a, lab.b).replace('-', "\u{2212}")
}

/// A swatch as SVG, `name` being its text for those who can't see it.
///
/// The colour is a `fill` attribute, which a strict content security policy allows; a browser
/// that doesn't know `lab()` takes the sRGB colour of the group around it.
pub fn svg(lab: Lab, name: &str) -> String {
    format!(
        r#"<svg class="swatch" viewBox="0 0 64 44" width="64" height="44" role="img" aria-label="{}"><rect width="64" height="44" fill="{GROUND}"/><g fill="{}"><rect x="9" y="8" width="46" height="28" fill="{}"/></g></svg>"#,
        escape(&format!("{name}: {}", numbers(lab))),
        srgb_hex(lab),
        css_lab(lab),
    )
}

/// Two colours next to each other on neutral grey, as SVG: their edges touch where `gap`
/// is 0, else they lie that far apart, in hundredths of the picture's width. `name` is its text for those who
/// can't see it; no numbers are told.
pub fn side_by_side(labs: [Lab; 2], name: &str, gap: f64) -> String {
    let half = (80.0 - gap) / 2.0;
    let cloths: String = labs
        .into_iter()
        .zip([10.0, 10.0 + half + gap])
        .map(|(lab, x)| {
            format!(
                r#"<g fill="{}"><rect x="{x}" y="10" width="{half}" height="36" fill="{}"/></g>"#,
                srgb_hex(lab),
                css_lab(lab)
            )
        })
        .collect();
    format!(
        r#"<svg class="swatch pair-swatch" viewBox="0 0 100 56" role="img" aria-label="{}" shape-rendering="crispEdges"><rect width="100" height="56" fill="{GROUND}"/>{cloths}</svg>"#,
        escape(name)
    )
}

/// A chart's patches as they lie, as SVG, `name` being its text for those who can't see it.
pub fn chart(reference: &ChartReference, name: &str) -> String {
    const SIDE: usize = 20;
    const GAP: usize = 3;
    let (rows, columns) = (reference.rows(), reference.columns());
    let across = |n: usize| n * (SIDE + GAP) + GAP;
    let (width, height) = (across(columns), across(rows));
    let white = View::D65_10.white();
    let patches: String = reference
        .xyz(View::D65_10)
        .into_iter()
        .enumerate()
        .map(|(i, xyz)| {
            let lab = xyz.to_lab(white);
            format!(
                r#"<g fill="{}"><rect x="{}" y="{}" width="{SIDE}" height="{SIDE}" fill="{}"/></g>"#,
                srgb_hex(lab),
                across(i % columns),
                across(i / columns),
                css_lab(lab)
            )
        })
        .collect();
    format!(
        r#"<svg class="swatch" viewBox="0 0 {width} {height}" width="{width}" height="{height}" role="img" aria-label="{}"><rect width="{width}" height="{height}" fill="{GROUND}"/>{patches}</svg>"#,
        escape(&text::swatch::the_patches(name)),
    )
}

/// One arm's mean colour at each stage.
pub struct ArmSwatches {
    /// Name of the arm.
    pub arm: String,
    /// One cell for each stage of [`stages`], in its order; none where nothing was read.
    pub cells: Vec<Option<StageSwatch>>,
}

/// The mean colour of an arm's test pieces at one stage.
pub struct StageSwatch {
    /// Rounds gone through.
    pub stage: u32,
    /// Mean CIELAB of the pieces (D65, 10 degrees).
    pub lab: Lab,
    /// How many pieces were read.
    pub pieces: usize,
    /// The swatch itself.
    pub svg: String,
    /// Its numbers as text.
    pub numbers: String,
}

/// Every stage at which something was read, in order.
pub fn stages(readings: &[Reading]) -> Vec<u32> {
    readings
        .iter()
        .map(|r| r.stage)
        .collect::<BTreeSet<_>>()
        .into_iter()
        .collect()
}

/// The mean colour of each arm's test pieces at each stage.
pub fn by_stage(trial: &Trial, readings: &[Reading]) -> Vec<ArmSwatches> {
    let stages = stages(readings);
    trial
        .arms
        .iter()
        .map(|arm| ArmSwatches {
            arm: arm.name.clone(),
            cells: stages
                .iter()
                .map(|&stage| {
                    let of_arm: Vec<&Reading> = readings
                        .iter()
                        .filter(|r| r.stage == stage)
                        .filter(|r| {
                            trial
                                .pieces
                                .iter()
                                .any(|p| p.id == r.piece && p.arm == arm.id && p.role == Role::Test)
                        })
                        .collect();
                    mean(&of_arm).map(|(lab, pieces)| StageSwatch {
                        stage,
                        lab,
                        pieces,
                        svg: svg(
                            lab,
                            &format!("{}, {}", arm.name, crate::words::stage(stage)),
                        ),
                        numbers: numbers(lab),
                    })
                })
                .collect(),
        })
        .collect()
}

/// The mean colour of readings of one source and view, those of which there are most:
/// colours of several don't mix.
fn mean(readings: &[&Reading]) -> Option<(Lab, usize)> {
    let kind = |r: &Reading| (r.source, r.view.clone());
    let count = |of: &Reading| readings.iter().filter(|r| kind(r) == kind(of)).count();
    // Of equals the first, photos before others.
    let chosen = readings
        .iter()
        .max_by_key(|r| (count(r), Reverse(r.source)))
        .map(|r| kind(r))?;
    let readings: Vec<&Reading> = readings
        .iter()
        .copied()
        .filter(|r| kind(r) == chosen)
        .collect();
    let n = readings.len() as f64;
    let sum = readings.iter().fold([0.0; 3], |s, r| {
        [s[0] + r.lab[0], s[1] + r.lab[1], s[2] + r.lab[2]]
    });
    let pieces = readings
        .iter()
        .map(|r| r.piece)
        .collect::<BTreeSet<_>>()
        .len();
    Some((Lab::new(sum[0] / n, sum[1] / n, sum[2] / n), pieces))
}

#[cfg(test)]
mod tests {
    use super::*;

    // Published: sRGB's primaries and mid-grey in CIELAB for D65 (IEC 61966-2-1 and CIE 15),
    // rounded as printed in common tables.
    #[test]
    fn a_picked_colour_comes_back_as_it_was() {
        for hex in [
            "#ffffff", "#000000", "#808080", "#ff0000", "#0000ff", "#7a3b2c",
        ] {
            let lab = lab_of_hex(hex).unwrap();
            assert_eq!(srgb_hex(lab), hex);
        }
        // Published (IEC 61966-2-1 and CIE 15), as below.
        let red = lab_of_hex("FF0000").unwrap();
        assert!((red.l - 53.241).abs() < 0.02 && (red.a - 80.092).abs() < 0.05);
        for text in ["", "#fff", "red", "#12345g", "#1234567", "+12345"] {
            assert_eq!(lab_of_hex(text), None, "{text}");
        }
    }

    #[test]
    fn srgb_of_known_colours() {
        assert_eq!(srgb_hex(Lab::new(100.0, 0.0, 0.0)), "#ffffff");
        assert_eq!(srgb_hex(Lab::new(0.0, 0.0, 0.0)), "#000000");
        assert_eq!(srgb_hex(Lab::new(53.585, 0.0, 0.0)), "#808080");
        assert_eq!(srgb_hex(Lab::new(53.241, 80.092, 67.203)), "#ff0000");
        assert_eq!(srgb_hex(Lab::new(32.297, 79.188, -107.860)), "#0000ff");
    }

    #[test]
    fn what_a_screen_cannot_show_is_told() {
        // sRGB's own primaries lie at the edge; a green as strong as Display P3's beyond it.
        for inside in [Lab::new(53.241, 80.092, 67.203), Lab::new(50.0, 0.0, 0.0)] {
            assert!(in_srgb(inside));
        }
        for beyond in [Lab::new(86.0, -110.0, 80.0), Lab::new(50.0, -80.0, 0.0)] {
            assert!(!in_srgb(beyond));
        }
    }

    #[test]
    fn a_swatch_carries_its_numbers_and_both_colours() {
        let svg = svg(Lab::new(40.0, -10.0, 5.0), "A<1>");
        assert!(svg.contains("lab(40.00 -10.00 5.00)"));
        assert!(svg.contains("A&lt;1&gt;: L* 40.0 a* \u{2212}10.0 b* 5.0"));
        assert!(!svg.contains("style="));
    }
}
