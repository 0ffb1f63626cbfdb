//! The person's own charts, and what is said of photos when they are added.

use crate::desk::{Desk, LATER, NOW, new_photo, sees};
use photo::Request;
use std::cell::Cell;
use store::NewPhoto;
use trial::ChartId;

/// A chart of 5 rows of 4 patches, as a table of Lab.
fn table() -> String {
    let mut text = String::from("# rows 5 columns 4\npatch,L,a,b,view\n");
    for k in 0..20 {
        text += &format!(
            "p{k},{},{},{},D65/10\n",
            20 + 3 * k,
            (7 * k) % 50,
            (11 * k) % 40
        );
    }
    text
}

#[test]
fn a_photo_is_read_by_the_chart_that_lies_on_it_after_a_restart_too() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let id = desk
        .bench
        .add_chart(" Big chart ", "big.csv", table().as_bytes(), NOW)
        .unwrap();
    let own = NewPhoto {
        chart: Some(id),
        ..new_photo(&trial, 0, "own")
    };
    let own = desk.bench.add_photo(own, NOW).unwrap();
    let usual = desk.photo(&trial, 0, "usual");
    for photo in [own, usual] {
        desk.mark(photo, [trial.pieces[0].id]);
    }
    let mut desk = desk.restart();
    let charts = desk.bench.charts().unwrap();
    assert_eq!(charts.len(), 1);
    assert_eq!((charts[0].name.as_str(), charts[0].id), ("Big chart", id));
    assert_eq!(desk.bench.photo(own).unwrap().unwrap().chart, Some(id));
    for size in [(5, 4), (4, 6)] {
        let seen = Cell::new((0, 0));
        let reader = |bytes: &[u8], request: &Request| {
            seen.set((request.chart.rows(), request.chart.columns()));
            sees(40.0)(bytes, request)
        };
        desk.bench.read_next_with(LATER, &reader).unwrap().unwrap();
        assert_eq!(seen.get(), size);
    }
}

#[test]
fn a_file_that_gives_no_chart_is_refused_in_a_sentence() {
    let mut desk = Desk::new();
    let small = "# rows 2 columns 2\npatch,L,a,b\na,10,0,0\nb,20,0,0\nc,30,0,0\nd,40,0,0\n";
    for (name, content, field) in [
        ("chart", &b""[..], "chart"),
        ("chart", b"a shopping list: alum, soda, string", "chart"),
        ("chart", b"\xff\xd8\xff\xe0\0\x10JFIF\0", "chart"),
        ("chart", b"patch,L,a,b\np1,50,0,0\np2,much,0,0\n", "chart"),
        ("chart", small.as_bytes(), "chart"),
        ("  ", table().as_bytes(), "name"),
    ] {
        let error = desk.bench.add_chart(name, "values.csv", content, NOW);
        let error = error.unwrap_err();
        let store::StoreError::Input { field: at, message } = &error else {
            panic!("{error}");
        };
        assert_eq!(*at, field, "{message}");
        assert!(message.ends_with('.') && message.len() > 30, "{message}");
        if field == "chart" {
            assert!(
                message.starts_with("values.csv gives no chart: "),
                "{message}"
            );
        }
    }
    assert!(desk.bench.charts().unwrap().is_empty());

    let table = table();
    desk.bench
        .add_chart("one", "1.csv", table.as_bytes(), NOW)
        .unwrap();
    let twice = desk.bench.add_chart("One", "2.csv", table.as_bytes(), NOW);
    assert!(twice.unwrap_err().to_string().contains("another name"));
}

#[test]
fn a_photo_of_a_chart_that_is_not_there_is_not_added() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let new = NewPhoto {
        chart: Some(ChartId(9)),
        ..new_photo(&trial, 0, "a")
    };
    assert_eq!(
        desk.bench.add_photo(new, NOW).unwrap_err().code(),
        "unknown"
    );
    assert!(desk.vault().is_empty());
}

#[test]
fn what_was_said_of_a_photo_is_still_said_after_a_restart() {
    let mut desk = Desk::new();
    let trial = desk.trial();
    let notices = [
        "The tag in window 6 is of another trial.",
        "Two of four codes were read.",
    ]
    .map(String::from);
    let new = NewPhoto {
        notices: &notices,
        ..new_photo(&trial, 0, "a")
    };
    let told = desk.bench.add_photo(new, NOW).unwrap();
    let silent = desk.photo(&trial, 0, "b");
    let desk = desk.restart();
    assert_eq!(desk.bench.notices(told).unwrap(), notices);
    assert!(desk.bench.notices(silent).unwrap().is_empty());
}
