//! Published and reference-library values: the CSVs of `reference/colour`.

#![allow(clippy::unwrap_used, reason = "a test may panic")]

use colour::{
    Lab, Spectrum, View,
    difference::{cie76, cie94_textile, ciede2000, cmc},
    grade, strength,
};

/// The rows of a reference file, by column name.
struct Table {
    names: Vec<String>,
    rows: Vec<csv::StringRecord>,
}

impl Table {
    fn read(name: &str) -> Self {
        let path = format!(
            "{}/../../reference/colour/{name}",
            env!("CARGO_MANIFEST_DIR")
        );
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .from_path(&path)
            .unwrap_or_else(|e| panic!("{path}: {e}"));
        let names = reader.headers().unwrap().iter().map(String::from).collect();
        let rows: Vec<_> = reader.records().map(|r| r.unwrap()).collect();
        assert!(!rows.is_empty(), "{name} has no rows");
        Self { names, rows }
    }

    fn text<'a>(&self, row: &'a csv::StringRecord, column: &str) -> &'a str {
        let at = self.names.iter().position(|n| n == column);
        row.get(at.unwrap_or_else(|| panic!("no column {column}")))
            .unwrap()
    }

    fn number(&self, row: &csv::StringRecord, column: &str) -> f64 {
        self.text(row, column).parse().unwrap()
    }

    fn lab(&self, row: &csv::StringRecord, columns: [&str; 3]) -> Lab {
        columns.map(|c| self.number(row, c)).into()
    }
}

fn close(id: &str, what: &str, ours: f64, theirs: f64, tolerance: f64) {
    assert!(
        (ours - theirs).abs() <= tolerance,
        "{id} {what}: ours {ours}, theirs {theirs}"
    );
}

/// Source: published, Sharma, Wu and Dalal 2005, table 1, four decimals.
#[test]
fn ciede2000_gives_the_34_published_pairs_both_ways() {
    let table = Table::read("ciede2000_sharma_34.csv");
    assert_eq!(table.rows.len(), 34);
    for row in &table.rows {
        let one = table.lab(row, ["L1", "a1", "b1"]);
        let two = table.lab(row, ["L2", "a2", "b2"]);
        let published = table.text(row, "dE00_published_4dp");
        let pair = table.text(row, "pair");
        assert_eq!(format!("{:.4}", ciede2000(one, two)), published, "{pair}");
        assert_eq!(format!("{:.4}", ciede2000(two, one)), published, "{pair}");
    }
}

/// Source: reference library, colour-science 0.4.7 (and an own computation
/// that agrees with it), ten decimals.
#[test]
fn differences_agree_with_the_reference_library() {
    let table = Table::read("check_colour_difference.csv");
    for row in &table.rows {
        let id = table.text(row, "id");
        let reference = table.lab(row, ["L_ref", "a_ref", "b_ref"]);
        let test = table.lab(row, ["L_test", "a_test", "b_test"]);
        let check = |column, ours| close(id, column, ours, table.number(row, column), 1e-6);
        check("dE76", cie76(reference, test));
        check("colour_dE94_textiles", cie94_textile(reference, test));
        check("colour_CMC_2_1", cmc(reference, test, 2.0, 1.0));
        check("dE_CMC_1_1", cmc(reference, test, 1.0, 1.0));
        check("colour_dE2000_111", ciede2000(reference, test));
    }
}

/// Source: ISO 105-A05 as computed by an independent implementation, each term.
#[test]
fn fade_agrees_term_by_term() {
    let table = Table::read("check_iso105_A05.csv");
    for row in &table.rows {
        let id = table.text(row, "id");
        let f = grade::fade(
            table.lab(row, ["L_ref", "a_ref", "b_ref"]),
            table.lab(row, ["L_test", "a_test", "b_test"]),
        );
        for (column, ours) in [
            ("dL", f.d_l),
            ("dC", f.d_c),
            ("dH", f.d_h),
            ("CM", f.mean_chroma),
            ("hM", f.mean_hue_deg),
            ("x", f.x),
            ("D", f.d),
            ("dCK", f.d_ck),
            ("dHK", f.d_hk),
            ("dCF", f.d_cf),
            ("dHF", f.d_hf),
            ("dEF", f.d_ef),
            ("GSc_raw", f.value),
            ("GSc_min1", f.value.max(1.0)),
        ] {
            close(id, column, ours, table.number(row, column), 1e-6);
        }
        assert_eq!(
            f.grade.to_string(),
            table.text(row, "reported_grade"),
            "{id}"
        );
    }
}

/// Source: ISO 105-A04 as computed by an independent implementation, each term;
/// rows S7 to S14 are the nominal steps of the ISO 105-A03 scale.
#[test]
fn staining_agrees_term_by_term() {
    let table = Table::read("check_iso105_A04.csv");
    for row in &table.rows {
        let id = table.text(row, "id");
        let s = grade::stain(
            table.lab(row, ["L_ref", "a_ref", "b_ref"]),
            table.lab(row, ["L_stained", "a_stained", "b_stained"]),
        );
        close(id, "dE76", s.d_e, table.number(row, "dE76"), 1e-6);
        close(id, "dL", s.d_l, table.number(row, "dL"), 1e-6);
        close(id, "dE_GS", s.d_e_gs, table.number(row, "dE_GS"), 1e-6);
        close(id, "SSR", s.value, table.number(row, "SSR"), 1e-6);
        assert_eq!(
            s.grade.to_string(),
            table.text(row, "reported_grade"),
            "{id}"
        );
    }
}

