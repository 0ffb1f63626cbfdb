//! The way through a trial, on every page that is part of one.

use crate::desk::Desk;
use axum::http::StatusCode;

/// The way on a page: of each place its class, its name's first letter being enough.
fn way(page: &str) -> Vec<String> {
    let Some((_, nav)) = page.split_once("<nav class=\"way\"") else {
        return Vec::new();
    };
    let nav = nav.split_once("</nav>").expect("it is closed").0;
    let stops = nav.split("<li class=\"").skip(1);
    stops
        .map(|stop| {
            let class = stop.split('"').next().expect("a class");
            let name = stop.split("class=\"place\">").nth(1).expect("a name");
            format!("{} {class}", name.split('<').next().expect("its end"))
        })
        .collect()
}

#[tokio::test]
async fn pages_of_a_trial_show_what_is_done_and_what_is_next() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    let page = desk.get(&format!("/trials/{}", trial.slug)).await;
    let fresh = [
        "Ask done",
        "Plan without",
        "Baths next",
        "Run later",
        "Look later",
        "Decide later",
        "Publish later",
    ];
    assert_eq!(way(&page.text), fresh);
    assert!(
        page.text
            .contains(&format!("/recipes/new?trial={}", trial.slug))
    );
    // A recipe that is yet to be written for it is on its way too.
    let recipe = desk
        .get(&format!("/recipes/new?trial={}", trial.slug))
        .await;
    assert_eq!(way(&recipe.text)[2], "Baths next here");
    // So is one that is sent and refused.
    let sent_to = format!("/recipes/new?trial={}", trial.slug);
    assert!(recipe.text.contains(&format!("action=\"{sent_to}\"")));
    let fields = [("name", ""), ("trial", trial.slug.as_str())];
    let refused = desk.post_form(&sent_to, &fields).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(way(&refused.text)[2], "Baths next here");
    assert!(refused.text.contains(&format!("action=\"{sent_to}\"")));
    for path in [
        "/recipes/new",
        "/recipes/new?trial=nothing",
        "/recipes/new?trial",
    ] {
        assert!(way(&desk.get(path).await.text).is_empty(), "{path}");
    }
    let adding = desk
        .get(&format!("/trials/{}/photos/new", trial.slug))
        .await;
    assert_eq!(way(&adding.text)[4], "Look later here");
    let elsewhere = desk.get(&format!("/trials/{}/elsewhere", trial.slug)).await;
    assert_eq!(way(&elsewhere.text)[4], "Look later here");
    assert_eq!(
        page.headers["content-length"].to_str().unwrap(),
        page.text.len().to_string()
    );
}

#[tokio::test]
async fn pages_of_no_trial_show_none_and_a_question_shows_the_way_ahead() {
    let desk = Desk::new().await;
    desk.trial();
    for path in [
        "/",
        "/charts",
        "/setup",
        "/recipes",
        "/nothing",
        "/trials/nothing",
    ] {
        assert!(way(&desk.get(path).await.text).is_empty(), "{path}");
    }
    for path in ["/ask", "/trials/new"] {
        assert_eq!(
            way(&desk.get(path).await.text)[0],
            "Ask next here",
            "{path}"
        );
    }
    // No mark of the frame is left behind, and data stays as it is.
    assert!(!desk.get("/").await.text.contains("<!--way-->"));
}

#[tokio::test]
async fn a_plan_and_its_recipe_lead_to_the_trial_started_from_it() {
    let desk = Desk::new().await;
    desk.post_form("/ask", &crate::plans::QUESTION).await;
    let plan = "/plans/agent-f-on-red";
    let before = way(&desk.get(plan).await.text);
    assert_eq!(before[..3], ["Ask done", "Plan next here", "Baths later"]);
    let started = desk
        .post_form(&format!("{plan}/start"), &[("revision", "1")])
        .await;
    let trial = started.location().to_owned();
    let page = desk.get(plan).await;
    assert_eq!(way(&page.text)[1..3], ["Plan done here", "Baths next"]);
    assert!(page.text.contains(&format!("{trial}/photos/new")));
    let recipe = desk.get("/recipes/new?plan=agent-f-on-red").await;
    assert_eq!(way(&recipe.text)[2], "Baths next here");
    let place = desk.get(&format!("{trial}/packing")).await;
    assert_eq!(way(&place.text)[1], "Plan done here");
}

/// A stage that people judged by eye has been looked at, by the arms that they judged.
#[tokio::test]
async fn grades_by_eye_move_the_way_on() {
    let desk = Desk::new().await;
    let trial = desk.trial();
    for piece in ["A1", "B1"] {
        let id = trial.pieces.iter().find(|p| p.code == piece).unwrap().id;
        let piece = id.to_string();
        let fields = [
            ("piece", piece.as_str()),
            ("grade-stage", "5"),
            ("scale", "change"),
            ("grade", "4"),
            ("grade-by", "A. N."),
            ("light", "north window"),
        ];
        let path = format!("/trials/{}/elsewhere/grades", trial.slug);
        let answer = desk.post_form(&path, &fields).await;
        assert!(answer.status.is_redirection(), "{}", answer.text);
    }
    let page = desk.get(&format!("/trials/{}", trial.slug)).await;
    assert_eq!(
        way(&page.text)[4..],
        ["Look done", "Decide done", "Publish next"]
    );
}
