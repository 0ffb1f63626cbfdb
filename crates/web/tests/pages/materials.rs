//! Materials and their lots by form, and what runs and recipes make of them.

use crate::desk::Desk;
use axum::http::StatusCode;

const NAPKINS: &str = include_str!("../../../../docs/recipes/napkins.toml");
const NOW: &str = "2030-01-01T00:00:00Z";

const FORM: [(&str, &str); 8] = [
    ("name", "Yellow <b>"),
    ("kind", "dye"),
    ("notes", "from a course"),
    ("received", "2030-05-31"),
    ("amount", "50 g"),
    ("price", "9.50 per 100 g"),
    ("supplier", "a friend"),
    ("lot-notes", "lot 7"),
];

fn with<'a>(field: &'a str, value: &'a str) -> Vec<(&'a str, &'a str)> {
    let mut fields = FORM.to_vec();
    for known in &mut fields {
        if known.0 == field {
            known.1 = value;
        }
    }
    fields
}

#[tokio::test]
async fn a_material_stands_on_the_shelf_until_it_is_used_up() {
    let desk = Desk::new().await;
    let empty = desk.get("/materials").await.text;
    assert!(empty.contains("The shelves are empty"));
    let answer = desk.post_form("/materials", &FORM).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let page = answer.location().to_owned();
    let shown = desk.get(&page).await.text;
    for part in [
        "Yellow &#60;b&#62;</h1>",
        "50 g left",
        "from a friend, 9.50 per 100 g",
        "lot 7",
    ] {
        assert!(shown.contains(part), "{part} is not in {shown}");
    }
    let used = [
        ("do", "use"),
        ("lot", "1"),
        ("used", "12.5 g"),
        ("words", "a sample"),
    ];
    assert_eq!(
        desk.post_form(&page, &used).await.status,
        StatusCode::SEE_OTHER
    );
    let shown = desk.get(&page).await.text;
    assert!(shown.contains("37.5 g left") && shown.contains("12.5 g, a sample"));
    let listed = desk.get("/materials").await.text;
    assert!(listed.contains("37.5 g left") && listed.contains("1 open"));
    let back = [("do", "back"), ("taken", "1")];
    assert_eq!(
        desk.post_form(&page, &back).await.status,
        StatusCode::SEE_OTHER
    );
    assert!(
        desk.get(&page)
            .await
            .text
            .contains("<s>12.5 g, a sample</s>")
    );
    let up = [("do", "up"), ("lot", "1")];
    assert_eq!(
        desk.post_form(&page, &up).await.status,
        StatusCode::SEE_OTHER
    );
    assert!(desk.get(&page).await.text.contains("Used up."));
    let another = [
        ("do", "lot"),
        ("received", "2030-06-01"),
        ("amount", "1 lb"),
    ];
    assert_eq!(
        desk.post_form(&page, &another).await.status,
        StatusCode::SEE_OTHER
    );
    assert!(desk.get(&page).await.text.contains("454 g left"));
    assert_eq!(
        desk.get("/materials/99").await.status,
        StatusCode::NOT_FOUND
    );
}

#[tokio::test]
async fn nonsense_is_said_at_its_field_and_nothing_typed_is_lost() {
    let desk = Desk::new().await;
    for (field, value, part) in [
        ("name", "", "no name"),
        ("amount", "-5 g", "below 0"),
        ("amount", "a heap", "no unit known"),
        ("amount", "0 g", "above 0"),
        ("price", "9.50", "for how much"),
        ("price", "cheap per kg", "a number is wanted"),
        ("received", "yesterday", "as in 2030-05-31"),
    ] {
        let answer = desk.post_form("/materials", &with(field, value)).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{field}");
        let sentence = answer.problem(field);
        assert!(sentence.contains(part), "{field}: {value}: {sentence}");
        assert!(answer.text.contains("value=\"lot 7\""));
    }
    let long = "n".repeat(3000);
    let answer = desk.post_form("/materials", &with("notes", &long)).await;
    assert!(answer.text.contains("2000 is the most"));
    assert!(desk.bench.lock().unwrap().materials().unwrap().is_empty());
    let page = desk
        .post_form("/materials", &FORM)
        .await
        .location()
        .to_owned();
    let twice = desk
        .post_form("/materials", &with("name", "YELLOW <B>"))
        .await;
    assert!(twice.text.contains("already"), "{}", twice.text);
    for (used, part) in [
        ("12 ml", "as 30 g"),
        ("", "number is missing"),
        ("-1 g", "below 0"),
    ] {
        let fields = [
            ("do", "use"),
            ("lot", "1"),
            ("used", used),
            ("words", "oops"),
        ];
        let answer = desk.post_form(&page, &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{used}");
        let sentence = answer.problem("used-1");
        assert!(sentence.contains(part), "{used}: {sentence}");
        assert!(answer.text.contains("value=\"oops\""));
    }
}

#[tokio::test]
async fn recipes_are_offered_prices_and_runs_take_from_lots() {
    let desk = Desk::new().await;
    let page = desk
        .post_form("/materials", &with("name", "yellow"))
        .await
        .location()
        .to_owned();
    let form = desk.get("/recipes/new").await.text;
    assert!(form.contains("<option value=\"9.50 per 100 g\" label=\"yellow, lot of 2030-05-31\">"));
    assert!(form.contains("<datalist id=\"dyes\"><option>yellow"));
    let slug = {
        let mut bench = desk.bench.lock().unwrap();
        bench.keep_recipe(NAPKINS, "written", NOW).unwrap()
    };
    let begun = [("revision", "1"), ("title", "Green lot"), ("trial", "")];
    let run = desk
        .post_form(&format!("/recipes/{slug}/runs"), &begun)
        .await;
    assert_eq!(run.status, StatusCode::SEE_OTHER);
    let shown = desk.get(&page).await.text;
    // 0.8 % owf of 250 g.
    assert!(shown.contains("48 g left"), "{shown}");
    assert!(shown.contains("by the run <a href=\"/runs/1\">Green lot</a>"));
}
