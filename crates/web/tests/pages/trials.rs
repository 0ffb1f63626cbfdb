//! Trials in a browser: the empty bench, the form, one trial, its data.

use crate::desk::Desk;
use axum::http::{StatusCode, header};

#[tokio::test]
async fn an_empty_bench_offers_the_demo_and_a_question() {
    let desk = Desk::new().await;
    let page = desk.get("/").await;
    assert_eq!(page.status, StatusCode::OK);
    for part in [
        "<h1>Trials</h1>",
        "Open the demo trial",
        "Ask a question",
        "action=\"/demo\"",
        "Skip to the content",
    ] {
        assert!(page.text.contains(part), "{part}");
    }
    let opened = desk.post_form("/demo", &[]).await;
    assert_eq!(opened.status, StatusCode::SEE_OTHER);
    let trial = desk.get(opened.location()).await;
    assert!(trial.text.contains("invented trial"));
    assert!(desk.get("/").await.text.contains("invented"));
}

#[tokio::test]
async fn a_good_form_becomes_a_trial() {
    let desk = Desk::new().await;
    let answer = desk
        .post_form(
            "/trials/new",
            &[
                ("title", "Madder in hard water"),
                ("question", "Does chalk keep it red?"),
                ("margin", "1,5"),
                ("rounds", "4"),
                ("pieces", "3"),
                ("keeper", "yes"),
                ("method", "One pot each."),
                ("arm-1-name", "tap"),
                ("arm-1-treatment", ""),
                ("arm-2-name", ""),
                ("arm-2-treatment", ""),
                ("arm-3-name", "chalk"),
                ("arm-3-treatment", "2 g to the litre"),
            ],
        )
        .await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    let data = desk.get(&format!("{}.json", answer.location())).await;
    let data: serde_json::Value = serde_json::from_str(&data.text).unwrap();
    assert_eq!(data["trial"]["margin_de00"], 1.5);
    assert_eq!(data["trial"]["arms"][1]["name"], "chalk");
    let codes: Vec<_> = data["trial"]["pieces"]
        .as_array()
        .unwrap()
        .iter()
        .map(|p| p["code"].as_str().unwrap().to_owned())
        .collect();
    assert_eq!(codes, ["A1", "A2", "A3", "AK", "B1", "B2", "B3", "BK"]);
    assert!(data["decision"].is_null());
    assert!(
        data["undecided"]
            .as_str()
            .unwrap()
            .contains("Nothing has been read")
    );
}

#[tokio::test]
async fn a_faulty_form_keeps_what_was_typed_and_marks_the_field() {
    let desk = Desk::new().await;
    let answer = desk
        .post_form(
            "/trials/new",
            &[
                ("title", "Kept \"title\""),
                ("question", "Kept <question>?"),
                ("margin", "much"),
                ("rounds", "5"),
                ("pieces", "4"),
                ("arm-1-name", "same"),
                ("arm-1-treatment", "kept treatment"),
                ("arm-2-name", "same"),
                ("arm-2-treatment", ""),
            ],
        )
        .await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    for part in [
        "Kept &#34;title&#34;",
        "Kept &#60;question&#62;?",
        "value=\"much\"",
        "kept treatment",
        "role=\"alert\"",
        "aria-invalid=\"true\" aria-describedby=\"margin-problem margin-hint\"",
        "id=\"margin-problem\"",
    ] {
        assert!(answer.text.contains(part), "{part}");
    }
    assert!(desk.bench.lock().unwrap().trials().unwrap().is_empty());
}

#[tokio::test]
async fn a_fault_in_an_arm_is_marked_at_its_row() {
    let desk = Desk::new().await;
    let mut fields = vec![
        ("title", "t"),
        ("question", "q"),
        ("margin", "1"),
        ("rounds", "5"),
        ("pieces", "4"),
        ("arm-1-name", "same"),
        ("arm-2-name", ""),
        ("arm-3-name", "same"),
    ];
    let answer = desk.post_form("/trials/new", &fields).await;
    assert!(
        answer.text.contains("id=\"arm-3-name-problem\""),
        "{}",
        answer.text
    );
    fields.push(("more", "1"));
    let grown = desk.post_form("/trials/new", &fields).await;
    assert_eq!(grown.status, StatusCode::OK);
    assert!(grown.text.contains("id=\"arm-4-name\""));
}

#[tokio::test]
async fn what_people_typed_is_text() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let page = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert!(!page.text.contains("<b>hold</b>"));
    assert!(page.text.contains("&#60;b&#62;hold"));
    assert!(!page.text.contains("<gently>"));
}

#[tokio::test]
async fn the_report_is_one_file_with_a_policy_of_its_own() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let path = format!("/trials/{}/report", trial.slug);
    let report = desk.get(&path).await;
    assert_eq!(report.status, StatusCode::OK);
    let policy = report.headers[header::CONTENT_SECURITY_POLICY]
        .to_str()
        .unwrap();
    assert!(!policy.contains("script"));
    assert!(report.text.contains("@media print"));
    let kept = desk.get(&format!("{path}?keep")).await;
    let disposition = kept.headers[header::CONTENT_DISPOSITION].to_str().unwrap();
    assert!(disposition.contains(&format!("{}-report.html", trial.slug)));
}

#[tokio::test]
async fn a_long_list_goes_on_on_another_page() {
    let desk = Desk::new().await;
    for _ in 0..52 {
        desk.trial();
    }
    let first = desk.get("/").await.text;
    assert_eq!(first.matches("<h2><a href=\"/trials/").count(), 50);
    let (_, older) = first
        .split_once("href=\"/?before=")
        .expect("a link to older ones");
    let older = older.split('"').next().expect("its end");
    let second = desk.get(&format!("/?before={older}")).await.text;
    assert_eq!(second.matches("<h2><a href=\"/trials/").count(), 2);
    assert!(second.contains("Newest trials") && !second.contains("Older trials"));
    let past = desk.get("/?before=1").await.text;
    assert!(past.contains("No older trials"));
}