/// Source: reference library, colour-science 0.4.7 by ASTM E308; two routes of
/// computing differ by up to 0.0163 between them.
#[test]
fn spectra_give_the_reference_colours() {
    let spectra = Table::read("chart24_spectra_10nm.csv");
    let expected = Table::read("check_spectral_lab.csv");
    let mut worst: f64 = 0.0;
    for row in &expected.rows {
        let patch = expected.text(row, "patch");
        let condition = expected.text(row, "condition");
        let spectrum = spectra
            .rows
            .iter()
            .find(|r| spectra.text(r, "patch") == patch)
            .unwrap();
        let values = spectrum
            .iter()
            .skip(1)
            .map(|v| v.parse().unwrap())
            .collect();
        let view: View = condition.parse().unwrap();
        let ours = Spectrum::new(380.0, 10.0, values).unwrap().lab(view);
        let theirs = expected.lab(row, ["L_E308", "a_E308", "b_E308"]);
        let apart = cie76(ours, theirs);
        worst = worst.max(apart);
        assert!(apart < 0.05, "{patch} {condition}: {apart}");
    }
    println!(
        "largest difference over {} rows: {worst:.4}",
        expected.rows.len()
    );
}

/// Source: reference library, colour-science 0.4.7, same sum by 1 nm; it reads
/// illuminant A from a table by 5 nm, here it comes from its formula (whose
/// white is the 111.144, 35.200 of ASTM E308, from memory).
#[test]
fn white_points_agree() {
    let table = Table::read("check_white_points.csv");
    for row in &table.rows {
        let condition = table.text(row, "condition");
        let white = condition.parse::<View>().unwrap().white();
        for (column, ours) in [
            ("Xn_own1nm", white.x),
            ("Yn_own1nm", white.y),
            ("Zn_own1nm", white.z),
        ] {
            close(condition, column, ours, table.number(row, column), 0.01);
        }
    }
}

/// Source: published, the worked example of ASTM E308's 20 nm case in the
/// documentation of colour-science 0.4.7, eight decimals.
#[test]
fn a_spectrum_by_20_nm_gives_the_published_values() {
    let values = [
        0.0641, 0.0645, 0.0562, 0.0537, 0.0559, 0.0651, 0.0705, 0.0772, 0.0870, 0.1128, 0.1360,
        0.1511, 0.1688, 0.1996, 0.2397, 0.2852,
    ];
    let white = View::D65_2.white();
    let published = colour::Xyz::new(10.84019531, 9.68417402, 6.21589138).to_lab(white);
    let ours = Spectrum::new(400.0, 20.0, values.to_vec())
        .unwrap()
        .lab(View::D65_2);
    // As far apart as the two routes are by 10 nm.
    assert!(cie76(ours, published) < 0.02, "{ours:?} {published:?}");
}

/// Source: published formula, its values computed in NumPy.
#[test]
fn k_over_s_agrees_and_comes_back() {
    let table = Table::read("check_ks_table.csv");
    for row in &table.rows {
        let r = table.number(row, "R");
        let k_s = table.number(row, "K_over_S");
        close("R", &r.to_string(), strength::k_over_s(r), k_s, 5e-11);
        close("K/S", &k_s.to_string(), strength::reflectance(k_s), r, 1e-9);
    }
}

/// Source: published formula (sum of K/S, 400 to 700 nm by 10 nm), computed in NumPy.
#[test]
fn colour_strength_agrees() {
    let spectra = Table::read("check_km_two_colorant.csv");
    let of = |column: &str| {
        let values = spectra.rows.iter().map(|row| spectra.number(row, column));
        strength::of_spectrum(&Spectrum::new(400.0, 10.0, values.collect()).unwrap())
    };
    let bare = of("R_substrate");
    let table = Table::read("check_colour_strength.csv");
    for row in &table.rows {
        let (batch, standard) = match table.text(row, "pair") {
            "green_batch_vs_green" => ("R_green_batch_0.84Y_0.46B", "R_green_0.80Y_0.50B"),
            _ => ("R_blue_2pct", "R_blue_1pct"),
        };
        let (batch_sum, sum) = (of(batch), of(standard));
        let expected = table.number(row, "strength_sum_pct");
        close(batch, "sum", 100.0 * batch_sum / sum, expected, 2e-5);
        let expected = table.number(row, "strength_sum_substrate_subtracted_pct");
        let share = 100.0 * (batch_sum - bare) / (sum - bare);
        close(batch, "sum less cloth", share, expected, 2e-5);
    }
    // What stands in for the spectra: half of the blue dye, from Lab alone.
    let seen = |column: &str| {
        let values = spectra.rows.iter().map(|row| spectra.number(row, column));
        let spectrum = Spectrum::new(400.0, 10.0, values.collect()).unwrap();
        strength::of_lab(spectrum.lab(View::D65_10), View::D65_10)
    };
    let cloth = seen("R_substrate");
    let half = (seen("R_blue_1pct") - cloth) / (seen("R_blue_2pct") - cloth);
    close("blue", "half by three channels", half, 0.5, 0.05);
}
