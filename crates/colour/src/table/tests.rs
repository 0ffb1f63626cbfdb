use super::*;
use proptest::prelude::*;

fn labs(text: &str) -> Vec<(String, [f64; 3], View)> {
    let table = read(text, View::D50_2).unwrap_or_else(|e| panic!("{e}\n{text}"));
    let of = |sample: &Sample| match &sample.value {
        Value::Lab { lab, view } => (sample.name.clone(), lab.to_array(), *view),
        Value::Spectrum(_) => panic!("a spectrum"),
    };
    table.samples.iter().map(of).collect()
}

fn spectra(text: &str) -> Vec<(String, Spectrum)> {
    let table = read(text, View::D50_2).unwrap_or_else(|e| panic!("{e}\n{text}"));
    let of = |sample: &Sample| match &sample.value {
        Value::Spectrum(spectrum) => (sample.name.clone(), spectrum.clone()),
        Value::Lab { .. } => panic!("no spectrum"),
    };
    table.samples.iter().map(of).collect()
}

fn fault(text: &str) -> String {
    read(text, View::D50_2).unwrap_err().to_string()
}

const WHOLE: &str = "CGATS.17\nORIGINATOR \"somebody\"\nINSTRUMENTATION \"a bench instrument\"\n\
    KEYWORD \"MY_OWN\"\nMY_OWN \"whatever\"\nILLUMINATION_NAME \"D65\"\nOBSERVER_ANGLE \"10\"\n\
    NUMBER_OF_FIELDS 5\nBEGIN_DATA_FORMAT\nSAMPLE_ID SAMPLE_NAME LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n\
    NUMBER_OF_SETS 2\nBEGIN_DATA\n1 \"pale piece\" 71.5 10.25 -3 # by day\n2 P2 41,2 20,1 5\nEND_DATA\n";

#[test]
fn cgats_is_read_with_its_keywords() {
    let want = vec![
        ("pale piece".to_owned(), [71.5, 10.25, -3.0], View::D65_10),
        ("P2".to_owned(), [41.2, 20.1, 5.0], View::D65_10),
    ];
    assert_eq!(labs(WHOLE), want);
    let table = read(WHOLE, View::D50_2).unwrap();
    assert_eq!(table.instrument.as_deref(), Some("a bench instrument"));
    assert_eq!(table.notes, Vec::<String>::new());
    assert_eq!(table.samples[1].line, 15);
    // The same with other line ends, a byte-order mark, other cases, no counts.
    for text in [
        WHOLE.replace('\n', "\r\n"),
        WHOLE.replace('\n', "\r"),
        format!("\u{feff}{WHOLE}"),
        WHOLE
            .replace("LAB_A", "lab_a")
            .replace("BEGIN_DATA_FORMAT", "Begin_Data_Format"),
        WHOLE
            .replace("NUMBER_OF_FIELDS 5\n", "")
            .replace("NUMBER_OF_SETS 2\n", ""),
        WHOLE.replace("LAB_L LAB_A", "LAB_L\n\nLAB_A"),
        WHOLE.replace("41,2 20,1 5\n", "41,2\n20,1 5\n"),
        WHOLE.replace("2 P2 41,2 20,1 5", "2\tP2\t41,2\t20,1\t5"),
    ] {
        assert_eq!(labs(&text), want, "{text}");
    }
}

#[test]
fn of_several_cgats_tables_the_spectra_are_taken() {
    let names: Vec<String> = (0..31)
        .map(|i| format!("SPECTRAL_NM{}", 400 + 10 * i))
        .collect();
    let values = vec!["0.5"; 31].join("\t");
    let text = format!(
        "{WHOLE}\nBEGIN_DATA_FORMAT\nSAMPLE_ID\t{}\nEND_DATA_FORMAT\nBEGIN_DATA\na b\t{values}\nEND_DATA\n",
        names.join("\t")
    );
    let found = spectra(&text);
    assert_eq!((found.len(), found[0].0.as_str()), (1, "a b"));
    let notes = read(&text, View::D50_2).unwrap().notes;
    assert!(notes[0].contains("2 tables"), "{notes:?}");
}

