//! The search page: words, colours, and what it says to odd ones.

use crate::desk::Desk;
use axum::http::StatusCode;

const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");
const NOW: &str = "2030-01-01T00:00:00Z";

#[tokio::test]
async fn words_lead_to_what_has_them() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let slug = {
        let mut bench = desk.bench.lock().unwrap();
        bench.keep_recipe(NAPKINS, "written", NOW).unwrap()
    };
    let found = desk.get("/search?q=onion").await.text;
    assert!(found.contains("1 find</h2>"));
    assert!(found.contains(&format!(
        "<a href=\"/trials/{}\"><mark>Onion</mark> &#38; alum</a>",
        trial.slug
    )));
    assert!(found.contains("Does alum &#60;b&#62;hold&#60;/b&#62; it?"));
    let found = desk.get("/search?q=soda+ash").await.text;
    assert!(found.contains(&format!("<a href=\"/recipes/{slug}\">green napkins</a>")));
    // In words as its page tells it, with the line that was looked for; not as the file has it.
    let told = "Warm reactive dye on cotton, 250 g of goods in 5 pieces";
    assert!(found.contains(&format!(
        "{told} · <mark>soda</mark> <mark>ash</mark>: 12 g/L</p>"
    )));
    let none = desk.get("/search?q=zebra").await.text;
    assert!(none.contains("Nothing has “zebra”") && none.contains("value=\"zebra\""));
    let odd = desk.get("/search?q=%3F%3F").await;
    assert_eq!(odd.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(odd.text.contains("id=\"q-problem\""));
    let data = desk.get("/search.json?q=onion").await.text;
    let data: serde_json::Value = serde_json::from_str(&data).unwrap();
    assert_eq!(data["found"][0]["kind"], "trial");
    assert_eq!(
        data["found"][0]["address"],
        format!("/trials/{}", trial.slug)
    );
}

#[tokio::test]
async fn colours_lead_to_readings() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let table = "piece;L;a;b\nA1;40;20;10\nA2;41;20;10\n";
    {
        let read = colour::table::read(table, colour::View::D65_10).unwrap();
        let found = trial::matched(&trial, &read, trial::USUAL_REPEATABILITY_DE).unwrap();
        let delivery = store::Delivery {
            stage: 2,
            file_name: "",
            content: table.as_bytes(),
            by: "a friend",
            on: "",
            instrument: "",
            readings: &found.readings,
        };
        let mut bench = desk.bench.lock().unwrap();
        assert_eq!(bench.add_readings(trial.id, &delivery, NOW).unwrap(), 2);
    }
    for address in [
        "/search?lab=40+20+10&view=D65/10",
        "/search?lab=40%3B+20%3B+10",
    ] {
        let near = desk.get(address).await.text;
        assert!(near.contains("Nearest to") && near.contains("L* 41.0 a* 20.0 b* 10.0"));
        let first = near.find("A1, plain").unwrap();
        assert!(first < near.find("A2, plain").unwrap(), "the nearest first");
        assert!(near.contains("after 2 rounds, by lab"));
    }
    // A screen's colour of about L* 40, a* 20, b* 10.
    let picked = desk.get("/search?hex=%237f5250").await.text;
    assert!(picked.contains("A1, plain") && picked.contains("value=\"#7f5250\""));
    let other = desk.get("/search?lab=40+20+10&view=A/10").await.text;
    assert!(other.contains("No reading for A/10 lies within 8"));
    for (address, field) in [
        ("/search?lab=40", "lab"),
        ("/search?lab=400+1+1", "lab"),
        ("/search?lab=40+20+10&view=candle", "view"),
        ("/search?hex=red", "hex"),
    ] {
        let odd = desk.get(address).await;
        assert_eq!(odd.status, StatusCode::UNPROCESSABLE_ENTITY, "{address}");
        assert!(
            odd.text.contains(&format!("id=\"{field}-problem\"")),
            "{address}"
        );
        let data = desk.get(&address.replace("search?", "search.json?")).await;
        assert_eq!(data.status, StatusCode::BAD_REQUEST, "{address}");
    }
    let data = desk.get("/search.json?lab=40+20+10").await.text;
    let data: serde_json::Value = serde_json::from_str(&data).unwrap();
    assert_eq!(data["near"][0]["piece"], "A1");
}
