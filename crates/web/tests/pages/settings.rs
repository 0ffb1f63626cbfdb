//! The page of settings, and what other pages make of what was chosen.
//!
//! The locale holds for the whole process, so these tests take turns.

#![allow(
    clippy::unwrap_used,
    reason = "a test that can't go on should stop where it stands"
)]

#[allow(dead_code, reason = "the other tests of pages use all of it")]
mod desk;

use axum::http::StatusCode;
use desk::Desk;
use dyeing::{run::What, run_sheet::StepKind};
use locale::Locale;
use store::NewEvent;
use tokio::sync::{Mutex, MutexGuard};

static TURN: Mutex<()> = Mutex::const_new(());

const NOW: &str = "2030-04-05T18:05:00Z";
const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");
const AMERICAN: [(&str, &str); 5] = [
    ("measures", "us_customary"),
    ("currency", "usd"),
    ("sums", "code_first"),
    ("dates", "month_named"),
    ("clock", "hours12"),
];

/// A desk at which nothing was chosen, and the turn to choose.
async fn desk() -> (Desk, MutexGuard<'static, ()>) {
    let turn = TURN.lock().await;
    locale::set(Locale::DATA);
    (Desk::new().await, turn)
}

async fn choose(desk: &Desk, fields: &[(&str, &str)]) {
    let answer = desk.post_form("/settings", fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert_eq!(answer.location(), "/settings?kept=1");
}

/// The choices with another value in one field.
fn with<'a>(field: &str, value: &'a str) -> Vec<(&'a str, &'a str)> {
    let change =
        |(name, was): (&'static str, &'static str)| (name, if name == field { value } else { was });
    AMERICAN.into_iter().map(change).collect()
}

#[tokio::test]
async fn every_choice_shows_what_it_writes() {
    let (desk, _turn) = desk().await;
    let page = desk.get("/settings").await.text;
    for part in [
        "250 g (8.82 oz), 60 °C (140 °F)",
        "8.82 oz (250 g), 140 °F (60 °C)",
        "8.50 EUR",
        "EUR 8.50",
        "<strong>2026-11-26</strong>",
        "26.11.2026",
        "26/11/2026",
        "11/26/2026",
        "26 Nov 2026",
        "Nov 26, 2026",
        "18:05",
        "6:05 pm",
        "<option value=\"EUR\">Euro</option>",
    ] {
        assert!(page.contains(part), "{part} is not in {page}");
    }
    assert_eq!(page.matches(" checked").count(), 4, "one of each group");
    assert!(!page.contains("JPY") && !page.contains("KWD"));
    for (address, link) in [
        ("/studio", "href=\"/settings\""),
        ("/", "href=\"/settings\""),
    ] {
        assert!(desk.get(address).await.text.contains(link), "{address}");
    }
}

#[tokio::test]
async fn what_is_chosen_is_kept_and_told() {
    let (desk, _turn) = desk().await;
    choose(&desk, &AMERICAN).await;
    let page = desk.get("/settings?kept=1").await.text;
    for part in [
        "role=\"status\"",
        "value=\"us_customary\" checked",
        "value=\"USD\"",
        "value=\"code_first\" checked",
        "value=\"month_named\" checked",
        "value=\"hours12\" checked",
        "USD 8.50 per 3.53 oz (100 g)",
        "Nov 26, 2026, 6:05 pm",
    ] {
        assert!(page.contains(part), "{part} is not in {page}");
    }
    let kept = desk.bench.lock().unwrap().locale().unwrap();
    assert_eq!(kept, locale::current());
    assert_eq!(kept.currency.unwrap().code(), "USD");
    let journal = desk.get("/journal").await.text;
    assert!(journal.contains("The settings were changed: ") && journal.contains("USD 8.50"));
    choose(&desk, &with("currency", "")).await;
    assert!(locale::current().currency.is_none());
}

