//! Recipes by form and by text, and those of a plan.

use crate::desk::Desk;
use axum::http::StatusCode;

pub const FORM: [(&str, &str); 19] = [
    ("name", "Green <napkins>"),
    ("class", "reactive-warm"),
    ("fibre", "cotton"),
    ("kitchen", "us"),
    ("currency", "EUR"),
    ("weight", "250 g"),
    ("typical", ""),
    ("pieces", "5"),
    ("water", "ratio"),
    ("water-amount", "20:1"),
    ("pot", "8 L"),
    ("dye-1-name", "yellow"),
    ("dye-1-amount", "0.8 % owf"),
    ("dye-1-form", "stock"),
    ("dye-1-strength", "1 %"),
    ("auxiliary-1-name", "fine salt"),
    ("auxiliary-1-amount", "50 g/L"),
    ("auxiliary-2-name", "soda ash"),
    ("auxiliary-2-amount", "12 g/L"),
];

/// Two arms and an after-treatment beside what [`FORM`] has; the second rows of arms and
/// after-treatments are the ones in use, as a person who emptied the first leaves them.
const MORE: [(&str, &str); 12] = [
    ("arm-1-name", ""),
    ("arm-2-name", "plain"),
    ("arm-2-pieces", "2"),
    ("arm-3-name", "fixed"),
    ("arm-3-pieces", "3"),
    ("after-1-name", ""),
    ("after-2-name", "fixative"),
    ("after-2-amount", "2 % owf"),
    ("after-2-water", "4 L"),
    ("after-2-temperature", "40 C"),
    ("after-2-time", "20 min"),
    ("after-2-arms", "fixed"),
];

/// The form with other values in some fields, and fields that it hadn't.
pub fn with<'a>(other: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let mut fields: Vec<(&str, &str)> = FORM.to_vec();
    for (name, value) in other {
        match fields.iter_mut().find(|(field, _)| field == name) {
            Some(field) => field.1 = value,
            None => fields.push((name, value)),
        }
    }
    fields
}

#[tokio::test]
async fn nonsense_is_said_at_its_field_and_nothing_typed_is_lost() {
    let desk = Desk::new().await;
    for (field, value, marked, part) in [
        ("weight", "0 g", "weight", "usually 130 to 200 g"),
        ("weight", "a lot", "weight", "no unit known"),
        ("water-amount", "1//3", "water-amount", "at character 3"),
        ("water-amount", "", "water-amount", "how much water"),
        (
            "auxiliary-1-amount",
            "1//3 cup",
            "auxiliary-1-amount",
            "at character 3",
        ),
        ("dye-1-amount", "5 %", "dye-1-amount", "say of what"),
        ("dye-1-strength", "", "dye-1-strength", "unknown strength"),
        ("dye-1-name", "", "dye-1-name", "has no name"),
        ("dye-1-price", "USD 4 per kg", "dye-1-price", "not mixed"),
        (
            "dye-1-price",
            "$4 per kg",
            "dye-1-price",
            "share the sign $",
        ),
        ("pieces", "many", "pieces", "whole number"),
        ("name", "", "name", "no name"),
        ("fibre", "asbestos", "fibre", "no fibre"),
        ("pot", "0 L", "pot", "holds nothing"),
        ("ph", "acid", "ph", "Give a number"),
        ("hold", "400 C", "hold", "0 to 140"),
    ] {
        let answer = desk
            .post_form("/recipes/new", &with(&[(field, value)]))
            .await;
        assert_eq!(
            answer.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{field}: {value}"
        );
        let sentence = answer.problem(marked);
        assert!(sentence.contains(part), "{field}: {value}: {sentence}");
        assert_eq!(answer.marked(), [marked], "{field}: {value}");
        if field != "name" {
            assert!(answer.text.contains("value=\"Green &#60;napkins&#62;\""));
        }
    }
    assert!(desk.bench.lock().unwrap().recipes().unwrap().is_empty());
}