#[test]
fn csv_is_read_in_every_dress() {
    let want = vec![
        ("P1".to_owned(), [41.2, 20.1, 5.0], View::D65_10),
        ("P2".to_owned(), [42.0, -19.5, 4.0], View::D65_10),
    ];
    for text in [
        "name,L,a,b,view\nP1,41.2,20.1,5,D65/10\nP2,42,-19.5,4,D65/10\n",
        "\u{feff}piece;l;A;B;view\r\nP1;41,2;20,1;5,0;D65/10\r\nP2;42;-19,5;4;D65/10\r\n\r\n",
        "Sample\tL*(10°/D65)\ta*(10°/D65)\tb*(10°/D65)\nP1\t41.2\t20.1\t5\nP2\t42\t\u{2212}19.5\t4\n",
        "# view D65/10\nb,a,L,code\n5,20.1,41.2,P1\n4,-19.5,42,P2\n",
        "Instrument,something\nIlluminant,D65\nObserver,10\n\nID,CIE L*,CIE a*,CIE b*,remark\nP1,41.2,20.1,5,\nP2,42,-19.5,4,fine\n",
        "name,L,a,b,illuminant,observer\nP1,41.2,20.1,5,D65,10\nP2,42,-19.5,4,D65,10\n",
        "piece,\"L\",\"a\",\"b\",view\nP1,\"41,2\",\"20,1\",5,D65/10\nP2,42,\"-19,5\",4,D65/10\n",
        "#;L;a;b;view\nP1;41.2;20.1;5;D65/10\nP2;42;-19.5;4;D65/10\n",
    ] {
        assert_eq!(labs(text), want, "{text}");
    }
}

#[test]
fn what_is_not_said_is_taken_and_noted() {
    let text = "name,L,a,b\nP1,41.2,20.1,5\n";
    assert_eq!(labs(text)[0].2, View::D50_2);
    let notes = read(text, View::D50_2).unwrap().notes;
    assert!(notes[0].contains("D50/2"), "{notes:?}");
}

#[test]
fn of_several_lights_daylight_with_ten_degrees_is_taken() {
    let text =
        "id,L*(10°/A),a*(10°/A),b*(10°/A),L*(10°/D65),a*(10°/D65),b*(10°/D65)\nx1,1,2,3,4,5,6\n";
    assert_eq!(
        labs(text),
        [("x1".to_owned(), [4.0, 5.0, 6.0], View::D65_10)]
    );
}

#[test]
fn tristimulus_values_become_lab() {
    let white = View::D50_2.white();
    for scale in [1.0, 0.01] {
        let [x, y, z] = white.to_array().map(|v| v * scale);
        let found = labs(&format!("SAMPLE_ID,XYZ_X,XYZ_Y,XYZ_Z\nw,{x},{y},{z}\n"));
        assert!(
            (found[0].1[0] - 100.0).abs() < 1e-9 && found[0].1[1].abs() < 1e-9,
            "{found:?}"
        );
    }
}

#[test]
fn spectra_come_in_shares_or_percent_by_rows_or_columns() {
    let by = |unit: f64| {
        let names: Vec<String> = (0..31)
            .rev()
            .map(|i| format!("{} nm", 400 + 10 * i))
            .collect();
        let values: Vec<String> = (0..31)
            .rev()
            .map(|i| (unit * (0.1 + 0.01 * f64::from(i))).to_string())
            .collect();
        format!("patch,{},360\nred,{},\n", names.join(","), values.join(","))
    };
    let (share, percent) = (spectra(&by(1.0)), spectra(&by(100.0)));
    assert_eq!(share[0].1.start_nm(), 400.0);
    for (a, b) in share[0].1.values().iter().zip(percent[0].1.values()) {
        assert!((a - b).abs() < 1e-12);
    }
    let mut tall = String::from("Wavelength;red;blue\n");
    for i in 0..31 {
        tall += &format!(
            "{};{};0,2\n",
            400 + 10 * i,
            format!("{:.2}", 0.1 + 0.01 * f64::from(i)).replace('.', ",")
        );
    }
    let found = spectra(&tall);
    assert_eq!(
        found
            .iter()
            .map(|(name, _)| name.as_str())
            .collect::<Vec<_>>(),
        ["red", "blue"]
    );
    for (a, b) in share[0].1.values().iter().zip(found[0].1.values()) {
        assert!((a - b).abs() < 1e-12);
    }
}

#[test]
fn dark_samples_in_percent_need_a_word() {
    let names: Vec<String> = (0..16).map(|i| (400 + 20 * i).to_string()).collect();
    let row = |value: &str| format!("{}\n", vec![value; 16].join(","));
    let text = format!("{}\n{}", names.join(","), row("1.5"));
    assert!(read(&text, View::D50_2).unwrap().notes[0].contains("unit percent"));
    let found = spectra(&format!("# unit percent\n{text}"));
    assert_eq!(found[0].1.values()[0], 0.015);
    let found = spectra(&format!("{}\n{}", names.join(","), row("-0.004")));
    assert_eq!(found[0].1.values()[0], 0.0);
}

