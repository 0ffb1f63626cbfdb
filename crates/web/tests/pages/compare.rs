//! Side by side: two of anything that was read, chosen by a form or an address.

use crate::desk::Desk;
use axum::http::StatusCode;
use colour::{View, table};
use store::Delivery;
use trial::{Trial, matched};

/// A trial of which every piece was read at two stages.
async fn read(desk: &Desk) -> Trial {
    let trial = desk.trial();
    let mut bench = desk.bench.lock().unwrap();
    for (stage, lighter) in [(0, 0.0), (5, 3.4)] {
        let rows = trial.pieces.iter().enumerate();
        let rows = rows.map(|(i, p)| format!("{},{},20,5", p.code, 41.0 + i as f64 + lighter));
        let text = format!("piece,L,a,b\n{}\n", rows.collect::<Vec<_>>().join("\n"));
        let found = matched(&trial, &table::read(&text, View::D65_10).unwrap(), 0.3).unwrap();
        let delivery = Delivery {
            stage,
            file_name: "",
            content: text.as_bytes(),
            by: "",
            on: "",
            instrument: "",
            readings: &found.readings,
        };
        bench
            .add_readings(trial.id, &delivery, "2030-01-01T00:00:00Z")
            .unwrap();
    }
    drop(bench);
    trial
}

#[tokio::test]
async fn two_stages_of_a_piece_show_their_difference_and_every_grade() {
    let desk = Desk::new().await;
    let trial = read(&desk).await;
    let address = format!("/trials/{}/compare", trial.slug);
    let shown = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(shown.text.contains(&address));
    let piece = trial.pieces[0].id;
    let page = desk
        .get(&format!("{address}?a={piece}-0&b={piece}-5"))
        .await;
    assert_eq!(page.status, StatusCode::OK);
    // A lightness step of 3.4 is grade 3 (ISO 105-A02, published).
    for expected in [
        "A1, before the first round and A1, after 5 rounds",
        "<dd>3 (3.00)</dd>",
        "lighter by 3.4",
        "lab(41.00 20.00 5.00)",
        "lab(44.40 20.00 5.00)",
        "these two",
        "Grade 1</strong>",
    ] {
        assert!(page.text.contains(expected), "{expected}: {}", page.text);
    }
    let gap = desk
        .get(&format!("{address}?a={piece}-0&b={piece}-5&gap=small"))
        .await;
    assert!(gap.text.contains("width=\"38\"") && !page.text.contains("width=\"38\""));
    let usual = desk.get(&address).await;
    assert!(usual.text.contains("after 5 rounds"));
}

#[tokio::test]
async fn what_was_never_read_is_said_and_nothing_breaks() {
    let desk = Desk::new().await;
    let empty = desk.trial();
    let page = desk.get(&format!("/trials/{}/compare", empty.slug)).await;
    assert!(page.text.contains("Nothing has been read yet"));
    let trial = read(&desk).await;
    let address = format!("/trials/{}/compare", trial.slug);
    for odd in [
        "a=99-0",
        "a=x",
        "b=-1--5",
        "a=1-99999999999",
        "a=%22%3E%3Cscript%3E",
    ] {
        let page = desk.get(&format!("{address}?{odd}")).await;
        assert_eq!(page.status, StatusCode::OK, "{odd}");
        assert!(page.text.contains("Nothing was read of what"), "{odd}");
        assert!(!page.text.contains("<script>"), "{odd}");
    }
    let nowhere = desk.get("/trials/nowhere/compare").await;
    assert_eq!(nowhere.status, StatusCode::NOT_FOUND);
}