/// Each fault of a recipe with the field that has to be mended, none of them found by the
/// sentence's words.
#[tokio::test]
async fn each_fault_stands_at_the_field_that_mends_it() {
    let desk = Desk::new().await;
    let good = [&FORM[..], &MORE[..]].concat();
    let answer = desk.post_form("/recipes/new", &good).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let mut astray = Vec::new();
    for (other, marked) in [
        (vec![("name", " ")], "name"),
        (vec![("class", "vat of old")], "class"),
        (vec![("fibre", "60 % cotton")], "fibre"),
        (vec![("weight", "")], "weight"),
        (vec![("weight", "0 g")], "weight"),
        (vec![("weight", "250")], "weight"),
        (vec![("weight", ""), ("typical", "tent")], "typical"),
        (vec![("pieces", "4")], "pieces"),
        (vec![("pieces", "0"), ("arm-2-pieces", "0")], "pieces"),
        (vec![("pieces", "3"), ("arm-2-pieces", "0")], "arm-2-pieces"),
        (vec![("water-amount", "2000:1")], "water-amount"),
        (vec![("water-amount", "5 L")], "water-amount"),
        (
            vec![("water", "volume"), ("water-amount", "20:1")],
            "water-amount",
        ),
        (
            vec![("water", "volume"), ("water-amount", "5 mL")],
            "water-amount",
        ),
        (
            vec![("water", "pot"), ("water-amount", ""), ("pot", "")],
            "water-amount",
        ),
        // The stock solution alone is more than the bath.
        (vec![("dye-1-strength", "0.01 %")], "water-amount"),
        (vec![("pot", "a bucket")], "pot"),
        (vec![("pot", "0 L")], "pot"),
        // More than 10 000 baths.
        (vec![("pot", "0.01 ml")], "pot"),
        (vec![("headroom", "95")], "headroom"),
        (vec![("heater", "0")], "heater"),
        (vec![("presoak", "long")], "presoak"),
        (vec![("hold", "400 C")], "hold"),
        (vec![("time", "a while")], "time"),
        (vec![("ph", "15")], "ph"),
        (vec![("dye-1-name", "")], "dye-1-name"),
        (vec![("dye-1-amount", "5 %")], "dye-1-amount"),
        (vec![("dye-1-strength", "weak")], "dye-1-strength"),
        (
            vec![("dye-1-form", "liquid"), ("dye-1-strength", "weak")],
            "dye-1-strength",
        ),
        (
            vec![("dye-1-form", "powder"), ("dye-1-strength", "0")],
            "dye-1-strength",
        ),
        // A weight of dye from a bottle of unknown strength.
        (
            vec![("dye-1-form", "unknown"), ("dye-1-strength", "")],
            "dye-1-amount",
        ),
        (vec![("dye-1-bottle", "big")], "dye-1-bottle"),
        (vec![("dye-1-price", "dear")], "dye-1-price"),
        (vec![("dye-1-in_bath", "some")], "dye-1-in_bath"),
        (vec![("dye-1-in_bath", "3 g")], "dye-1-in_bath"),
        (vec![("auxiliary-2-name", "")], "auxiliary-2-name"),
        (vec![("auxiliary-1-amount", "")], "auxiliary-1-amount"),
        // Two of one name are told apart by their rows.
        (
            vec![
                ("auxiliary-2-name", "fine salt"),
                ("auxiliary-2-amount", "x"),
            ],
            "auxiliary-2-amount",
        ),
        (
            vec![("auxiliary-2-material", "gold")],
            "auxiliary-2-material",
        ),
        (vec![("auxiliary-2-label", "?")], "auxiliary-2-label"),
        (vec![("auxiliary-2-bottle", "?")], "auxiliary-2-bottle"),
        (vec![("auxiliary-2-price", "?")], "auxiliary-2-price"),
        (
            vec![("auxiliary-2-price", "3 per bottle")],
            "auxiliary-2-price",
        ),
        (vec![("auxiliary-2-in_bath", "1 L")], "auxiliary-2-in_bath"),
        (vec![("after-2-name", "")], "after-2-name"),
        (vec![("after-2-amount", "a lot")], "after-2-amount"),
        (vec![("after-2-material", "gold")], "after-2-material"),
        (vec![("after-2-label", "?")], "after-2-label"),
        (vec![("after-2-bottle", "?")], "after-2-bottle"),
        (vec![("after-2-price", "?")], "after-2-price"),
        (vec![("after-2-water", "a bit")], "after-2-water"),
        (vec![("after-2-water", "0 L")], "after-2-water"),
        (vec![("after-2-temperature", "warm")], "after-2-temperature"),
        (vec![("after-2-time", "long")], "after-2-time"),
        (vec![("after-2-arms", "red")], "after-2-arms"),
        (vec![("after-2-arms", ";")], "after-2-arms"),
    ] {
        let changed = [&MORE[..], &other].concat();
        let answer = desk.post_form("/recipes/new", &with(&changed)).await;
        if answer.marked() != [marked] {
            astray.push((other, answer.status, answer.marked().join(" ")));
        }
    }
    assert!(astray.is_empty(), "{astray:#?}");
}

