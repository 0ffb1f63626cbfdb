//! Where the dye of a run went: readings by form, corrections, and what is told about bad ones.

use crate::desk::Desk;
use axum::http::StatusCode;

const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");
const NOW: &str = "2030-01-01T00:00:00Z";

/// A run by the napkins' recipe; gives the address of its waters.
fn waters_of_run(desk: &Desk, trial: Option<&str>) -> String {
    let mut bench = desk.bench.lock().unwrap();
    let slug = bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
    let run = bench
        .begin_run(&slug, 1, trial, "Green <lot>", NOW)
        .unwrap();
    format!("/runs/{run}/rinse")
}

fn jar<'a>(water: &'a str, volume: &'a str, step: &'a str) -> Vec<(&'a str, &'a str)> {
    vec![
        ("do", "read"),
        ("water", water),
        ("volume", volume),
        ("looks_like", step),
    ]
}

async fn read(desk: &Desk, page: &str, water: &str, volume: &str, step: &str) {
    let answer = desk.post_form(page, &jar(water, volume, step)).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(answer.location(), format!("{page}#readings"));
}

#[tokio::test]
async fn jars_become_a_balance_on_the_page_in_data_and_in_the_report() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let page = waters_of_run(&desk, Some(&trial.slug));
    let empty = desk.get(&page).await.text;
    assert!(empty.contains("None yet. Begin with the spent bath"));
    assert!(empty.contains("3.25 g of dye in 5 L"));
    assert!(!empty.contains("The balance"));
    read(&desk, &page, "bath", "4.5 L", "1:5").await;
    read(&desk, &page, "rinse", "5 L", "1:20").await;
    read(&desk, &page, "rinse", "1 1/4 gallons", "1:80").await;
    let shown = desk.get(&page).await.text;
    for part in [
        "<h2 id=\"balance\">The balance</h2>",
        "Rinse 2</th>",
        "76 % (68 to 81 %)",
        "4.73 L",
        "usual for a warm reactive dye",
        "500 ml of the liquor is missing",
        "Where the dye went: spent bath 18 %",
        "Green &#60;lot&#62;",
        "<option value=\"rinse\" selected>rinse 3</option>",
    ] {
        assert!(shown.contains(part), "{part} is not in {shown}");
    }
    assert!(
        !shown.contains("<option value=\"bath\""),
        "there is one bath"
    );
    let data: serde_json::Value =
        serde_json::from_str(&desk.get(&format!("{page}.json")).await.text).unwrap();
    let middle = |what: &str| data["balance"][what]["middle"].as_f64().unwrap();
    assert!((middle("in_bath") + middle("washed_out") + middle("fixed") - 1.0).abs() < 1e-12);
    // A count by another share.
    let more = desk.get(&format!("{page}?clear=0.001")).await.text;
    assert!(more.contains("below 0.001 % of the dye"));
    let odd = desk.get(&format!("{page}?clear=none")).await;
    assert_eq!(odd.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(odd.text.contains("id=\"clear-problem\"") && odd.text.contains("value=\"none\""));
    // The trial's report has it too.
    let report = desk
        .get(&format!("/trials/{}/report", trial.slug))
        .await
        .text;
    assert!(report.contains("Where its dye went, Green &#60;lot&#62;"));
    assert!(report.contains("What is missing from the waters is on the goods"));
}

#[tokio::test]
async fn corrections_are_added_and_what_was_taken_back_is_told() {
    let desk = Desk::new().await;
    let page = waters_of_run(&desk, None);
    read(&desk, &page, "bath", "4.5 L", "1:5").await;
    read(&desk, &page, "rinse", "5 L", "1:2").await;
    let mut correction = jar("rinse", "5 L", "1:20");
    correction.push(("of", "2"));
    assert_eq!(
        desk.post_form(&page, &correction).await.status,
        StatusCode::SEE_OTHER
    );
    // Another reading of the bath corrects the first.
    read(&desk, &page, "bath", "4.4 L", "1:5").await;
    let shown = desk.get(&page).await.text;
    assert!(shown.contains("4.4 L, looks like 1:5 <span class=\"small\">(corrected)</span>"));
    assert!(shown.contains("rinse: 5 L, looks like 1:2</li>"));
    assert!(shown.contains("rinse: 5 L, looks like 1:20, instead of note 2</li>"));
    let back = [("do", "withdraw"), ("of", "2")];
    assert_eq!(
        desk.post_form(&page, &back).await.status,
        StatusCode::SEE_OTHER
    );
    let shown = desk.get(&page).await.text;
    assert!(shown.contains("taken back, instead of note 2") && !shown.contains("Rinse 1</strong>"));
    let again = desk.post_form(&page, &correction).await;
    assert_eq!(again.status, StatusCode::BAD_REQUEST);
    assert!(again.text.contains("taken back already"));
}

