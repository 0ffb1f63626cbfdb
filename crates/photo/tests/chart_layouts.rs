//! Charts of other layouts are found by the values that a person gives for them.
//! Source of the truth: rendered photos, made by a crate that shares nothing with
//! the finder.

use photo::{ChartReference, PhotoReading, Refusal, Request, read};
use scene::{
    Background, Piece, Reflectance, Rendered, Scene, Texture, Viewpoint, chart_spectra, render,
};

/// A photo of a chart of the given patches, row by row, on black card.
fn chart_of(seed: u64, columns: usize, colours: &[Reflectance]) -> Scene {
    const PITCH_MM: f64 = 23.0;
    let rows = colours.len() / columns;
    let pieces = colours.iter().enumerate().map(|(k, colour)| {
        let at = [(k % columns, columns), (k / columns, rows)]
            .map(|(n, of)| PITCH_MM * (n as f64 - (of as f64 - 1.0) / 2.0));
        Piece::square(&k.to_string(), colour.clone(), at, 20.0).with_texture(Texture::FLAT)
    });
    Scene {
        pieces: pieces.collect(),
        chart: None,
        background: Background::plain(Reflectance::flat(0.04)),
        viewpoint: Viewpoint {
            tilt_deg: 3.0 * seed as f64,
            turn_deg: 61.0 * seed as f64,
            fill: 0.6,
            ..Viewpoint::default()
        },
        seed,
        ..Scene::default()
    }
}

/// The patches of a chart that nobody sells: dyed colours, and greys in the last row.
fn patches_of(columns: usize, rows: usize) -> Vec<Reflectance> {
    let coloured = columns * (rows - 1);
    let colour = |k: usize| {
        // Steps of the golden ratio never come back to the same place.
        let [peak, height, base] = [0.618, 0.755, 0.57].map(|step| (step * k as f64).fract());
        Reflectance::from_fn(move |nm| {
            let off = (nm - 400.0 - 300.0 * peak) / 55.0;
            0.04 + 0.25 * base * base + (0.2 + 0.5 * height) * (-0.5 * off * off).exp()
        })
    };
    let grey = |k: usize| Reflectance::flat(0.9 * 0.03_f64.powf(k as f64 / (columns - 1) as f64));
    let colours = (0..coloured).map(colour);
    colours.chain((0..columns).map(grey)).collect()
}

/// A table of the patches' Lab, row by row.
fn table(columns: usize, colours: &[Reflectance]) -> String {
    let mut text = format!("# rows {} columns {columns}\n", colours.len() / columns);
    text += "patch,L,a,b,view\n";
    for (k, colour) in colours.iter().enumerate() {
        let [l, a, b] = colour.lab_d65_10();
        text += &format!("p{k},{l},{a},{b},D65/10\n");
    }
    text
}

fn with(rendered: &Rendered, table: &str) -> Result<PhotoReading, Refusal> {
    let chart = ChartReference::from_text(table).expect("a table of Lab");
    let request = Request {
        chart,
        ..Request::default()
    };
    read(&rendered.jpeg, &request)
}

/// How far the corner found at the first patch is from the middle of that patch,
/// in sides of the patch; half a diagonal where all is right.
fn first_corner_off(rendered: &Rendered, reading: &PhotoReading) -> f64 {
    let patch = &rendered.truth.pieces[0].polygon;
    let middle = [0, 1].map(|d| patch.iter().map(|p| p[d]).sum::<f64>() / patch.len() as f64);
    let distance = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).hypot(a[1] - b[1]);
    let next = &rendered.truth.pieces[1].polygon;
    let beside = [0, 1].map(|d| next.iter().map(|p| p[d]).sum::<f64>() / next.len() as f64);
    distance(middle, reading.chart.corners[0]) / distance(middle, beside)
}

#[test]
fn charts_of_other_sizes_are_found_by_their_values() {
    for (seed, columns, rows) in [(1, 5, 4), (2, 7, 5), (3, 6, 6), (4, 14, 10)] {
        let colours = patches_of(columns, rows);
        let rendered = render(&chart_of(seed, columns, &colours));
        let reading = with(&rendered, &table(columns, &colours))
            .unwrap_or_else(|why| panic!("{columns} x {rows}: {why}"));
        let off = first_corner_off(&rendered, &reading);
        assert!((0.5..0.8).contains(&off), "{columns} x {rows}: {off}");
    }
}

#[test]
fn rows_the_other_way_are_read_with_their_own_values_only() {
    let mut spectra = chart_spectra();
    spectra[..6].reverse();
    spectra[12..18].reverse();
    let rendered = render(&chart_of(5, 6, &spectra));
    let usual = read(&rendered.jpeg, &Request::default()).expect_err("other values");
    assert_eq!(usual.code.as_str(), "poor_fit", "{usual}");
    let own = with(&rendered, &table(6, &spectra)).expect("its own values");
    assert!(own.chart.loo_de00_median < 3.0);
}

#[test]
fn a_wedge_of_greys_asks_for_its_corners() {
    let greys: Vec<Reflectance> = (1..=12)
        .map(|k| Reflectance::flat(0.07 * f64::from(k)))
        .collect();
    let rendered = render(&chart_of(6, 4, &greys));
    let refusal = with(&rendered, &table(4, &greys)).expect_err("greys alone");
    assert!(refusal.message.contains("Give its corners"), "{refusal}");
}