#[test]
fn faults_name_line_and_column() {
    let wavelengths = |step: u32, count: u32| {
        let names: Vec<String> = (0..count).map(|i| (400 + step * i).to_string()).collect();
        format!(
            "name,{}\np{}\n",
            names.join(","),
            ",0.5".repeat(count as usize)
        )
    };
    for (text, parts) in [
        (" \n", vec!["empty"]),
        ("name,u,v\nx,1,2\n", vec!["no column", "L, a and b"]),
        ("name,L,a,b\n", vec!["line 1", "no samples"]),
        (
            "name,L,a,b\n\np,1,red,3\n",
            vec!["line 3", "\"a\"", "\"red\""],
        ),
        (
            "name,L,a,b\np,1,nan,3\n",
            vec!["line 2", "\"a\"", "\"nan\""],
        ),
        ("name,L,a,b\np,1,2\n", vec!["line 2", "\"b\"", "nothing"]),
        ("name,L,a,a,b\np,1,2,3,4\n", vec!["line 1", "twice"]),
        ("name,L,a,b\np,800,2,3\n", vec!["line 2", "\"p\"", "800"]),
        (
            "name,L,a,b,view\np,8,2,3,D75/10\n",
            vec!["line 2", "D75/10"],
        ),
        (
            "# view moonlight\nname,L,a,b,view\np,8,2,3,moon\n",
            vec!["line 3", "moon"],
        ),
        (&wavelengths(10, 25), vec!["line 2", "\"p\"", "640"]),
        (&wavelengths(30, 11), vec!["line 1", "30 nm"]),
        (
            &wavelengths(10, 31).replace("450", "455"),
            vec!["line 1", "440 to 455"],
        ),
        (
            &wavelengths(10, 31).replace("450", "440"),
            vec!["line 1", "\"440\"", "twice"],
        ),
        (
            &wavelengths(10, 31).replacen("0.5", "-3", 1),
            vec!["line 2", "400 nm"],
        ),
        (
            "BEGIN_DATA\n1 2 3\nEND_DATA\n",
            vec!["line 1", "BEGIN_DATA_FORMAT"],
        ),
        (
            &WHOLE.replace("20,1 5", "20,1"),
            vec!["line 15", "4 values", "5 columns"],
        ),
        (
            &WHOLE.replace("20,1 5", "20,1 5 6"),
            vec!["line 15", "6 values"],
        ),
        (
            &WHOLE.replace("2 P2 41,2 20,1 5\nEND_DATA\n", ""),
            vec!["1 of 2"],
        ),
        (
            &WHOLE.replace("41,2", "4l,2"),
            vec!["line 15", "\"LAB_L\"", "\"4l,2\""],
        ),
        (&WHOLE.replace("\"D65\"", "\"D75\""), vec!["line 6", "D75"]),
    ] {
        let message = fault(text);
        for part in parts {
            assert!(
                message.contains(part),
                "{message} should name {part}; {text}"
            );
        }
    }
    let long = "x".repeat(MOST_BYTES + 1);
    assert_eq!(read(&long, View::D50_2), Err(TableError::TooLarge));
    let many = format!("L,a,b\n{}", "1,2,3\n".repeat(MOST_SAMPLES + 1));
    assert_eq!(read(&many, View::D50_2), Err(TableError::TooMany));
}