#[tokio::test]
async fn nonsense_is_said_at_its_field_and_changes_nothing() {
    let (desk, _turn) = desk().await;
    for (field, value, part) in [
        ("currency", "JPY", "Sums in JPY have 0 decimals"),
        ("currency", "kwd", "Sums in KWD have 3 decimals"),
        ("currency", "XAU", "nobody pays with"),
        ("currency", "ABC", "no currency ABC"),
        ("currency", "$", "is no currency"),
        ("currency", "<b>EUR</b>", "is no currency"),
        ("measures", "cubits", "none of the choices"),
        ("measures", "", "none of the choices"),
        ("sums", "sideways", "none of the choices"),
        ("dates", "ISO", "none of the choices"),
        ("clock", "sundial", "none of the choices"),
    ] {
        let answer = desk.post_form("/settings", &with(field, value)).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{value}");
        let marked = format!("id=\"{field}-problem\"");
        let said = answer.text.split(&marked).nth(1);
        let said = said.unwrap_or_else(|| panic!("{value} isn't marked at {field}"));
        let sentence = said.split("</p>").next().unwrap();
        assert!(sentence.contains(part), "{value}: {sentence}");
        // What was typed and chosen beside it stays.
        if field != "dates" {
            assert!(answer.text.contains("value=\"month_named\" checked"));
        }
        assert!(!answer.text.contains("<b>EUR"));
        assert_eq!(locale::current(), Locale::DATA);
        assert_eq!(desk.bench.lock().unwrap().locale().unwrap(), Locale::DATA);
    }
    let answer = desk.post_form("/settings", &with("currency", "yen")).await;
    assert!(answer.text.contains("value=\"yen\""), "kept as typed");
    let empty = desk.post_form("/settings", &[]).await;
    assert_eq!(empty.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn recipes_runs_and_trials_are_written_as_chosen_and_data_is_not() {
    let (desk, _turn) = desk().await;
    let trial = desk.trial().slug;
    {
        let mut bench = desk.bench.lock().unwrap();
        let slug = bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
        let run = bench
            .begin_run(&slug, 1, Some(&trial), "Sunday", NOW)
            .unwrap();
        assert_eq!((slug.as_str(), run), ("green-napkins", 1));
        // Colder than the sheet has it: a departure that limits the verdict.
        let sheet = bench.run(run).unwrap().unwrap().run.sheet;
        let hold = sheet.steps.iter().find(|s| s.kind == StepKind::Hold);
        let event = NewEvent {
            step: hold.map(|step| step.number),
            at_s: 1_901_642_700,
            what: What::Temperature(dyeing::Celsius::new(30.0).unwrap()),
            of: None,
        };
        bench.note_run(run, &event, 1_901_642_700).unwrap();
    }
    let data = [
        "/recipes/green-napkins.json".to_owned(),
        "/runs/1.json".to_owned(),
        "/runs/1/rinse.json".to_owned(),
        format!("/trials/{trial}.json"),
        format!("/trials/{trial}.csv"),
    ];
    let mut before = Vec::new();
    for address in &data {
        let answer = desk.get(address).await;
        assert_eq!(answer.status, StatusCode::OK, "{address}");
        before.push(answer.text);
    }
    choose(&desk, &AMERICAN).await;
    for (address, was) in data.iter().zip(before) {
        assert_eq!(desk.get(address).await.text, was, "{address}");
    }
    for (address, parts) in [
        (
            "/recipes/green-napkins",
            &[
                "oz (",
                "US gal (",
                "°F (",
                ">°F</text>",
                "Apr 5, 2030",
                "EUR ",
            ][..],
        ),
        (
            "/runs/1",
            &[
                "Begun Apr 5, 2030",
                "US gal (",
                "placeholder=\"°F\"",
                "°F, as planned",
            ][..],
        ),
        ("/runs/1/sheet", &["Apr 5, 2030", "US gal (", "°F"][..]),
        ("/recipes", &["oz ("][..]),
    ] {
        let page = desk.get(address).await.text;
        for part in parts {
            assert!(page.contains(part), "{part} is not in {address}: {page}");
        }
    }
    let page = desk.get(&format!("/trials/{trial}")).await.text;
    assert!(page.contains("Apr 5, 2030") && page.contains("oz ("));
    assert!(page.contains("86 °F"), "{page}");
    let report = desk.get(&format!("/trials/{trial}/report")).await.text;
    assert!(report.contains("Jan 1, 2030") && report.contains("US gal ("));
    choose(&desk, &with("dates", "day_first")).await;
    let report = desk.get(&format!("/trials/{trial}/report")).await.text;
    assert!(report.contains("Days are written day, month, year."));
}

#[tokio::test]
async fn a_bare_number_of_degrees_is_on_the_scale_that_the_page_shows() {
    let (desk, _turn) = desk().await;
    {
        let mut bench = desk.bench.lock().unwrap();
        let slug = bench.keep_recipe(NAPKINS, "written", NOW).unwrap();
        bench.begin_run(&slug, 1, None, "", NOW).unwrap();
    }
    choose(&desk, &AMERICAN).await;
    for typed in ["140", "60 C"] {
        let fields = [("step", "3"), ("temperature", typed), ("do", "temperature")];
        let answer = desk.post_form("/runs/1", &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    }
    let page = desk.get("/runs/1?at=3").await.text;
    assert!(page.contains("it was at 140 °F (60 °C)"), "{page}");
    assert!(page.contains("value=\"140 °F\""), "{page}");
    let kept: serde_json::Value =
        serde_json::from_str(&desk.get("/runs/1.json").await.text).unwrap();
    assert_eq!(kept["sheet"]["steps"][0]["number"], 1);
    let text = kept["counts"].to_string();
    assert!(text.contains("60"), "{text}");
    let wrong = [("step", "3"), ("temperature", "300"), ("do", "temperature")];
    let answer = desk.post_form("/runs/1", &wrong).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn a_price_keeps_the_currency_it_was_written_in() {
    let (desk, _turn) = desk().await;
    let material = [
        ("name", "madder"),
        ("kind", "dye"),
        ("received", "2030-04-05"),
        ("amount", "1 lb"),
        ("price", "9.50 per 100 g"),
    ];
    let answer = desk.post_form("/materials", &material).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let page = desk.get("/materials/1").await.text;
    assert!(page.contains(", 9.50 per 100 g"), "a plain number: {page}");
    choose(&desk, &with("currency", "EUR")).await;
    let page = desk.get("/materials/1").await.text;
    assert!(page.contains(", EUR 9.50 per 100 g"), "{page}");
    assert!(
        page.contains("Lot of Apr 5, 2030: 1 lb (454 g) left"),
        "{page}"
    );
    let another = [
        ("do", "lot"),
        ("received", "2030-04-06"),
        ("amount", "1/2 cup"),
        ("price", "3.00 each"),
    ];
    let answer = desk.post_form("/materials/1", &another).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    choose(&desk, &with("currency", "USD")).await;
    let page = desk.get("/materials/1").await.text;
    assert!(page.contains(", EUR 3.00 each"), "{page}");
    assert!(desk.get("/materials").await.text.contains("EUR 3.00 each"));
    let form = desk.get("/recipes/new").await.text;
    // Picked in a recipe whose prices are in dollars, it is refused there: nothing is converted.
    let option = "<option value=\"EUR 3.00 each\" label=\"madder, lot of Apr 6, 2030\">";
    assert!(form.contains(option), "{form}");
    assert!(form.contains("name=\"currency\" value=\"USD\""), "{form}");
    assert!(form.contains("<option value=\"us\" selected>") || form.contains("value=\"us\">"));
}

#[tokio::test]
async fn a_typed_price_names_its_currency_in_the_usual_ways() {
    let (desk, _turn) = desk().await;
    choose(&desk, &with("currency", "EUR")).await;
    let lot = |price| {
        [
            ("do", "lot"),
            ("received", "2030-04-06"),
            ("amount", "1 lb"),
            ("price", price),
        ]
    };
    let material = [("name", "madder"), ("kind", "dye")];
    desk.post_form("/materials", &material).await;
    for (typed, shown) in [
        ("12.50 per 100 g", ", EUR 12.50 per 100 g"),
        ("13,50 € per 100 g", ", EUR 13,50 per 100 g"),
        ("EUR 14.50/100 g", ", EUR 14.50/100 g"),
        ("USD 4 per kg", ", USD 4 per kg"),
        ("US$ 5 each", ", USD 5 each"),
    ] {
        let answer = desk.post_form("/materials/1", &lot(typed)).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
        let page = desk.get("/materials/1").await.text;
        assert!(page.contains(shown), "{typed}: {page}");
    }
    for (typed, part) in [
        ("$4 per kg", "several currencies share the sign $"),
        ("JPY 400 per kg", "Sums in JPY have 0 decimals"),
        ("¥400 per kg", "the sign ¥ is not known"),
        ("EUR 4 USD per kg", "names its currency once"),
        ("4 bucks per kg", "say for how much"),
        ("<b>4</b> per kg", "a number is wanted"),
    ] {
        let answer = desk.post_form("/materials/1", &lot(typed)).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
        let sentence = answer.problem("price");
        assert!(sentence.contains(part), "{typed}: {sentence}");
    }
    // What is kept is the plain figure beside the code.
    let kept = desk.bench.lock().unwrap().material(1).unwrap().unwrap();
    let kept: Vec<_> = kept
        .lots
        .iter()
        .map(|lot| (lot.came.price.as_str(), lot.came.currency.as_str()))
        .collect();
    assert_eq!(kept[1], ("13,50 per 100 g", "EUR"));
    assert_eq!(kept[4], ("5 each", "USD"));
    // A sign of several currencies means the studio's, if it is one of those.
    choose(&desk, &with("currency", "CAD")).await;
    let answer = desk.post_form("/materials/1", &lot("$4 per kg")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let page = desk.get("/materials/1").await.text;
    assert!(page.contains(", CAD 4 per kg"), "{page}");
}

/// A bench as it was before there were settings: its tables, a trial, a recipe with a run, a lot.
fn old_bench() -> tempfile::TempDir {
    const BEFORE_SETTINGS: usize = 18;
    let home = tempfile::tempdir().unwrap();
    let old = rusqlite::Connection::open(home.path().join("woadstone.sqlite")).unwrap();
    let migrations = concat!(env!("CARGO_MANIFEST_DIR"), "/../store/migrations");
    let mut steps: Vec<_> = std::fs::read_dir(migrations)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    steps.sort();
    assert!(steps[BEFORE_SETTINGS].ends_with("0019_setting.sql"));
    for step in &steps[..BEFORE_SETTINGS] {
        old.execute_batch(&std::fs::read_to_string(step).unwrap())
            .unwrap();
    }
    let sheet = {
        let plan = dyeing::Plan::of(&dyeing::Recipe::read(NAPKINS).unwrap()).unwrap();
        serde_json::to_string(&dyeing::run::RunSheet::of(&plan)).unwrap()
    };
    old.execute_batch(
        "INSERT INTO trial VALUES (1, 'old', 'Old trial', 'q', 1, 5, 0, '', '2029-04-05T18:05:00Z');
         INSERT INTO arm VALUES (1, 1, 'a', '');
         INSERT INTO recipe VALUES (1, 'napkins', '2029-04-05T18:05:00Z');
         INSERT INTO material VALUES (1, 'dye', 'madder', '', '2029-04-05T18:05:00Z');
         INSERT INTO lot VALUES (1, 1, '2029-04-05', 50, 'g', '9.50 per 100 g', '', '', '2029-04-05T18:05:00Z');",
    )
    .unwrap();
    old.execute(
        "INSERT INTO recipe_revision VALUES (1, 1, 1, ?1, 'written', '2029-04-05T18:05:00Z')",
        [NAPKINS],
    )
    .unwrap();
    old.execute(
        "INSERT INTO run VALUES (1, 1, 1, 'Sunday', ?1, '2029-04-05T18:05:00Z')",
        [sheet],
    )
    .unwrap();
    old.pragma_update(None, "user_version", BEFORE_SETTINGS as i64)
        .unwrap();
    home
}

#[tokio::test]
async fn a_bench_from_before_settings_opens_and_is_written_as_it_was() {
    let _turn = TURN.lock().await;
    locale::set(Locale::DATA);
    let desk = Desk::at(old_bench()).await;
    assert_eq!(desk.bench.lock().unwrap().locale().unwrap(), Locale::DATA);
    let page = desk.get("/settings").await.text;
    for chosen in [
        "value=\"metric\" checked",
        "value=\"iso\" checked",
        "value=\"hours24\" checked",
        "name=\"currency\" value=\"\"",
    ] {
        assert!(page.contains(chosen), "{chosen} is not in {page}");
    }
    for (address, part) in [
        ("/", "Old trial"),
        ("/trials/old", "2029-04-05"),
        ("/recipes/napkins", "250 g"),
        ("/runs/1", "Begun 2029-04-05"),
        ("/materials", "9.50 per 100 g"),
        ("/materials/1", "Lot of 2029-04-05: 50 g left"),
        ("/studio", "2026-11-26, 18:05"),
    ] {
        let answer = desk.get(address).await;
        assert_eq!(answer.status, StatusCode::OK, "{address}");
        assert!(answer.text.contains(part), "{part} is not in {address}");
    }
    // From then on settings are chosen as on any bench, and what was kept follows them.
    choose(&desk, &AMERICAN).await;
    let run = desk.get("/runs/1").await.text;
    assert!(
        run.contains("Begun Apr 5, 2029") && run.contains("US gal ("),
        "{run}"
    );
    let shelf = desk.get("/materials/1").await.text;
    assert!(shelf.contains("USD 9.50 per 100 g"), "{shelf}");
    assert!(
        shelf.contains("Lot of Apr 5, 2029: 1.76 oz (50 g) left"),
        "{shelf}"
    );
}
