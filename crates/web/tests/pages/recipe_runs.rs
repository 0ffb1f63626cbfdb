//! Runs of recipes, and what the trial's page and report say of them.

use crate::desk::Desk;
use crate::recipes::{FORM, with};
use axum::http::StatusCode;

#[tokio::test]
async fn a_run_takes_taps_words_and_corrections() {
    let desk = Desk::new().await;
    desk.post_form("/recipes/new", &FORM).await;
    let begun = desk
        .post_form(
            "/recipes/green-napkins/runs",
            &[("revision", "1"), ("title", ""), ("trial", "")],
        )
        .await;
    let run = begun.location().to_owned();
    let started = desk
        .post_form(&run, &[("step", "1"), ("do", "start"), ("ago", "12")])
        .await;
    assert_eq!(started.location(), format!("{run}?at=1#step-1"));
    let page = desk.get(&run).await.text;
    assert!(
        page.contains("12:0") && page.contains("left"),
        "twelve minutes have gone"
    );
    assert!(page.contains("data-since=") && page.contains("Next is"));
    desk.post_form(&run, &[("step", "1"), ("do", "start")])
        .await;
    desk.post_form(&run, &[("step", "1"), ("do", "stop")]).await;
    desk.post_form(&run, &[("step", "4"), ("warm", "60")]).await;
    desk.post_form(&run, &[("step", "4"), ("tap", "not stirred all the time")])
        .await;
    desk.post_form(
        &run,
        &[("step", "4"), ("do", "remark"), ("words", "<b>bold</b>")],
    )
    .await;
    let page = desk.get(&run).await.text;
    assert!(page.contains("&#60;b&#62;bold") && !page.contains("<b>bold"));
    assert!(
        page.contains("it took 12 min instead of 30 min"),
        "a short soak departs"
    );
    assert!(page.contains("it was at 60 °C instead of 40 °C"));
    let right = [
        ("step", "4"),
        ("of", "3"),
        ("do", "correct"),
        ("time", ""),
        ("value", "40"),
    ];
    let wrong_time = desk.post_form(&run, &right).await;
    assert!(wrong_time.text.contains("id=\"time-of-3-problem\""));
    let page = desk.get(&run).await.text;
    let time = page
        .split("id=\"time-of-3\" name=\"time\" value=\"")
        .nth(1)
        .unwrap();
    let time = time.split('"').next().unwrap().to_owned();
    let right = [
        ("step", "4"),
        ("of", "3"),
        ("do", "correct"),
        ("time", time.as_str()),
        ("value", "40"),
    ];
    assert_eq!(
        desk.post_form(&run, &right).await.status,
        StatusCode::SEE_OTHER
    );
    let page = desk.get(&run).await.text;
    assert!(page.contains("(corrected)") && !page.contains("it was at 60 °C instead"));
    desk.post_form(&run, &[("step", "4"), ("of", "4"), ("do", "withdraw")])
        .await;
    assert!(
        !desk
            .get(&run)
            .await
            .text
            .contains("done otherwise: not stirred all the time</")
    );
    let data = desk.get(&format!("{run}.json")).await.text;
    assert!(data.matches("\"number\"").count() > 7);
    for (fields, part) in [
        (
            vec![("step", "1"), ("do", "start"), ("ago", "soon")],
            "ago-1-problem",
        ),
        (
            vec![("step", "4"), ("do", "temperature"), ("temperature", "hot")],
            "temperature-4-problem",
        ),
        (
            vec![("step", "4"), ("do", "depart"), ("words", "")],
            "words-4-problem",
        ),
        (vec![("step", "77"), ("do", "start")], "no step 77"),
        (vec![("step", "9"), ("do", "stop")], "never started"),
        (vec![("do", "dance")], "no page of ours"),
    ] {
        let answer = desk.post_form(&run, &fields).await;
        assert_eq!(
            answer.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{fields:?}"
        );
        assert!(answer.text.contains(part), "{fields:?}");
    }
    desk.post_form(&run, &[("do", "finish")]).await;
    assert!(desk.get(&run).await.text.contains("This run is over"));
    let sheet = desk.get(&format!("{run}/sheet")).await.text;
    assert!(sheet.contains("40 °C") && sheet.contains(" to "));
}

#[tokio::test]
async fn departures_of_a_run_limit_its_trial() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let page = desk.get(&format!("/trials/{}", trial.slug)).await.text;
    assert!(page.contains("Write one for its arms"));
    let form = desk
        .get(&format!("/recipes/new?trial={}", trial.slug))
        .await
        .text;
    assert!(form.contains("value=\"alum\"") && form.contains("value=\"plain\""));
    let arms = [
        ("trial", trial.slug.as_str()),
        ("pieces", ""),
        ("arm-1-name", "alum"),
        ("arm-1-pieces", "3"),
        ("arm-2-name", "plain"),
        ("arm-2-pieces", "3"),
        ("after-1-name", "fixative"),
        ("after-1-amount", "2 % owf"),
        ("after-1-temperature", "40 C"),
        ("after-1-time", "20 min"),
        ("after-1-arms", "alum"),
        ("after-1-price", "28 per 100 g"),
    ];
    let kept = desk.post_form("/recipes/new", &with(&arms)).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    let recipe = kept.location().to_owned();
    assert!(desk.get(&recipe).await.text.contains("Onion &#38; alum"));
    let begun = desk
        .post_form(
            &format!("{recipe}/runs"),
            &[
                ("revision", "1"),
                ("title", "Monday"),
                ("trial", trial.slug.as_str()),
            ],
        )
        .await;
    let run = begun.location().to_owned();
    desk.post_form(&run, &[("step", "3"), ("tap", "some was spilled")])
        .await;
    let page = desk.get(&format!("/trials/{}", trial.slug)).await.text;
    assert!(page.contains("Monday") && page.contains("some was spilled"));
    let report = desk
        .get(&format!("/trials/{}/report", trial.slug))
        .await
        .text;
    assert!(report.contains("some was spilled") && report.contains("not for what was planned"));
    for part in [
        "How it was dyed",
        "Recipe revision 1, dyed once",
        "3/4 cup",
        "fixative adds 0.23 EUR per piece",
        "Temperature of the bath over time",
    ] {
        assert!(report.contains(part), "{part}");
    }
    let data = desk.get(&format!("/trials/{}.json", trial.slug)).await.text;
    assert!(data.contains("\"departures\""));

    // For the trial no more, but a run of the trial followed it, so it stays there.
    desk.post_form(&format!("{recipe}/aim"), &[("aim", "")])
        .await;
    let page = desk.get(&format!("/trials/{}", trial.slug)).await.text;
    assert!(page.contains("&#60;napkins&#62;") && !page.contains("not dyed yet"));
    let other = desk
        .post_form("/recipes/new", &FORM)
        .await
        .location()
        .to_owned();
    desk.post_form(
        &format!("{other}/aim"),
        &[("aim", &format!("trial:{}", trial.slug))],
    )
    .await;
    assert!(desk.get(&other).await.text.contains("only in the recipe"));
    let unknown = desk
        .post_form(&format!("{other}/aim"), &[("aim", "plan:nothing")])
        .await;
    assert_eq!(unknown.status, StatusCode::BAD_REQUEST);
}
