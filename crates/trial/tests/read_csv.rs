//! Tables as people save them, sound and spoilt.

use proptest::prelude::*;
use trial::{
    Role,
    decide::{DecideError, decide, read_csv},
};

const HEADER: &str = "arm,piece,role,load,stage,L,a,b\n";

fn message(table: &str) -> String {
    match read_csv(table.as_bytes()).and_then(|rows| decide(&rows, 1.0)) {
        Ok(_) => panic!("this was taken: {table}"),
        Err(error) => error.to_string(),
    }
}

#[test]
fn marks_separators_line_ends_order_and_case_are_taken() {
    let tables = [
        "\u{feff}arm,piece,role,load,stage,L,a,b\r\nsoak,S1,Test,,0,40.5,20,-5\r\n\r\n".to_owned(),
        "Arm;Piece;Role;Load;Stage;L;A;B\nsoak;S1;test;;0;40,5;20,0;-5\n".to_owned(),
        "b\ta\tL\tstage\tload\trole\tpiece\tarm\tnote\n-5\t20\t40.5\t0\t\ttest\tS1\tsoak\tdry\n"
            .to_owned(),
        format!("{HEADER} soak , S1 ,test, ,0, 40.5 ,20,-5"),
    ];
    for table in tables {
        let rows = read_csv(table.as_bytes()).unwrap();
        assert_eq!(rows.len(), 1, "{table}");
        assert_eq!(rows[0].arm, "soak");
        assert_eq!(rows[0].role, Role::Test);
        assert_eq!(rows[0].load, None);
        assert_eq!(rows[0].lab.to_array(), [40.5, 20.0, -5.0]);
    }
}

#[test]
fn what_is_wrong_is_said_with_its_row() {
    let good = "soak,S1,test,,0,40,20,5\n";
    let cases = [
        ("", "empty"),
        ("\n\n", "empty"),
        (HEADER, "empty"),
        ("arm,piece,role,load,stage,L,a\n", "column \"b\""),
        ("arm,piece,role,load,stage,L,a,b,L\n", "\"L\" twice"),
        (
            "arm,piece,role,load,stage,L,a,b\nsoak,S1,keeper,,0,40,20,5\n",
            "role test",
        ),
    ];
    for (table, expected) in cases {
        let found = message(table);
        assert!(found.contains(expected), "{table:?}: {found}");
    }
    let rows = [
        ("soak,S2,test,,0,forty,20,5", "L is \"forty\""),
        ("soak,S2,test,,0,\"40,5\",20,5", "L is \"40,5\""),
        ("soak,S2,test,,0,NaN,20,5", "L is \"NaN\""),
        ("soak,S2,test,,0,40,inf,5", "a is \"inf\""),
        ("soak,S2,test,,0,40,20", "b is \"\""),
        ("soak,S2,test,,0,140,20,5", "between 0 and 100"),
        ("soak,S2,test,,0,40,1e9,5", "between -200 and 200"),
        ("soak,S2,spare,,0,40,20,5", "role \"spare\""),
        ("soak,S2,test,,1.5,40,20,5", "stage is \"1.5\""),
        ("soak,S2,test,,-1,40,20,5", "stage is \"-1\""),
        (",S2,test,,0,40,20,5", "arm is empty"),
        ("soak,,test,,0,40,20,5", "piece is empty"),
        (
            "plain,S1,test,,5,40,20,5",
            "in arm \"plain\" here and in arm \"soak\" in row 1",
        ),
        (
            "soak,S1,keeper,,5,40,20,5",
            "keeper here and a test in row 1",
        ),
    ];
    for (row, expected) in rows {
        let found = message(&format!("{HEADER}{good}{row}\n"));
        assert!(found.starts_with("Row 2 below"), "{row}: {found}");
        assert!(found.contains(expected), "{row}: {found}");
    }
}

#[test]
fn a_margin_must_lie_above_zero() {
    let rows = read_csv(format!("{HEADER}soak,S1,test,,0,40,20,5\n").as_bytes()).unwrap();
    for margin in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(matches!(decide(&rows, margin), Err(DecideError::Margin(_))));
    }
}

#[test]
fn washed_pieces_without_a_start_are_refused() {
    let found = message(&format!(
        "{HEADER}soak,S1,test,,5,40,20,5\nplain,P1,test,,5,40,20,5\n"
    ));
    assert!(found.contains("stage 0"), "{found}");
}

proptest! {
    #[test]
    fn no_text_whatever_brings_it_down(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let _ = read_csv(bytes.as_slice());
        let table = format!("{HEADER}{}", String::from_utf8_lossy(&bytes));
        if let Ok(rows) = read_csv(table.as_bytes()) {
            let _ = decide(&rows, 1.0);
        }
    }
}