#[tokio::test]
async fn nonsense_is_said_at_its_field_and_nothing_typed_is_lost() {
    let desk = Desk::new().await;
    let page = waters_of_run(&desk, None);
    read(&desk, &page, "rinse", "5 L", "1:20").await;
    for (of, field, value, marked, part) in [
        ("", "volume", "-5 L", "volume", "below 0"),
        ("", "volume", "5", "volume", "unit"),
        ("", "volume", "", "volume", "number is missing"),
        ("", "looks_like", "2:1", "looks_like", "1:1 is undiluted"),
        ("", "looks_like", "", "looks_like", "Say how strong it is"),
        ("", "absorbance", "0.2", "looks_like", "in one way only"),
        ("", "absorbance", "dark", "absorbance", "is no absorbance"),
        ("", "dilution", "5", "dilution", "as in 1:50"),
        ("", "spread", "20", "spread", "in percent"),
        ("", "volume_spread", "ten", "volume_spread", "in percent"),
        ("1", "volume", "5 <b>", "volume-1", "unit"),
        ("1", "spread", "20", "spread-1", "in percent"),
    ] {
        let mut fields = jar("rinse", "7.5 L", "1:33");
        fields.push(("of", of));
        match fields.iter_mut().find(|(name, _)| *name == field) {
            Some(known) => known.1 = value,
            None => fields.push((field, value)),
        }
        let answer = desk.post_form(&page, &fields).await;
        assert_eq!(
            answer.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{field}: {value}"
        );
        let sentence = answer.problem(marked);
        assert!(sentence.contains(part), "{field}: {value}: {sentence}");
        if field != "volume" {
            assert!(answer.text.contains("value=\"7.5 L\""), "{field}");
        }
        assert!(!answer.text.contains("<b>"));
    }
    for (standards, part) in [
        ("1 mg/L = 0.1", "3 or more"),
        ("1 mg/L 0.1", "has no ="),
        ("1 = 0.1", "a unit is wanted"),
        ("1 mg/L = dark", "is no absorbance"),
        ("", "3 or more"),
    ] {
        let fields = [("do", "calibrate"), ("standards", standards)];
        let answer = desk.post_form(&page, &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        let sentence = answer.problem("standards");
        assert!(sentence.contains(part), "{standards}: {sentence}");
    }
    let good = "0 mg/L = 0.002\n5 mg/L = 0.106\n10 mg/L = 0.209\n";
    let fields = [("do", "calibrate"), ("standards", good)];
    assert_eq!(
        desk.post_form(&page, &fields).await.status,
        StatusCode::SEE_OTHER
    );
    let sample = |absorbance: &'static str| {
        [
            ("do", "read"),
            ("water", "bath"),
            ("volume", "5 L"),
            ("absorbance", absorbance),
            ("dilution", "1:10"),
        ]
    };
    let dark = desk.post_form(&page, &sample("0.9")).await;
    assert!(dark.text.contains("above that of the strongest standard"));
    let fine = desk.post_form(&page, &sample("0,19 0,21")).await;
    assert_eq!(fine.status, StatusCode::SEE_OTHER);
    let shown = desk.get(&page).await.text;
    assert!(shown.contains("absorbance 0.19; 0.21, sample diluted 1:10"));
    assert!(shown.contains("5 mg/L = 0.106"));
    for address in ["/runs/99/rinse", "/runs/99/rinse.json"] {
        assert_eq!(desk.get(address).await.status, StatusCode::NOT_FOUND);
    }
}