#[tokio::test]
async fn what_is_merely_wrong_is_worked_out_and_said_first() {
    let desk = Desk::new().await;
    for (other, part) in [
        (
            vec![
                ("dye-1-amount", "300 % owf"),
                ("dye-1-form", "powder"),
                ("dye-1-strength", ""),
            ],
            "The dyes make 300 % owf",
        ),
        (
            vec![("water", "volume"), ("water-amount", "5 L"), ("pot", "2 L")],
            "fit into a pot of 2 L",
        ),
        (vec![("fibre", "polyester")], "dye polyester"),
        (
            vec![
                ("class", "acid-levelling"),
                ("fibre", "silk"),
                ("hold", "100 C"),
            ],
            "too hot for silk",
        ),
    ] {
        let answer = desk.post_form("/recipes/new", &with(&other)).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
        let page = desk.get(answer.location()).await;
        assert!(page.text.contains(part), "{part}");
        assert!(page.text.contains(">Wrong<"));
    }
}

#[tokio::test]
async fn a_recipe_goes_from_form_to_text_to_run_and_print() {
    let desk = Desk::new().await;
    let answer = desk.post_form("/recipes/new", &FORM).await;
    let recipe = answer.location().to_owned();
    assert_eq!(recipe, "/recipes/green-napkins");
    let page = desk.get(&recipe).await.text;
    for part in [
        "200 ml",
        "3/4 cup",
        "it may",
        "60 g (2.12 oz)",
        "<svg class=\"chart change programme\"",
        "Begin a run",
        "Before you begin",
    ] {
        assert!(page.contains(part), "{part}");
    }
    assert!(
        page.find("Before you begin") < page.find("<h2 id=\"steps\">"),
        "cautions stand before steps"
    );
    let data = desk.get(&format!("{recipe}.json")).await;
    assert!(data.text.contains("\"programme\""));
    let lot = desk.get(&format!("{recipe}?goods=10%20kg")).await.text;
    assert!(lot.contains("10 kg") && lot.contains("Materials") || lot.contains("200 L of liquor"));
    assert!(
        desk.get(&format!("{recipe}?goods=lots"))
            .await
            .text
            .contains("goods-problem")
    );

    // A row more, an edit by the form, a text that can't be taken, one that can, and back.
    let more = desk
        .post_form(
            &format!("{recipe}/edit"),
            &with(&[("more", "dye"), ("revision", "1")]),
        )
        .await;
    assert!(more.text.contains("dye-2-name") && more.status == StatusCode::OK);
    assert!(
        desk.get(&format!("{recipe}/edit"))
            .await
            .text
            .contains("value=\"0.8 % owf\"")
    );
    let edit = format!("{recipe}/edit");
    let paler = with(&[("dye-1-amount", "0.4 % owf"), ("revision", "1")]);
    assert_eq!(
        desk.post_form(&edit, &paler).await.status,
        StatusCode::SEE_OTHER
    );
    let stale = desk.post_form(&edit, &paler).await;
    assert!(stale.text.contains("changed in the meantime"));
    let bad = [("revision", "2"), ("write", "1"), ("text", "name = \"x")];
    let bad = desk.post_form(&recipe, &bad).await;
    assert_eq!(bad.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(bad.text.contains("ine 1 of the recipe") && bad.text.contains("name = &#34;x"));
    // In our own words first; the line with its mark and the parser's words stand below.
    let problem = bad.problem("text");
    let (sentence, below) = problem.split_once("<code class=\"pointed\">").unwrap();
    assert!(sentence.contains("the text has no quotation mark at its end"));
    assert!(!sentence.contains("parser") && below.contains("^\nThe parser says: "));
    // Figures stay with their units, and what is typed stays to the letter.
    let shown = desk.get(&recipe).await;
    assert!(shown.set.contains("250\u{a0}g of goods") && shown.set.contains("60\u{a0}°C"));
    let (_, typed) = shown.set.split_once("<textarea").unwrap();
    let (typed, _) = typed.split_once("</textarea>").unwrap();
    assert!(typed.contains("250 g") && !typed.contains('\u{a0}'));
    assert_eq!(
        shown.headers[axum::http::header::CONTENT_LENGTH],
        shown.set.len().to_string()
    );
    let text = include_str!("../../../../docs/recipes/scarf.toml");
    let good = [("revision", "2"), ("write", "1"), ("text", text)];
    assert_eq!(
        desk.post_form(&recipe, &good).await.status,
        StatusCode::SEE_OTHER
    );
    assert!(desk.get(&recipe).await.text.contains("rose scarf"));
    desk.post_form(&recipe, &[("revision", "3"), ("back", "1")])
        .await;
    assert!(desk.get(&recipe).await.text.contains("Back to revision 1"));
    let earlier = desk.get(&format!("{recipe}?revision=3")).await.text;
    assert!(earlier.contains("not the newest"));

    for paper in ["a4", "letter"] {
        let sheet = desk.get(&format!("{recipe}/sheet?paper={paper}")).await;
        assert!(sheet.text.contains("@page { size: ") && sheet.text.contains("Before you begin"));
    }
    for missing in [
        "/recipes/nothing",
        "/recipes/nothing/edit",
        "/recipes/nothing/sheet",
        "/runs/99",
        "/runs/x",
    ] {
        assert_eq!(
            desk.get(missing).await.status,
            StatusCode::NOT_FOUND,
            "{missing}"
        );
    }
}

#[tokio::test]
async fn a_recipe_for_a_plan_starts_with_its_arms_and_is_for_its_trials() {
    let desk = Desk::new().await;
    let text = include_str!("../../../../docs/plans/two-arms.toml");
    let plan = trial::plan::Plan::from_toml(text).unwrap();
    let slug = {
        let mut bench = desk.bench.lock().unwrap();
        bench
            .keep_plan(&plan, "proposed", "2030-01-01T00:00:00Z")
            .unwrap()
    };
    assert!(
        desk.get(&format!("/plans/{slug}"))
            .await
            .text
            .contains("No recipe yet")
    );
    let form = desk.get(&format!("/recipes/new?plan={slug}")).await.text;
    for (row, arm) in (1..).zip(&plan.arms) {
        let pieces = format!(
            "name=\"arm-{row}-pieces\" value=\"{}\"",
            arm.pieces + arm.keepers
        );
        assert!(
            form.contains(&format!("value=\"{}\"", arm.name)) && form.contains(&pieces),
            "{pieces}"
        );
    }
    let pieces: Vec<String> = plan
        .arms
        .iter()
        .map(|a| (a.pieces + a.keepers).to_string())
        .collect();
    let kept = with(&[
        ("plan", slug.as_str()),
        ("pieces", ""),
        ("arm-1-name", plan.arms[0].name.as_str()),
        ("arm-1-pieces", pieces[0].as_str()),
        ("arm-2-name", plan.arms[1].name.as_str()),
        ("arm-2-pieces", pieces[1].as_str()),
    ]);
    let answer = desk.post_form("/recipes/new", &kept).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let recipe = answer.location().to_owned();
    assert!(
        desk.get(&format!("/plans/{slug}"))
            .await
            .text
            .contains(&recipe)
    );
    let started = desk
        .post_form(&format!("/plans/{slug}/start"), &[("revision", "1")])
        .await;
    let trial = started.location().to_owned();
    assert!(desk.get(&trial).await.text.contains("not dyed yet"));
    let page = desk.get(&recipe).await.text;
    assert!(page.contains("the plan") && !page.contains("Its arms aren"));
    for unknown in ["/recipes/new?plan=nothing", "/recipes/new?trial=nothing"] {
        assert_eq!(desk.get(unknown).await.status, StatusCode::NOT_FOUND);
    }
}

#[tokio::test]
async fn a_recipe_that_cant_be_understood_stands_in_the_list_and_says_why() {
    let desk = Desk::new().await;
    desk.post_form("/recipes/new", &with(&[])).await;
    let database = rusqlite::Connection::open(desk.home.path().join("woadstone.sqlite")).unwrap();
    let rows = database.execute(
        "INSERT INTO recipe_revision (recipe_id, number, content, change, made_at)
         SELECT id, 2, 'no recipe', 'by hand', made_at FROM recipe",
        [],
    );
    assert_eq!(rows.unwrap(), 1);
    let page = desk.get("/recipes").await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text);
    assert!(page.text.contains("href=\"/recipes/green-napkins\""));
    assert!(
        page.text.contains("can&#39;t be understood"),
        "{}",
        page.text
    );
}