#[test]
fn charts_are_laid_out_by_columns_words_names_or_number() {
    let laid = |text: &str| {
        let table = read(text, View::D50_2).unwrap();
        let (layout, samples) = table.laid_out().map_err(|e| e.to_string())?;
        let names = samples
            .iter()
            .map(|s| s.name.as_str())
            .collect::<Vec<_>>()
            .join(" ");
        Ok::<_, String>((layout.rows, layout.columns, names))
    };
    let rows = |names: &[&str]| {
        names
            .iter()
            .map(|n| format!("{n},50,0,0\n"))
            .collect::<String>()
    };
    let six = ["A1", "A2", "B1", "B2", "C1", "C2"];
    let text = |above: &str| format!("{above}name,L,a,b\n{}", rows(&six));
    // Three letters and two numbers: lying on the long side, letters are columns.
    assert_eq!(laid(&text("")).unwrap(), (2, 3, "A1 B1 C1 A2 B2 C2".into()));
    assert_eq!(
        laid(&text("# rows 3 columns 2\n")).unwrap(),
        (3, 2, six.join(" "))
    );
    assert_eq!(
        laid(&text("# columns: 2\n")).unwrap(),
        (3, 2, six.join(" "))
    );
    assert_eq!(
        laid(&text("# rows 2 columns 3\n")).unwrap(),
        (2, 3, "A1 B1 C1 A2 B2 C2".into())
    );
    assert!(
        laid(&text("# rows 4 columns 6\n"))
            .unwrap_err()
            .contains("holds 6 samples")
    );
    assert!(
        laid(&text("# rows 4\n"))
            .unwrap_err()
            .contains("whole rows")
    );
    assert_eq!(
        laid(&format!("name,L,a,b\n{}", rows(&["x"; 24])))
            .unwrap()
            .0,
        4
    );
    assert!(
        laid(&format!("name,L,a,b\n{}", rows(&["x"; 25])))
            .unwrap_err()
            .contains("25 patches")
    );
    let placed = "name,row,column,L,a,b\np,2,1,1,0,0\nq,1,1,2,0,0\n";
    assert_eq!(laid(placed).unwrap(), (2, 1, "q p".into()));
    assert!(
        laid("name,row,column,L,a,b\np,2,1,1,0,0\nq,2,1,2,0,0\n")
            .unwrap_err()
            .contains("same row and column")
    );
    assert!(
        laid("name,row,column,L,a,b\np,3,1,1,0,0\nq,1,1,2,0,0\n")
            .unwrap_err()
            .contains("without a patch")
    );
    assert!(
        fault("name,row,column,L,a,b\np,0,1,1,0,0\n").contains("count rows and columns from 1")
    );
}

#[test]
fn text_is_found_in_the_usual_encodings() {
    let wide: Vec<u8> = [0xff, 0xfe]
        .into_iter()
        .chain("L\ta°".encode_utf16().flat_map(u16::to_le_bytes))
        .collect();
    assert_eq!(text(&wide).unwrap(), "L\ta°");
    assert_eq!(text(b"L;a\xb0").unwrap(), "L;a°");
    assert_eq!(text("L;a°".as_bytes()).unwrap(), "L;a°");
    assert_eq!(text(b"\x89PNG\0\0"), Err(TableError::NotText));
    assert_eq!(text(&[0xff, 0xfe, 0x41]), Err(TableError::NotText));
}

/// Pieces that a table is made of, in any order.
fn scraps() -> impl Strategy<Value = String> {
    let scrap = prop::sample::select(vec![
        "BEGIN_DATA",
        "END_DATA",
        "BEGIN_DATA_FORMAT",
        "END_DATA_FORMAT",
        "NUMBER_OF_SETS",
        "LAB_L",
        "LAB_A",
        "LAB_B",
        "L",
        "a",
        "b",
        "X",
        "Y",
        "Z",
        "400",
        "nm410",
        "SPECTRAL_NM_420",
        "430",
        "440",
        "450",
        "460",
        "D65/10",
        "view",
        "row",
        "column",
        "#",
        "\"",
        "\n",
        "\r\n",
        "\n",
        "\t",
        ";",
        ",",
        " ",
        "0,5",
        "1e999",
        "-0.001",
        "99999999999999999999",
        "rows 4",
        "ROWS",
        "°",
        "é",
        "A1",
        "\u{feff}",
    ]);
    prop::collection::vec(scrap, 0..80).prop_map(|scraps| scraps.concat())
}

proptest! {
    #[test]
    fn no_text_breaks_the_reader(text in ".{0,400}") {
        if let Ok(table) = read(&text, View::D50_2) { let _ = table.laid_out(); }
    }

    #[test]
    fn no_jumble_of_scraps_breaks_the_reader(text in scraps()) {
        if let Ok(table) = read(&text, View::D50_2) { let _ = table.laid_out(); }
    }

    #[test]
    fn no_bytes_break_the_decoder(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        if let Ok(text) = text(&bytes) { let _ = read(&text, View::D50_2); }
    }

    #[test]
    fn a_damaged_file_is_read_or_refused(at in 0..WHOLE.len(), put in ".{0,3}") {
        if WHOLE.is_char_boundary(at) {
            let _ = read(&format!("{}{put}{}", &WHOLE[..at], &WHOLE[at..]), View::D50_2);
            let _ = read(&WHOLE[..at], View::D50_2);
        }
    }
}
