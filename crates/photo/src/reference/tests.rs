use super::*;
use colour::difference::ciede2000;

/// A table with the published patches' Lab in a view.
fn as_lab(view: View) -> String {
    let mut text = String::from("patch,L,a,b,view\n");
    for (i, xyz) in ChartReference::published().xyz(view).iter().enumerate() {
        let lab = xyz.to_lab(view.white());
        text += &format!("p{i},{},{},{},{view}\n", lab.l, lab.a, lab.b);
    }
    text
}

#[test]
fn the_published_white_is_white_and_the_black_is_black() {
    let chart = ChartReference::published();
    let xyz = chart.xyz(View::D65_10);
    assert_eq!((xyz.len(), chart.rows(), chart.columns()), (24, 4, 6));
    assert!(xyz[18].y > 85.0 && xyz[23].y < 4.0);
    assert_eq!(chart.neutrals(), [23, 22, 21, 20, 19, 18]);
    assert_eq!(chart.known_as(), KnownAs::Spectra);
    assert_eq!(chart.estimate_sd(View::A_10), None);
}

#[test]
fn lab_of_the_same_view_comes_back() {
    let view = View::D65_10;
    let own = ChartReference::from_text(&as_lab(view)).unwrap();
    let published = ChartReference::published().xyz(view);
    for (a, b) in own.xyz(view).iter().zip(&published) {
        assert!((a.y - b.y).abs() < 1e-6);
    }
    assert_eq!(own.known_as(), KnownAs::Lab(view));
    assert_eq!(own.estimate_sd(view), None);
    assert_eq!(own.neutrals().len(), 6);
}

#[test]
fn lab_of_another_view_is_an_estimate_and_says_how_good() {
    let own = ChartReference::from_text(&as_lab(View::D50_2)).unwrap();
    for (view, at_most) in [(View::D65_10, 0.6), (View::D65_2, 0.4), (View::A_10, 0.6)] {
        let white = view.white();
        let truth = ChartReference::published().xyz(view);
        let mut missed: Vec<f64> = own
            .xyz(view)
            .iter()
            .zip(&truth)
            .map(|(a, b)| ciede2000(a.to_lab(white), b.to_lab(white)))
            .collect();
        missed.sort_by(f64::total_cmp);
        let sd = own.estimate_sd(view).unwrap();
        println!(
            "D50/2 to {view}: median {:.2}, worst {:.2}, sd {sd:.2?}",
            missed[12], missed[23]
        );
        assert!(missed[12] < at_most, "{view}: {}", missed[12]);
        assert!(
            sd.iter().all(|sd| (0.02..4.0).contains(sd)),
            "{view}: {sd:?}"
        );
    }
}

#[test]
fn charts_of_other_layouts_are_taken_as_they_are_described() {
    let mut text = String::from(
        "CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n",
    );
    for row in 1..=5 {
        for column in 0..7 {
            let letter = char::from(b'A' + column);
            let (l, a) = (row * 15, if column == 6 { 2 } else { 40 });
            text += &format!("{letter}{row} {l} {a} 0\n");
        }
    }
    let own = ChartReference::from_text(&(text + "END_DATA\n")).unwrap();
    assert_eq!((own.rows(), own.columns()), (5, 7));
    // The last column is grey, darkest at the top.
    assert_eq!(own.neutrals(), [6, 13, 20, 27, 34]);
}

#[test]
fn tables_that_are_no_chart_are_named() {
    let fault = |text: &str| ChartReference::from_text(text).unwrap_err().to_string();
    assert!(fault("patch,L,a,b\none,1,2,3\n").contains("1 patches, and"));
    assert!(fault("# rows 1 columns 1\npatch,L,a,b\none,1,2,3\n").contains("from 2 to 64"));
    let rows = "x,1,2\n".repeat(24);
    assert!(fault(&format!("patch,u,v\n{rows}")).contains("no column"));
    let rows = "x,1,2,red\n".repeat(24);
    assert!(fault(&format!("patch,L,a,b\n{rows}")).contains("line 2, column \"b\": \"red\""));
    let rows = "x,1,2,3,D50/2\n".repeat(23);
    let mixed = fault(&format!("patch,L,a,b,view\n{rows}y,1,2,3,D65/10\n"));
    assert!(mixed.contains("\"y\" for D65/10"), "{mixed}");
}
